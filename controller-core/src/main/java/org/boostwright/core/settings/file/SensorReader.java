package org.boostwright.core.settings.file;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.boostwright.core.AnalogChannel;
import org.boostwright.core.settings.AnalogSensor;
import org.boostwright.core.settings.MapLocation;
import org.boostwright.core.settings.SensorSettings;
import org.boostwright.core.table.Curve;
import org.jspecify.annotations.Nullable;

/** Reads {@code [sensors]} and one table per analogue channel inside it. */
final class SensorReader {
  /** One code of a 16-bit converter on its +-6.144 V range, V (TI SBAS444, table of full scale). */
  static final double DEFAULT_STEP_VOLTS = 187.5e-6;

  private static final Bounds VOLTS = new Bounds(0.0, 6.144);

  private final Reading reading;
  private final List<Section> sections = new ArrayList<>();
  private double mapNoiseKpa;

  SensorReader(Reading reading) {
    this.reading = reading;
  }

  SensorSettings read(Section sensors) {
    @Nullable AnalogSensor[] channels = new @Nullable AnalogSensor[AnalogChannel.COUNT];
    Section mapSection = sensors.child("map");
    MapLocation location =
        mapSection.choice(
            "location",
            MapLocation.INTAKE_MANIFOLD,
            Map.of(
                "intake_manifold",
                MapLocation.INTAKE_MANIFOLD,
                "before_throttle",
                MapLocation.BEFORE_THROTTLE));
    double life =
        mapSection.pressure(
            "life_change",
            Spelling.Kind.DIFFERENCE,
            location == MapLocation.INTAKE_MANIFOLD ? 15.0 : 5.0,
            new Bounds(2.0, 60.0));
    for (AnalogChannel channel : AnalogChannel.values()) {
      Section section = channel == AnalogChannel.MAP ? mapSection : sensors.child(channel.id());
      channels[channel.ordinal()] = sensor(channel, section);
      sections.add(section);
    }
    double ambient =
        sensors.pressure(
            "assumed_ambient", Spelling.Kind.LEVEL, Double.NaN, new Bounds(60.0, 106.0));
    return new SensorSettings(channels, location, life, mapNoiseKpa, ambient);
  }

  /** The tables that were read, for the search for unknown keys. */
  List<Section> sections() {
    return sections;
  }

  private @Nullable AnalogSensor sensor(AnalogChannel channel, Section section) {
    boolean needed = channel == AnalogChannel.MAP || channel == AnalogChannel.THROTTLE;
    if (!section.present() && needed) {
      reading.error(
          "sensor_missing",
          null,
          "[sensors."
              + channel.id()
              + "] is missing; this sensor is needed: write volts = [...] and "
              + valueKey(channel)
              + " = [...] for it");
    }
    boolean pressure = isPressure(channel);
    Numbers volts = section.numbers("volts", Quantity.VOLTS, VOLTS);
    Numbers values =
        pressure
            ? section.pressures("pressure", Spelling.Kind.LEVEL, valueBounds(channel))
            : section.numbers(valueKey(channel), valueQuantity(channel), valueBounds(channel));
    double step =
        section.number("step_volts", DEFAULT_STEP_VOLTS, Quantity.VOLTS, new Bounds(1e-6, 0.5));
    double refresh =
        section.number(
            "refresh_ms", slow(channel) ? 50.0 : 5.0, Quantity.plain("ms"), new Bounds(1.0, 2e3));
    double rate = rate(channel, section);
    double noiseVolts = 0.0;
    double noiseKpa = 0.0;
    if (pressure) {
      noiseKpa = section.pressure("noise", Spelling.Kind.DIFFERENCE, 0.0, new Bounds(0.0, 20.0));
    } else {
      noiseVolts = section.number("noise_volts", 0.0, Quantity.VOLTS, new Bounds(0.0, 0.5));
    }
    Numbers valid = section.numbers("valid_volts", Quantity.VOLTS, VOLTS);
    if (!section.present()) {
      return null;
    }
    requireBoth(channel, section);
    if (volts == null || values == null) {
      return null;
    }
    Curve curve = CurveReader.calibration(reading, section, volts, values);
    if (curve == null) {
      return null;
    }
    if (pressure) {
      noiseVolts = noiseKpa / steepest(curve);
    }
    if (channel == AnalogChannel.MAP) {
      mapNoiseKpa = noiseKpa;
    }
    double[] range = ValidRange.of(section, curve, valid);
    return new AnalogSensor(curve, range[0], range[1], step, noiseVolts, refresh, rate);
  }

  private static void requireBoth(AnalogChannel channel, Section section) {
    String dotted = section.dotted(isPressure(channel) ? "pressure" : valueKey(channel));
    boolean volts = section.has("volts");
    boolean values = section.reading().stated().containsKey(dotted);
    if (!volts || !values) {
      String missing = volts ? valueKey(channel) : "volts";
      section
          .reading()
          .error(
              "calibration_missing",
              section.position(),
              section.dotted(missing)
                  + ": missing; a calibration needs volts = [...] and "
                  + valueKey(channel)
                  + " = [...], the same number of entries in both");
    }
  }

  private static double rate(AnalogChannel channel, Section section) {
    double none = Double.POSITIVE_INFINITY;
    if (channel == AnalogChannel.MAP) {
      return section.pressure("max_rate", Spelling.Kind.RATE, 3000.0, new Bounds(300.0, 1e5));
    }
    if (channel == AnalogChannel.BAROMETER) {
      return section.pressure("max_rate", Spelling.Kind.RATE, none, new Bounds(1.0, 1e5));
    }
    double lowest =
        switch (channel) {
          case THROTTLE, PEDAL -> 200.0;
          case SUPPLY -> 100.0;
          default -> 5.0;
        };
    return section.number(rateKey(channel), none, rateQuantity(channel), new Bounds(lowest, 1e6));
  }

  /** Largest slope of a calibration, value units per volt. */
  static double steepest(Curve curve) {
    double steepest = 0.0;
    for (int i = 1; i < curve.axis().size(); i++) {
      double slope =
          (curve.value(i) - curve.value(i - 1))
              / (curve.axis().point(i) - curve.axis().point(i - 1));
      steepest = Math.max(steepest, Math.abs(slope));
    }
    return steepest;
  }

  static boolean isPressure(AnalogChannel channel) {
    return channel == AnalogChannel.MAP || channel == AnalogChannel.BAROMETER;
  }

  private static boolean slow(AnalogChannel channel) {
    return channel.ordinal() > AnalogChannel.PEDAL.ordinal();
  }

  static String valueKey(AnalogChannel channel) {
    return switch (channel) {
      case MAP, BAROMETER -> "pressure";
      case THROTTLE -> "throttle_pct";
      case PEDAL -> "pedal_pct";
      case INTAKE_AIR, COOLANT -> "temperature_c";
      case SUPPLY -> "supply_volts";
    };
  }

  static String rateKey(AnalogChannel channel) {
    return switch (channel) {
      case MAP, BAROMETER -> "max_rate";
      case THROTTLE, PEDAL -> "max_rate_pct_per_s";
      case INTAKE_AIR, COOLANT -> "max_rate_c_per_s";
      case SUPPLY -> "max_rate_v_per_s";
    };
  }

  static Quantity rateQuantity(AnalogChannel channel) {
    return switch (channel) {
      case MAP, BAROMETER -> throw new IllegalArgumentException("a pressure has no single unit");
      case THROTTLE, PEDAL -> Quantity.plain("%/s");
      case INTAKE_AIR, COOLANT -> Quantity.plain("K/s");
      case SUPPLY -> Quantity.plain("V/s");
    };
  }

  static Quantity valueQuantity(AnalogChannel channel) {
    return switch (channel) {
      case MAP, BAROMETER -> throw new IllegalArgumentException("a pressure has no single unit");
      case THROTTLE, PEDAL -> Quantity.PERCENT;
      case INTAKE_AIR, COOLANT -> Quantity.CELSIUS;
      case SUPPLY -> Quantity.VOLTS;
    };
  }

  private static Bounds valueBounds(AnalogChannel channel) {
    return switch (channel) {
      case MAP -> new Bounds(0.0, 800.0);
      case BAROMETER -> new Bounds(0.0, 130.0);
      case THROTTLE, PEDAL -> new Bounds(-20.0, 120.0);
      case INTAKE_AIR, COOLANT -> new Bounds(-60.0, 200.0);
      case SUPPLY -> new Bounds(0.0, 40.0);
    };
  }
}
