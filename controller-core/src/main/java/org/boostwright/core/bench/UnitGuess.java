package org.boostwright.core.bench;

import org.boostwright.core.settings.PressureUnit;

/** Guesses from a number's size which unit it was really in. */
final class UnitGuess {
  private static final double NEAR = 0.12;

  private UnitGuess() {}

  /** For what a sensor calls ambient pressure, kPa absolute. */
  static String forAmbient(double number) {
    double standard = 101.325;
    if (Math.abs(number) < 5.0 && Math.abs(number - standard / PressureUnit.BAR.toKpa(1.0)) > 0.2) {
      return "0 means the sensor gives gauge pressure, not absolute";
    }
    return forRatio(number / standard);
  }

  /** For a number over what it should be. */
  static String forRatio(double ratio) {
    double psi = PressureUnit.PSI.toKpa(1.0);
    double bar = PressureUnit.BAR.toKpa(1.0);
    if (near(ratio, psi) || near(ratio, 1.0 / psi)) {
      return "a factor of 6.9 means psi taken for kPa or the other way round";
    }
    if (near(ratio, bar) || near(ratio, 1.0 / bar)) {
      return "a factor of 100 means bar taken for kPa or the other way round";
    }
    if (near(ratio, bar / psi) || near(ratio, psi / bar)) {
      return "a factor of 14.5 means bar taken for psi or the other way round";
    }
    if (near(ratio, 2.0) || near(ratio, 2.2)) {
      return "about 100 kPa too much means absolute taken for gauge";
    }
    return "no common unit explains the factor " + Math.round(100.0 * ratio) / 100.0;
  }

  private static boolean near(double ratio, double goal) {
    return Math.abs(ratio / goal - 1.0) < NEAR;
  }
}
