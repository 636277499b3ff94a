package org.boostwright.core.settings.file;

import org.boostwright.core.settings.ProjectSettings;

/** Reads {@code [project]}. */
final class ProjectReader {
  private ProjectReader() {}

  static ProjectSettings read(Section section) {
    Numbers altitudes =
        section.numbers("altitudes_m", Quantity.plain("m"), new Bounds(-300.0, 4000.0));
    double length =
        section.number("hose_length_mm", 300.0, Quantity.plain("mm"), new Bounds(10.0, 5000.0));
    double bore =
        section.number("hose_bore_mm", 4.0, Quantity.plain("mm"), new Bounds(1.0, 20.0));
    int actuators = section.whole("actuators", 1, 1, 2);
    boolean equal = section.flag("equal_legs", true);
    double volume =
        section.number("actuator_cm3", 56.0, Quantity.plain("cm3"), new Bounds(5.0, 500.0));
    boolean safe = section.flag("spring_is_safe", false);
    Bounds pressures = new Bounds(105.0, 600.0);
    double boost = section.pressure("boost", Spelling.Kind.LEVEL, Double.NaN, pressures);
    double safeKpa =
        section.pressure("safe_boost", Spelling.Kind.LEVEL, Double.NaN, pressures);
    double ratio =
        section.number(
            "compressor_ratio_max", 2.5, Quantity.plain("to 1"), new Bounds(1.1, 5.0));
    double runaway = section.pressure("runaway", Spelling.Kind.LEVEL, Double.NaN, pressures);
    return new ProjectSettings(
        boost,
        altitudes == null ? new double[] {0.0} : altitudes.values(),
        length,
        bore,
        actuators,
        equal,
        volume,
        safe,
        safeKpa,
        ratio,
        runaway);
  }
}
