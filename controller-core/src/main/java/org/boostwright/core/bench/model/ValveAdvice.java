package org.boostwright.core.bench.model;

import org.boostwright.core.table.Axis;
import org.boostwright.core.table.Curve;

/** What follows from a known valve: the PWM frequency to use, and the duty for each command. */
public final class ValveAdvice {
  /** Lowest frequency advised, Hz. */
  public static final int LOWEST_HZ = 15;

  /** Highest frequency advised, Hz. */
  public static final int HIGHEST_HZ = 60;

  /** Narrowest window advised where the ripple limit cannot be kept; project assumption. */
  public static final double NARROWEST_ADVISED = 0.3;

  /** Frequencies such valves are driven at, Hz (common practice, no source). */
  public static final int USUAL_LOW_HZ = 26;

  /** Upper end of the usual frequencies, Hz. */
  public static final int USUAL_HIGH_HZ = 39;

  private static final double UNKNOWN_SPEED_FACTOR = 3.0;
  private static final int PLACES = 12;
  private static final int MAP_POINTS = 11;
  private static final int HALVINGS = 40;

  private ValveAdvice() {}

  /**
   * A frequency with what to expect there.
   *
   * @param frequencyHz PWM frequency, Hz
   * @param windowWidth usable share of duty, 0 to 1
   * @param rippleKpa largest peak-to-peak ripple inside the window, kPa
   * @param keepsRippleLimit false when no frequency with a usable window keeps the limit
   */
  public record Frequency(
      int frequencyHz, double windowWidth, double rippleKpa, boolean keepsRippleLimit) {}

  /** Usable share of duty at a frequency; 0 when there is no window. */
  public static double windowWidth(ValveModel valve, double frequencyHz) {
    return Math.max(0.0, valve.windowHighDuty(frequencyHz) - valve.windowLowDuty(frequencyHz));
  }

  /** Largest ripple inside the window at a frequency, kPa; 0 when there is no window. */
  public static double largestRippleKpa(
      ValveModel valve, double frequencyHz, double supplyKpaAbs, double ambientKpaAbs) {
    double low = valve.windowLowDuty(frequencyHz);
    double width = windowWidth(valve, frequencyHz);
    double largest = 0.0;
    for (int i = 1; i < PLACES && width > 0.0; i++) {
      SteadyLine line =
          valve.steadyInside(frequencyHz, low + width * i / PLACES, supplyKpaAbs, ambientKpaAbs);
      largest = Math.max(largest, line.rippleKpa());
    }
    return largest;
  }

  /**
   * The frequency with the widest window that keeps a ripple limit. Where none with at least {@link
   * #NARROWEST_ADVISED} of window keeps it, the one with the least ripple among those.
   *
   * @param valve the valve
   * @param supplyKpaAbs supply, kPa absolute
   * @param ambientKpaAbs ambient, kPa absolute
   * @param rippleLimitKpa largest ripple accepted, kPa
   */
  public static Frequency recommend(
      ValveModel valve, double supplyKpaAbs, double ambientKpaAbs, double rippleLimitKpa) {
    return recommend(valve, supplyKpaAbs, ambientKpaAbs, rippleLimitKpa, LOWEST_HZ, HIGHEST_HZ);
  }

  /**
   * The frequency for a fitted valve. Ripple hangs on the line's speed; where the readings do not
   * tell that, the advice keeps to what is usual.
   */
  public static Frequency recommend(ValveFitResult fit, double rippleLimitKpa) {
    boolean known = speedIsKnown(fit);
    return recommend(
        fit.valve(),
        fit.supplyKpaAbs(),
        fit.ambientKpaAbs(),
        rippleLimitKpa,
        known ? LOWEST_HZ : USUAL_LOW_HZ,
        known ? HIGHEST_HZ : USUAL_HIGH_HZ);
  }

  /** True when the readings tell how fast the line fills and vents. */
  public static boolean speedIsKnown(ValveFitResult fit) {
    Estimate line = fit.timeConstantSeconds();
    return line.high() <= UNKNOWN_SPEED_FACTOR * line.low();
  }

  private static Frequency recommend(
      ValveModel valve,
      double supplyKpaAbs,
      double ambientKpaAbs,
      double rippleLimitKpa,
      int lowestHz,
      int highestHz) {
    Frequency best = null;
    for (int hz = lowestHz; hz <= highestHz; hz++) {
      double width = windowWidth(valve, hz);
      double ripple = largestRippleKpa(valve, hz, supplyKpaAbs, ambientKpaAbs);
      Frequency candidate = new Frequency(hz, width, ripple, ripple <= rippleLimitKpa);
      if (best == null || better(candidate, best)) {
        best = candidate;
      }
    }
    if (best == null) {
      throw new IllegalStateException("no frequency to choose from");
    }
    return best;
  }

  private static boolean better(Frequency a, Frequency b) {
    boolean aUsable = a.windowWidth() >= NARROWEST_ADVISED;
    boolean bUsable = b.windowWidth() >= NARROWEST_ADVISED;
    if (aUsable != bUsable) {
      return aUsable;
    }
    if (!aUsable) {
      return a.windowWidth() > b.windowWidth();
    }
    if (a.keepsRippleLimit() != b.keepsRippleLimit()) {
      return a.keepsRippleLimit();
    }
    return a.keepsRippleLimit() ? a.windowWidth() > b.windowWidth() : a.rippleKpa() < b.rippleKpa();
  }

  /**
   * Duty over the command 0 (least boost) to 1 (most), so that mean actuator pressure is linear in
   * the command between the two ends of the window. The jumps beyond the ends are left out.
   *
   * @param valve the valve
   * @param frequencyHz PWM frequency, Hz
   * @param lowDuty where the map begins, inside the window
   * @param highDuty where it ends, inside the window and above {@code lowDuty}
   * @param supplyKpaAbs supply, kPa absolute
   * @param ambientKpaAbs ambient, kPa absolute
   */
  public static Curve commandToDuty(
      ValveModel valve,
      double frequencyHz,
      double lowDuty,
      double highDuty,
      double supplyKpaAbs,
      double ambientKpaAbs) {
    if (!(highDuty > lowDuty)) {
      throw new IllegalArgumentException(
          "no duty window between " + lowDuty + " and " + highDuty + " at " + frequencyHz + " Hz");
    }
    double first = pressure(valve, frequencyHz, lowDuty, supplyKpaAbs, ambientKpaAbs);
    double last = pressure(valve, frequencyHz, highDuty, supplyKpaAbs, ambientKpaAbs);
    double[] commands = new double[MAP_POINTS];
    double[] duties = new double[MAP_POINTS];
    for (int i = 0; i < MAP_POINTS; i++) {
      commands[i] = (double) i / (MAP_POINTS - 1);
      double goal = first + commands[i] * (last - first);
      double low = lowDuty;
      double high = highDuty;
      for (int k = 0; k < HALVINGS; k++) {
        double middle = 0.5 * (low + high);
        if (pressure(valve, frequencyHz, middle, supplyKpaAbs, ambientKpaAbs) > goal) {
          low = middle;
        } else {
          high = middle;
        }
      }
      duties[i] = i == 0 ? lowDuty : i == MAP_POINTS - 1 ? highDuty : 0.5 * (low + high);
    }
    return new Curve(new Axis(commands), duties);
  }

  private static double pressure(
      ValveModel valve, double hz, double duty, double supplyKpaAbs, double ambientKpaAbs) {
    return valve.steadyInside(hz, duty, supplyKpaAbs, ambientKpaAbs).meanKpaAbs();
  }

  /**
   * The same valve with another clamp across its coil: t_off changes by the difference of the times
   * the current takes to die away.
   *
   * @param valve valve as measured
   * @param coil its coil
   * @param presentClampVolts clamp while it was measured, V
   * @param otherClampVolts clamp to predict for, V
   * @param releaseShare current that still holds the spool over full current; 0.2 is usual
   */
  public static ValveModel withClamp(
      ValveModel valve,
      Coil coil,
      double presentClampVolts,
      double otherClampVolts,
      double releaseShare) {
    double change =
        coil.decaySeconds(otherClampVolts, releaseShare)
            - coil.decaySeconds(presentClampVolts, releaseShare);
    return new ValveModel(
        valve.onDelaySeconds(),
        Math.max(1e-4, valve.offDelaySeconds() + change),
        valve.fillRatePerSecond(),
        valve.ventRatePerSecond(),
        valve.leakRatePerSecond(),
        valve.fillCriticalRatio(),
        valve.ventCriticalRatio());
  }

  /**
   * The same valve on a line of another volume: every rate scales with the volume.
   *
   * @param valve valve as measured
   * @param presentCm3 hose and actuator chamber while it was measured, cm3
   * @param otherCm3 the same to predict for; 4 mm hose holds 1.26 cm3 per 10 cm
   */
  public static ValveModel withVolume(ValveModel valve, double presentCm3, double otherCm3) {
    if (!(presentCm3 > 0.0 && otherCm3 > 0.0)) {
      throw new IllegalArgumentException(
          "volumes " + presentCm3 + " and " + otherCm3 + " cm3 must lie above 0");
    }
    double factor = presentCm3 / otherCm3;
    return new ValveModel(
        valve.onDelaySeconds(),
        valve.offDelaySeconds(),
        valve.fillRatePerSecond() * factor,
        valve.ventRatePerSecond() * factor,
        valve.leakRatePerSecond() * factor,
        valve.fillCriticalRatio(),
        valve.ventCriticalRatio());
  }
}
