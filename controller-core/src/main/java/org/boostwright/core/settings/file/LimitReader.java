package org.boostwright.core.settings.file;

import org.boostwright.core.settings.LimitSettings;
import org.boostwright.core.settings.UnitSettings;
import org.boostwright.core.table.Axis;
import org.boostwright.core.table.Curve;

/** Reads {@code [limits]}. Whatever is absent is set so that the valve stays at rest. */
final class LimitReader {
  /**
   * Overboost limit of a file that names none, kPa absolute: above what a factory spring of 7 to 10
   * psi holds, below what an untouched engine minds (common practice, no source).
   */
  static final double DEFAULT_CUTOFF_KPA_ABS = 180.0;

  /** Below this a limit would trip on every road, kPa absolute. */
  static final double LOWEST_CUTOFF_KPA_ABS = 120.0;

  /** The feedback may never move the duty further than this (fraction of 1). */
  static final double HIGHEST_TRIM_CAP = 0.30;

  private static final Bounds LEVEL = new Bounds(LOWEST_CUTOFF_KPA_ABS, 600.0);
  private static final Bounds TARGET = new Bounds(UnitSettings.STANDARD_ATMOSPHERE_KPA, 600.0);
  private static final Bounds DUTY = new Bounds(0.0, 1.0);
  private static final Bounds AIR = new Bounds(0.0, 120.0);

  /** Less boost from 50 to 60 degC, spring only by 70 to 80 (common practice, no source). */
  private static final Curve DEFAULT_AIR = new Curve(new Axis(50.0, 60.0, 75.0), 1.0, 0.8, 0.6);

  private LimitReader() {}

  /**
   * @param defaultCutoffKpaAbs limit when the file names none; the sensor may ask for a lower one
   */
  static LimitSettings read(Section section, double defaultCutoffKpaAbs) {
    double cutoff = section.pressure("cutoff", Spelling.Kind.LEVEL, defaultCutoffKpaAbs, LEVEL);
    double ratio =
        section.number(
            "pressure_ratio_max", 2.5, Quantity.plain("times ambient"), new Bounds(1.0, 4.0));
    Quantity rpm = Quantity.RPM;
    Numbers ceilingRpm =
        CurveReader.axis(section, "duty_ceiling_rpm", rpm, new Bounds(0.0, 20000.0));
    Curve ceiling =
        CurveReader.curve(
            section,
            "duty_ceiling_rpm",
            ceilingRpm,
            "duty_ceiling_pct",
            Curve.constant(0.0),
            Quantity.SHARE,
            DUTY);
    double trim =
        section.number("trim_cap_pct", 0.10, Quantity.SHARE, new Bounds(0.0, HIGHEST_TRIM_CAP));
    Numbers air = CurveReader.axis(section, "intake_air_c", Quantity.CELSIUS, AIR);
    Curve factor =
        CurveReader.curve(
            section,
            "intake_air_c",
            air,
            "intake_air_boost_pct",
            DEFAULT_AIR,
            Quantity.SHARE,
            DUTY);
    notRising(section, factor);
    double springOnly =
        section.number("spring_only_above_c", 75.0, Quantity.CELSIUS, new Bounds(30.0, 100.0));
    Numbers gears = section.pressures("gear_target", Spelling.Kind.LEVEL, TARGET);
    double low =
        section.pressure(
            "low_boost", Spelling.Kind.LEVEL, UnitSettings.STANDARD_ATMOSPHERE_KPA, TARGET);
    double minRpm = section.number("min_rpm", 2000.0, rpm, new Bounds(500.0, 10000.0));
    double minThrottle =
        section.number("min_throttle_pct", 30.0, Quantity.PERCENT, new Bounds(5.0, 95.0));
    boolean cut = section.flag("engine_cut", false);
    boolean guest = section.flag("guest", false);
    return new LimitSettings(
        cutoff,
        ratio,
        ceiling,
        trim,
        factor,
        springOnly,
        gears == null ? new double[0] : gears.values(),
        low,
        minRpm,
        minThrottle,
        cut,
        guest);
  }

  private static void notRising(Section section, Curve factor) {
    for (int i = 1; i < factor.axis().size(); i++) {
      if (factor.value(i) > factor.value(i - 1)) {
        section.fail(
            "intake_air_boost_pct",
            "hot_air_more_boost",
            "rises from "
                + Quantity.SHARE.words(factor.value(i - 1))
                + " to "
                + Quantity.SHARE.words(factor.value(i))
                + " at "
                + Quantity.CELSIUS.words(factor.axis().point(i))
                + "; hotter air must not bring more boost, write falling numbers");
        return;
      }
    }
  }
}
