package org.boostwright.core.bench;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.boostwright.core.bench.VerdictCode.Grade;
import org.boostwright.core.bench.model.Coil;
import org.boostwright.core.bench.model.ValveFitResult;

/** Draws conclusions from a session's record; first the basic ones that explain the others. */
public final class Verdicts {
  /** Narrowest window that still lets boost be controlled, duty; project assumption. */
  public static final double NARROWEST_WINDOW = 0.15;

  private static final double NARROW_WINDOW = 0.3;
  private static final double WINDOW_TOLERANCE = 0.015;
  private static final double EMPTY_SHARE = PolarityRoutine.EMPTY_SHARE;
  private static final double SEES_SHARE = RestRoutine.SEES_SUPPLY_SHARE;
  private static final double LEAK_SHARE = 0.03;
  private static final double DROOP_SHARE = 0.1;
  // Sound valves lie within 0.7 to 1.4 either way; a hose open to a sixth is beyond 3.9.
  private static final double RESTRICTED_RATIO = 2.4;
  private static final double MISFIT_SHARE = 0.04;

  /** Air a regulator is set to when nobody read its gauge, kPa gauge. */
  private static final double USUAL_AIR_KPA = 85.0;

  private static final double GAUGE_FACTOR = 1.5;
  private static final double GAUGE_SHARE = 0.93;
  private static final double HELD_SHARE = 0.9;

  private final BenchRecord r;
  private final BenchPlan plan;
  private final List<BenchVerdict> found = new ArrayList<>();

  private Verdicts(BenchRecord record, BenchPlan plan) {
    this.r = record;
    this.plan = plan;
  }

  /** Every conclusion the record allows, most severe first; empty when all is sound. */
  public static List<BenchVerdict> of(BenchRecord record, BenchPlan plan) {
    Verdicts verdicts = new Verdicts(record, plan);
    verdicts.judge();
    verdicts.found.sort((a, b) -> a.code().compareTo(b.code()));
    return List.copyOf(verdicts.found);
  }

  /** True when nothing stands in the way of a proof; advice does not. */
  public static boolean sound(List<BenchVerdict> verdicts) {
    for (BenchVerdict verdict : verdicts) {
      if (verdict.code().grade() != Grade.ADVICE) {
        return false;
      }
    }
    return true;
  }

  private void judge() {
    stopped();
    coilHeat();
    actuator();
    if (ambient() || rest() || click() || polarity()) {
      return;
    }
    leak();
    supply();
    window();
    steadiness();
  }

  private void stopped() {
    AbortReason reason = r.aborted;
    if (reason == AbortReason.COIL_HOT) {
      add(
          VerdictCode.COIL_TOO_HOT,
          "The coil reached %.0f degC on the bench by its resistance of %.1f ohm.",
          r.hottestCoilC,
          plan.coil().ohms());
    } else if (reason != null) {
      add(VerdictCode.STOPPED, "%s; %s.", reason.words(), reason.next());
    }
  }

  private boolean ambient() {
    if (Double.isNaN(r.ambientKpaAbs) || AmbientRoutine.plausible(r.ambientKpaAbs)) {
      return false;
    }
    add(
        VerdictCode.GAUGE_UNITS,
        "With the air off the line sensor shows %.1f kPa absolute where about 100 is possible; %s.",
        r.ambientKpaAbs,
        UnitGuess.forAmbient(r.ambientKpaAbs));
    return true;
  }

  private boolean click() {
    if (r.clicksHeard == 0.0) {
      VerdictCode code =
          r.coilOhms > 500.0
              ? VerdictCode.COIL_OPEN
              : r.coilOhms < 3.0
                  ? VerdictCode.COIL_SHORT
                  : r.batteryClick == 1.0
                      ? VerdictCode.NO_DRIVE
                      : r.batteryClick == 0.0 && !Double.isNaN(r.coilOhms)
                          ? VerdictCode.VALVE_STUCK_AT_REST
                          : VerdictCode.NO_CLICK;
      add(code, "%d clicks given, none heard.", r.clicksGiven);
      return true;
    }
    if (r.clicksHeard < 0.7 * r.clicksGiven) {
      add(VerdictCode.CLICKS_MISSING, "%d clicks given, %.0f heard.", r.clicksGiven, r.clicksHeard);
    }
    return false;
  }

  private boolean rest() {
    double rest = r.restKpaGauge();
    if (Double.isNaN(rest)) {
      return false;
    }
    double regulator = Double.isNaN(r.regulatorKpaGauge) ? USUAL_AIR_KPA : r.regulatorKpaGauge;
    if (rest > GAUGE_FACTOR * regulator) {
      add(
          VerdictCode.GAUGE_UNITS,
          "At rest the line shows %.1f kPa gauge, the regulator %.1f; %s.",
          rest,
          regulator,
          UnitGuess.forRatio(rest / regulator));
      return true;
    }
    if (rest >= SEES_SHARE * regulator) {
      return false;
    }
    String measured =
        text(
            "With the coil off the line shows %.1f kPa gauge where about %.1f are expected.",
            rest, regulator);
    double empty = EMPTY_SHARE * regulator;
    double seen = SEES_SHARE * regulator;
    double dead = r.restDead == null ? r.unpluggedKpaGauge : r.gauge(r.restDead);
    double energised = r.energised == null ? Double.NaN : r.gauge(r.energised);
    found.add(new BenchVerdict(restCode(rest, dead, energised, empty, seen), measured));
    return true;
  }

  private VerdictCode restCode(
      double rest, double dead, double energised, double empty, double seen) {
    if (dead >= seen) {
      return energised >= seen ? VerdictCode.DRIVER_INVERTED : VerdictCode.DRIVER_STUCK_ON;
    }
    if (energised >= seen) {
      return Double.isNaN(dead) ? VerdictCode.REST_SEES_NOTHING : VerdictCode.PORTS_SWAPPED;
    }
    if (rest > empty) {
      return VerdictCode.LEAK;
    }
    if (r.clicksHeard == 0.0) {
      return VerdictCode.VALVE_STUCK_ENERGISED;
    }
    return switch (r.heard) {
      case STEADY_WHILE_OFF -> VerdictCode.ACTUATOR_ON_VENT;
      case PUFF -> VerdictCode.SENSOR_ON_WRONG_LINE;
      case NOTHING ->
          r.clicksHeard > 0.0 ? VerdictCode.NO_AIR_AT_ACTUATOR : VerdictCode.REST_SEES_NOTHING;
      default -> VerdictCode.REST_SEES_NOTHING;
    };
  }

  private boolean polarity() {
    if (r.energised == null) {
      return false;
    }
    double rest = r.restKpaGauge();
    double left = r.gauge(r.energised);
    boolean full = PolarityRoutine.doesNotEmpty(r);
    if (!full && !(left > EMPTY_SHARE * rest)) {
      monotone(rest);
      return false;
    }
    // A trapped line empties through its leak in the end; a bleed settles in between.
    boolean trapped = full || left > PolarityRoutine.FULL_SHARE * rest || !r.energised.settled();
    VerdictCode code =
        switch (r.heard) {
          case NOTHING -> VerdictCode.VENT_BLOCKED;
          case PUFF ->
              left > PolarityRoutine.FULL_SHARE * rest
                  ? VerdictCode.SENSOR_ON_WRONG_LINE
                  : VerdictCode.VENT_RESTRICTED;
          case STEADY_WHILE_ON ->
              trapped ? VerdictCode.SUPPLY_AND_ACTUATOR_EXCHANGED : VerdictCode.BLEED_VALVE;
          default -> VerdictCode.LINE_DOES_NOT_EMPTY;
        };
    add(code, "Fully energised the line keeps %.1f of %.1f kPa gauge.", left, rest);
    return true;
  }

  private void monotone(double rest) {
    double before = rest;
    for (Reading reading : r.polarity) {
      double now = r.gauge(reading);
      if (now > before + 0.05 * rest) {
        add(
            VerdictCode.DUTY_NOT_MONOTONE,
            "At %.0f %% duty the line rose from %.1f to %.1f kPa gauge.",
            100.0 * reading.dutyFraction(),
            before,
            now);
        return;
      }
      before = now;
    }
  }

  private void leak() {
    ValveFitResult fit = r.fit;
    double rate = r.leakRatePerSecond;
    // Against the better of the two paths, so that a kinked supply hose is not taken for a leak.
    double share =
        fit != null
            ? rate * fit.timeConstantSeconds().value() / Math.max(1.0, fit.ventOverFill().value())
            : rate * r.fillSeconds / 1.6;
    if (share > LEAK_SHARE) {
      add(
          VerdictCode.LEAK,
          "With the supply shut the line loses %.1f kPa/s, %.0f %% of what the valve can feed.",
          r.leakKpaPerSecond,
          100.0 * share);
    } else if (r.restKpaGauge() < GAUGE_SHARE * r.regulatorKpaGauge) {
      add(
          VerdictCode.GAUGES_DISAGREE,
          "Line %.1f kPa gauge, regulator %.1f.",
          r.restKpaGauge(),
          r.regulatorKpaGauge);
    }
  }

  private void supply() {
    double sag = (r.regulatorKpaGauge - r.regulatorWorkingKpaGauge) / r.regulatorKpaGauge;
    if (sag > DROOP_SHARE) {
      add(
          VerdictCode.SUPPLY_DROOPS,
          "The regulator showed %.1f kPa gauge at rest and %.1f while the valve worked.",
          r.regulatorKpaGauge,
          r.regulatorWorkingKpaGauge);
      return;
    }
    ValveFitResult fit = r.fit;
    if (fit == null) {
      return;
    }
    double ratio = fit.ventOverFill().value();
    if (ratio > RESTRICTED_RATIO) {
      add(VerdictCode.SUPPLY_RESTRICTED, "Venting is %.1f times as fast as filling.", ratio);
    } else if (ratio < 1.0 / RESTRICTED_RATIO) {
      add(VerdictCode.VENT_RESTRICTED, "Filling is %.1f times as fast as venting.", 1.0 / ratio);
    }
  }

  private void window() {
    boolean searched = r.completed.contains(BenchStep.EDGES);
    ValveFitResult fit = r.fit;
    if (fit == null) {
      if (searched) {
        add(VerdictCode.EDGES_NOT_FOUND, "%d of 4 edges found.", r.edges.size());
      }
      return;
    }
    double supply = fit.supplyKpaAbs() - fit.ambientKpaAbs();
    if (fit.rmsKpa() > MISFIT_SHARE * supply) {
      add(
          VerdictCode.MODEL_MISFIT,
          "Readings and model differ by %.1f kPa (root mean square over %d readings).",
          fit.rmsKpa(),
          fit.points());
    }
    double hz = plan.frequencyHz();
    if (Double.isNaN(hz)) {
      return;
    }
    double low = fit.windowLowDuty(hz).value();
    double high = fit.windowHighDuty(hz).value();
    String where =
        text(
            "At %.0f Hz the window is %.0f to %.0f %% duty (t_on %.1f ms, t_off %.1f ms).",
            hz,
            100.0 * low,
            100.0 * high,
            1000.0 * fit.onDelaySeconds().value(),
            1000.0 * fit.offDelaySeconds().value());
    if (high - low < NARROWEST_WINDOW) {
      found.add(new BenchVerdict(VerdictCode.FREQUENCY_TOO_HIGH, where));
    } else if (high - low < NARROW_WINDOW) {
      found.add(new BenchVerdict(VerdictCode.WINDOW_NARROW, where));
    }
    if (plan.settingsLowDuty() < fit.windowLowDuty(hz).low() - WINDOW_TOLERANCE
        || plan.settingsHighDuty() > fit.windowHighDuty(hz).high() + WINDOW_TOLERANCE) {
      found.add(
          new BenchVerdict(
              VerdictCode.SETTINGS_WINDOW,
              where
                  + text(
                      " The settings use %.1f to %.1f %%.",
                      100.0 * plan.settingsLowDuty(), 100.0 * plan.settingsHighDuty())));
    }
  }

  private void coilHeat() {
    ValveFitResult fit = r.fit;
    double hz = plan.frequencyHz();
    double duty =
        fit == null || Double.isNaN(hz) ? 0.8 : Math.max(0.3, fit.windowHighDuty(hz).value());
    double settled = plan.coil().settledC(duty, BenchPlan.UNDER_BONNET_C);
    if (settled > Coil.LIMIT_C && r.aborted != AbortReason.COIL_HOT) {
      add(
          VerdictCode.COIL_TOO_HOT,
          "%.1f ohm at %.1f V settle at %.0f degC under a bonnet of %.0f degC; limit %.0f.",
          plan.coil().ohms(),
          plan.coil().volts(),
          settled,
          BenchPlan.UNDER_BONNET_C,
          Coil.LIMIT_C);
    }
  }

  private void steadiness() {
    int unsteady = unsteady(r.sweepUp) + unsteady(r.sweepDown);
    if (unsteady > 0) {
      add(VerdictCode.LINE_UNSTEADY, "%d sweep readings did not settle in 30 s.", unsteady);
    }
  }

  private static int unsteady(List<Reading> readings) {
    int count = 0;
    for (Reading reading : readings) {
      count += reading.settled() ? 0 : 1;
    }
    return count;
  }

  private void actuator() {
    if (r.heldKpaGauge < HELD_SHARE * r.fullStrokeKpaGauge) {
      add(
          VerdictCode.ACTUATOR_LEAKS,
          "%.1f of %.1f kPa gauge left after 60 s.",
          r.heldKpaGauge,
          r.fullStrokeKpaGauge);
    }
    if (r.crackKpaGauge < 48.0 || r.crackKpaGauge > 69.0) {
      add(
          VerdictCode.ACTUATOR_SPRING,
          "The rod begins to move at %.1f kPa gauge.",
          r.crackKpaGauge);
    }
  }

  private void add(VerdictCode code, String format, Object... values) {
    found.add(new BenchVerdict(code, text(format, values)));
  }

  private static String text(String format, Object... values) {
    return String.format(Locale.ROOT, format, values);
  }
}
