package org.boostwright.core.settings.file;

import org.boostwright.core.settings.FeedbackSettings;
import org.boostwright.core.settings.Settings;
import org.boostwright.core.settings.SpoolSettings;
import org.boostwright.core.table.Curve;

/** Reads {@code [feedback]} and {@code [spool]}; both are off unless the file says otherwise. */
final class ControlReader {
  private ControlReader() {}

  static FeedbackSettings feedback(Section section) {
    boolean enabled = section.flag("enabled", false);
    Numbers rpm = CurveReader.axis(section, "rpm", Quantity.RPM, new Bounds(0.0, 20000.0));
    Curve kp = gain(section, rpm, "kp_pct_per_kpa", "% per kPa", 0.05);
    Curve ki = gain(section, rpm, "ki_pct_per_kpa_s", "% per kPa and second", 0.50);
    Curve kd = gain(section, rpm, "kd_pct_s_per_kpa", "% per kPa/s", 0.01);
    Quantity seconds = Quantity.plain("s");
    double tracking = section.number("tracking_s", 0.5, seconds, new Bounds(0.02, 20.0));
    double filter = section.number("derivative_filter_s", 0.05, seconds, new Bounds(0.005, 2.0));
    double within =
        section.pressure("active_within", Spelling.Kind.DIFFERENCE, 20.0, new Bounds(1.0, 200.0));
    if (enabled && !section.has("kp_pct_per_kpa") && !section.has("ki_pct_per_kpa_s")) {
      section.fail(
          "enabled",
          "gains_missing",
          "the pressure feedback is switched on but has no gains; write kp_pct_per_kpa and"
              + " ki_pct_per_kpa_s, or enabled = false");
    }
    return new FeedbackSettings(enabled, kp, ki, kd, tracking, filter, within);
  }

  private static Curve gain(
      Section section,
      @org.jspecify.annotations.Nullable Numbers rpm,
      String key,
      String unit,
      double highest) {
    return CurveReader.curve(
        section,
        "rpm",
        rpm,
        key,
        Curve.constant(0.0),
        Quantity.sharePer(unit),
        new Bounds(0.0, highest));
  }

  /** What the exhaust takes over in thinner air, from {@code [base_duty]}. */
  static Curve exhaustHelp(Section section) {
    Numbers rpm =
        CurveReader.axis(section, "exhaust_help_rpm", Quantity.RPM, new Bounds(0.0, 20000.0));
    return CurveReader.curve(
        section,
        "exhaust_help_rpm",
        rpm,
        "exhaust_help",
        Settings.DEFAULT_EXHAUST_HELP,
        Quantity.plain("kPa per kPa"),
        new Bounds(0.0, 1.5));
  }

  static SpoolSettings spool(Section section) {
    Quantity seconds = Quantity.plain("s");
    return new SpoolSettings(
        section.flag("enabled", false),
        section.number("lead_s", 0.25, seconds, new Bounds(0.0, 2.0)),
        section.number("time_limit_s", 2.0, seconds, new Bounds(0.1, 10.0)),
        section.pressure("min_rise", Spelling.Kind.RATE, 20.0, new Bounds(1.0, 300.0)));
  }
}
