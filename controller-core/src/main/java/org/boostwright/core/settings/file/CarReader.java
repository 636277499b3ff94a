package org.boostwright.core.settings.file;

import java.util.Map;
import org.boostwright.core.settings.ActuatorLayout;
import org.boostwright.core.settings.ActuatorSettings;
import org.boostwright.core.settings.CarSettings;
import org.boostwright.core.settings.PressureUnit;
import org.boostwright.core.settings.UnitSettings;

/** Reads {@code [units]}, {@code [car]} and {@code [actuator]}. */
final class CarReader {
  /** Layouts that exist, and why this program does not drive them. */
  private static final Map<String, String> REFUSED_LAYOUTS =
      Map.of(
          "dual_port",
          "with pressure on both sides of the diaphragm a dead coil can hold the gate shut",
          "vacuum",
          "a vacuum actuator has no spring pressure to fall back on",
          "electric",
          "a motor on the gate stays where it is when the power goes",
          "variable_vanes",
          "vanes are not a wastegate: at rest they need not be the low-boost end",
          "two_valves",
          "two valves on two turbos need two of everything, and one that fails drives both shafts"
              + " apart",
          "bleed",
          "a two-port bleed valve never shuts the supply off: a plugged bleed or a lost hose"
              + " cannot be told from its work");

  private static final int LONGEST_NAME = 80;

  private CarReader() {}

  static UnitSettings units(Section section) {
    PressureUnit pressure =
        section.choice(
            "pressure",
            PressureUnit.KPA,
            Map.of("kPa", PressureUnit.KPA, "psi", PressureUnit.PSI, "bar", PressureUnit.BAR));
    boolean gauge =
        section.choice(
            "reference", Boolean.FALSE, Map.of("absolute", Boolean.FALSE, "gauge", Boolean.TRUE));
    return new UnitSettings(pressure, gauge);
  }

  static CarSettings car(Section section) {
    String name = section.text("name", "car");
    if (name != null && (name.length() > LONGEST_NAME || !name.matches("\\P{Cntrl}*"))) {
      section.fail(
          "name",
          "name_unusable",
          "is longer than "
              + LONGEST_NAME
              + " characters or has a line break in it; write a short name");
    }
    int cylinders = section.whole("cylinders", 4, 1, 12);
    double pulses =
        section.number(
            "pulses_per_revolution", 2.0, Quantity.plain("per revolution"), new Bounds(0.5, 4.0));
    if (pulses != 0.5 && pulses != Math.rint(pulses)) {
      section.fail(
          "pulses_per_revolution",
          "out_of_range",
          Words.number(pulses) + " per revolution; write 0.5, 1, 2, 3 or 4");
    }
    Quantity rpm = Quantity.RPM;
    double redline = section.number("redline_rpm", 6000.0, rpm, new Bounds(2000.0, 15000.0));
    double running = section.number("running_above_rpm", 500.0, rpm, new Bounds(200.0, 2000.0));
    double road =
        section.number(
            "road_pulses_per_km", 0.0, Quantity.plain("pulses/km"), new Bounds(0.0, 200000.0));
    if (road > 0.0 && road < 100.0) {
      section.fail(
          "road_pulses_per_km",
          "out_of_range",
          Words.number(road)
              + " pulses/km are too few to tell a speed; write 100 or more, or 0 for none");
    }
    Numbers gears =
        section.numbers(
            "gear_rpm_per_kmh", Quantity.plain("1/min per km/h"), new Bounds(5.0, 500.0));
    double[] ratios = new double[0];
    if (gears != null) {
      ratios = falls(section, gears) ? gears.values() : ratios;
      if (road == 0.0 && gears.size() > 0) {
        section.fail(
            "gear_rpm_per_kmh",
            "gears_without_road_speed",
            "gears cannot be told apart without road speed; write road_pulses_per_km as well,"
                + " or leave this out");
      }
    }
    return new CarSettings(
        name == null ? "car" : name, cylinders, pulses, redline, running, road, ratios);
  }

  private static boolean falls(Section section, Numbers gears) {
    for (int i = 1; i < gears.size(); i++) {
      if (!(gears.values()[i] < gears.values()[i - 1])) {
        section
            .reading()
            .error(
                "axis_order",
                gears.places()[i],
                gears.where()
                    + ", entry "
                    + (i + 1)
                    + ": "
                    + Words.number(gears.values()[i])
                    + " is not below the gear before it, "
                    + Words.number(gears.values()[i - 1])
                    + "; first gear comes first and turns the engine fastest");
        return false;
      }
    }
    return true;
  }

  static ActuatorSettings actuator(Section section) {
    String layout = section.text("layout", "single_port");
    boolean external = "external_gate".equals(layout);
    if (layout != null && !layout.equals("single_port") && !external) {
      String reason = REFUSED_LAYOUTS.get(layout);
      section.fail(
          "layout",
          "layout_refused",
          reason != null
              ? "\""
                  + layout
                  + "\" is not supported: "
                  + reason
                  + "; fit a single-port actuator"
                  + " and write \"single_port\""
              : "\""
                  + layout
                  + "\" is not known; write \"single_port\", or \"external_gate\" for an external"
                  + " gate plumbed to the same effect");
    }
    Bounds bounds = new Bounds(10.0, 250.0);
    double cracks = section.pressure("spring_cracks", Spelling.Kind.SPRING, Double.NaN, bounds);
    double full = section.pressure("spring_full_lift", Spelling.Kind.SPRING, Double.NaN, bounds);
    if (full <= cracks) {
      PressureUnit unit = section.reading().units().pressure();
      Quantity gauge = Quantity.gaugeLevel(new UnitSettings(unit, true));
      section.fail(
          section.spelled("spring_full_lift"),
          "spring_order",
          "full lift at "
              + gauge.words(full)
              + " is not above the pressure at which the gate begins to open, "
              + gauge.words(cracks)
              + "; swap or correct the two");
    }
    return new ActuatorSettings(
        external ? ActuatorLayout.EXTERNAL_GATE : ActuatorLayout.SINGLE_PORT, cracks, full);
  }
}
