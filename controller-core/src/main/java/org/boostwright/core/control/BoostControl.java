package org.boostwright.core.control;

import org.boostwright.core.monitor.Monitor;
import org.boostwright.core.settings.FeedbackSettings;
import org.boostwright.core.settings.LimitSettings;
import org.boostwright.core.settings.Settings;
import org.boostwright.core.settings.UnitSettings;
import org.boostwright.core.table.Curve;
import org.boostwright.core.table.Table2d;

/**
 * The duty that is wanted: base duty, corrected for ambient pressure, plus the trim of the pressure
 * feedback, or the spool strategy.
 *
 * <p>Base duty was tabled for the table's own target at the standard atmosphere p0. A spring holds
 * gauge pressure, so a lower ambient p or a lowered target needs another share s of the gauge
 * pressure at the actuator: {@code s' = (s*(tabled - p0 + drop) - help*(p0 - p))/(target - p +
 * drop)}, with the intercooler's pressure drop and the part of the actuator's work that the exhaust
 * takes over in thinner air. The valve command is 1 - s.
 */
public final class BoostControl {
  /** Pressure between valve supply and manifold: common practice 5 to 15 kPa, no source. */
  static final double INTERCOOLER_DROP_KPA = 10.0;

  /** Demand begins when the target is this far above ambient, kPa. */
  static final double DEMAND_KPA = 5.0;

  /** Upward slew of duty for the first second after a fault was cleared, per second. */
  static final double RECOVERY_SLEW_PER_SECOND = 1.0;

  static final double RECOVERY_SECONDS = 1.0;
  private static final double OUT_OF_REACH_KPA = 5.0;
  private static final double LIMITED_DUTY = 1e-9;
  private static final double STILL_KPA_PER_SECOND = 15.0;
  private static final double MEASUREMENT_FILTER_SECONDS = 0.010;

  private final LimitSettings limits;
  private final FeedbackSettings feedback;
  private final Table2d baseDuty;
  private final TargetStage target;
  private final DutyWindow window;
  private final Spool spool;
  private final Curve exhaustHelp;
  private final Pid pid = new Pid();

  private long outside;
  private boolean trimming;
  private boolean filterStarted;
  private double mapKpaAbs;
  private double dutyFraction;
  private double baseFraction;
  private double trimFraction;
  private boolean spooling;
  private boolean outOfReach;
  private double recoverySeconds = RECOVERY_SECONDS;

  /** Control at rest. */
  public BoostControl(Settings settings) {
    limits = settings.limits();
    feedback = settings.feedback();
    baseDuty = settings.baseDuty();
    target = new TargetStage(settings);
    window = new DutyWindow(settings.valve());
    spool = new Spool(settings.spool());
    exhaustHelp = settings.exhaustHelp();
  }

  /** Computes target and base duty for this tick, whatever the state. */
  public void updateTarget(
      double throttlePct, double rpm, int gear, Monitor monitor, boolean highBoost) {
    target.update(
        throttlePct,
        rpm,
        gear,
        monitor.ambientKpaAbs(),
        monitor.ambientFloorKpaAbs(),
        monitor.trustedShare(),
        monitor.intakeAirC(),
        highBoost);
    if (!baseDuty.covers(throttlePct, rpm)) {
      outside++;
    }
    double tabled = baseDuty.at(throttlePct, rpm);
    baseFraction = forAmbient(tabled, rpm, monitor.ambientKpaAbs());
  }

  private double forAmbient(double tabledDuty, double rpm, double ambientKpaAbs) {
    double command = window.commandOf(tabledDuty);
    if (!(command > 0.0)) {
      return tabledDuty;
    }
    double reference =
        target.tabledKpaAbs() - UnitSettings.STANDARD_ATMOSPHERE_KPA + INTERCOOLER_DROP_KPA;
    double here = target.targetKpaAbs() - ambientKpaAbs + INTERCOOLER_DROP_KPA;
    if (!(reference > INTERCOOLER_DROP_KPA && here > INTERCOOLER_DROP_KPA)) {
      return tabledDuty;
    }
    double actuator = (1.0 - command) * reference;
    double lost = UnitSettings.STANDARD_ATMOSPHERE_KPA - ambientKpaAbs;
    double corrected = 1.0 - (actuator - exhaustHelp.at(rpm) * lost) / here;
    return corrected > 0.0 ? window.dutyOf(corrected) : 0.0;
  }

  /** True when driver and tables ask for boost above the spring. */
  public boolean demand(double throttlePct, double rpm, double ambientKpaAbs) {
    return throttlePct >= limits.minThrottlePct()
        && rpm >= limits.minControlRpm()
        && target.targetKpaAbs() >= ambientKpaAbs + DEMAND_KPA;
  }

  /** One tick outside the controlling state: nothing is wanted, the filters go on. */
  public void idle(double newMapKpaAbs, double dt, boolean held) {
    observe(newMapKpaAbs, dt);
    dutyFraction = 0.0;
    trimFraction = 0.0;
    spooling = false;
    outOfReach = false;
    trimming = false;
    spool.arm();
    window.reset();
    if (held) {
      recoverySeconds = 0.0;
    }
  }

  /**
   * One tick in the controlling state.
   *
   * @param newMapKpaAbs accepted manifold pressure
   * @param rateKpaPerSecond its rate of change
   * @param rpm engine speed
   * @param ceiling highest duty the gate will let through
   * @param trimAllowed feedback allowed by proofs and faults
   * @param mayRise false while pressure falls without a reason: duty is not raised
   */
  public void control(
      double newMapKpaAbs,
      double rateKpaPerSecond,
      double rpm,
      double ambientKpaAbs,
      double ceiling,
      boolean trimAllowed,
      boolean mayRise,
      double dt) {
    observe(newMapKpaAbs, dt);
    double goal = target.targetKpaAbs();
    spooling = spool.update(mapKpaAbs, rateKpaPerSecond, goal, ambientKpaAbs, dt);
    double previous = dutyFraction;
    if (spooling) {
      trimming = false;
      trimFraction = 0.0;
      dutyFraction = Math.min(1.0, ceiling);
    } else {
      dutyFraction = trimmed(goal - mapKpaAbs, rpm, ceiling, trimAllowed, dt);
    }
    if (!mayRise) {
      dutyFraction = Math.min(dutyFraction, previous);
    }
    if (recoverySeconds < RECOVERY_SECONDS) {
      recoverySeconds += dt;
      dutyFraction = Math.min(dutyFraction, previous + RECOVERY_SLEW_PER_SECOND * dt);
    }
  }

  private double trimmed(double error, double rpm, double ceiling, boolean trimAllowed, double dt) {
    boolean trims = feedback.enabled() && trimAllowed && !spool.pending(error);
    if (!trims || !(baseFraction > 0.0)) {
      trimming = false;
      trimFraction = 0.0;
      outOfReach = false;
      return Math.min(window.realisable(baseFraction), ceiling);
    }
    double kp = feedback.kpDutyPerKpa().at(rpm);
    double ki = feedback.kiDutyPerKpaSecond().at(rpm);
    double kd = feedback.kdDutySecondPerKpa().at(rpm);
    if (!trimming) {
      trimming = true;
      pid.startFrom(trimFraction, error, kp, kd);
      if (!spool.armed()) {
        // After a spool the proportional and derivative parts meet at zero by themselves.
        pid.startFrom(0.0, 0.0, 0.0, 0.0);
      }
    }
    double wantedTrim = pid.output(error, kp, kd);
    double cap = limits.trimCapDuty();
    double capped = Math.max(-cap, Math.min(cap, wantedTrim));
    double duty = window.dutyOf(window.commandOf(baseFraction) + capped / window.width());
    duty = Math.max(baseFraction - cap, Math.min(baseFraction + cap, duty));
    double realised = Math.min(window.realisable(duty), ceiling);
    double applied = realised - baseFraction;
    integrate(error, ki, wantedTrim, applied, dt);
    outOfReach = error > OUT_OF_REACH_KPA && applied < wantedTrim - LIMITED_DUTY;
    trimFraction = applied;
    return realised;
  }

  /**
   * Near the target the integral moves and tracks the limits. Far from it, it holds while a limit
   * acts, so that back-calculation cannot trade it for the large proportional part, and while
   * pressure still moves; a pressure that stands still far from the target is integrated away.
   */
  private void integrate(double error, double ki, double wantedTrim, double applied, double dt) {
    boolean near = Math.abs(error) <= feedback.activeWithinKpa();
    boolean limited = !(Math.abs(applied - wantedTrim) <= LIMITED_DUTY);
    boolean still = Math.abs(pid.derivative()) <= STILL_KPA_PER_SECOND;
    if (near || (still && !limited)) {
      pid.integrate(error, ki, applied, feedback.trackingSeconds(), dt);
    }
  }

  private void observe(double newMapKpaAbs, double dt) {
    if (!Double.isFinite(newMapKpaAbs)) {
      return;
    }
    if (!filterStarted) {
      filterStarted = true;
      mapKpaAbs = newMapKpaAbs;
    }
    mapKpaAbs += dt / (dt + MEASUREMENT_FILTER_SECONDS) * (newMapKpaAbs - mapKpaAbs);
    pid.observe(mapKpaAbs, dt, feedback.derivativeFilterSeconds());
  }

  /** Duty wanted in this tick, 0 to 1. */
  public double dutyFraction() {
    return dutyFraction;
  }

  /** Base duty after the ambient correction, 0 to 1. */
  public double baseFraction() {
    return baseFraction;
  }

  /** Trim that reached the duty, as duty. */
  public double trimFraction() {
    return trimFraction;
  }

  /** Holding the wastegate shut. */
  public boolean spooling() {
    return spooling;
  }

  /** Spool strategy gave up on this demand. */
  public boolean spoolGaveUp() {
    return spool.gaveUp();
  }

  /** Pressure is below target with the duty at its top. */
  public boolean outOfReach() {
    return outOfReach;
  }

  /** Target stage. */
  public TargetStage target() {
    return target;
  }

  /** Lookups outside a table's axes. */
  public long outsideTable() {
    return outside + target.outside();
  }
}
