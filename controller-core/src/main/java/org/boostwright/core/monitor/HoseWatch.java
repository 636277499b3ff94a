package org.boostwright.core.monitor;

/**
 * A pressure reading that lies flat at ambient although boost is asked for: the hose is off the
 * sensor, or no boost is made at all.
 *
 * <p>Flat = within 2.5 kPa, which the sensor's noise fills to a third and a working engine leaves
 * soon. Two ways lead there. A reading that fell from boost within 50 ms and lies flat for 150 ms:
 * a throttle takes longer, or goes past ambient. And one that lies flat for a second at half the
 * redline or more and 60 % throttle or more, where any turbo makes boost. It sees what the fall
 * itself does not show: a hose that comes off with little boost, or just after the throttle moved.
 */
final class HoseWatch {
  static final double FLAT_KPA = 2.5;
  static final double BOOST_KPA = 8.0;
  static final long FELL_NANOS = 50_000_000L;
  static final long FELL_FLAT_NANOS = 150_000_000L;
  static final long NO_BOOST_NANOS = 1_000_000_000L;
  static final double FELL_THROTTLE_PCT = 45.0;
  static final double NO_BOOST_THROTTLE_PCT = 60.0;

  private final double halfRedlineRpm;
  private double lowKpa = Double.NaN;
  private double highKpa = Double.NaN;
  private long flatNanos;
  private boolean boosted;
  private long boostNanos;
  private long askedNanos;

  /**
   * @param redlineRpm highest engine speed the driver uses, 1/min
   */
  HoseWatch(double redlineRpm) {
    halfRedlineRpm = 0.5 * redlineRpm;
  }

  /**
   * Judges one valid sample.
   *
   * @param ambientKpa ambient pressure in use; NaN = unknown, then nothing is judged
   * @param floorKpa lowest ambient that is possible by now
   * @return true when it is no pressure of a working engine
   */
  boolean flatAtAmbient(
      long nowNanos,
      double kpa,
      double ambientKpa,
      double floorKpa,
      double throttlePct,
      double rpm) {
    if (!(kpa >= highKpa - FLAT_KPA && kpa <= lowKpa + FLAT_KPA)) {
      lowKpa = kpa;
      highKpa = kpa;
      flatNanos = nowNanos;
    }
    lowKpa = Math.min(lowKpa, kpa);
    highKpa = Math.max(highKpa, kpa);
    if (kpa >= ambientKpa + BOOST_KPA) {
      boosted = true;
      boostNanos = nowNanos;
    }
    boolean asked = throttlePct >= NO_BOOST_THROTTLE_PCT && rpm >= halfRedlineRpm;
    if (!asked) {
      askedNanos = nowNanos;
    }
    boolean atAmbient = lowKpa >= floorKpa - FLAT_KPA && highKpa <= ambientKpa + FLAT_KPA;
    if (!atAmbient) {
      return false;
    }
    boolean fell =
        boosted
            && flatNanos - boostNanos <= FELL_NANOS
            && nowNanos - flatNanos >= FELL_FLAT_NANOS
            && throttlePct >= FELL_THROTTLE_PCT;
    boolean none =
        nowNanos - flatNanos >= NO_BOOST_NANOS && nowNanos - askedNanos >= NO_BOOST_NANOS;
    return fell || none;
  }
}
