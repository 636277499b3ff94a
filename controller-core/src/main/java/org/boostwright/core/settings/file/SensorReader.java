package org.boostwright.core.settings.file;

import java.util.Map;
import org.boostwright.core.AnalogChannel;
import org.boostwright.core.settings.AnalogSensor;
import org.boostwright.core.settings.MapLocation;
import org.boostwright.core.settings.SensorSettings;
import org.boostwright.core.table.Axis;
import org.boostwright.core.table.Curve;
import org.jspecify.annotations.Nullable;

/** Reads {@code [sensors]} and one table per analogue channel inside it. */
final class SensorReader {
  /** One code of a 16-bit converter on its +-6.144 V range, V (TI SBAS444, table of full scale). */
  static final double DEFAULT_STEP_VOLTS = 187.5e-6;

  /**
   * How far the valid range may reach beyond the calibrated one, as a share of the calibrated span.
   * Beyond the calibration the reading stands still, so a wide range would hide a broken wire.
   */
  private static final double REACH = 0.10;

  private static final double DEFAULT_REACH = 0.075;
  private static final Bounds VOLTS = new Bounds(0.0, 6.144);

  /** Nearer to 0 V than this a short to ground would pass for a reading, V. */
  private static final double LOWEST_VALID_VOLTS = 0.05;

  /** Nearer to a 5 V supply than this a short to supply would pass for a reading, V. */
  private static final double HIGHEST_VALID_VOLTS = 4.95;

  private final Reading reading;
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
      section.close(Map.of());
    }
    double ambient =
        sensors.pressure(
            "assumed_ambient", Spelling.Kind.LEVEL, Double.NaN, new Bounds(60.0, 106.0));
    return new SensorSettings(channels, location, life, mapNoiseKpa, ambient);
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
    double[] range = validRange(section, curve, valid);
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
    return section.number(
        rateKey(channel), none, rateQuantity(channel), new Bounds(lowest, 1e6));
  }

  private double[] validRange(Section section, Curve curve, @Nullable Numbers valid) {
    Axis axis = curve.axis();
    double low = axis.point(0);
    double high = axis.point(axis.size() - 1);
    double span = high - low;
    if (valid == null) {
      return new double[] {
        Math.max(LOWEST_VALID_VOLTS, low - DEFAULT_REACH * span),
        Math.min(HIGHEST_VALID_VOLTS, high + DEFAULT_REACH * span)
      };
    }
    if (valid.size() != 2 || !(valid.values()[0] < valid.values()[1])) {
      section.fail(
          "valid_volts",
          "valid_range",
          "write the lowest and the highest good voltage: [0.2, 4.8]");
      return new double[] {low, high};
    }
    double validLow = valid.values()[0];
    double validHigh = valid.values()[1];
    if (validLow > low || validHigh < high) {
      section.fail(
          "valid_volts",
          "valid_range",
          "the valid range "
              + Words.number(validLow)
              + " to "
              + Words.number(validHigh)
              + " V cuts off part of the calibration, "
              + Words.number(low)
              + " to "
              + Words.number(high)
              + " V; widen it or drop the calibration points outside");
    }
    if (validLow < low - REACH * span - 1e-9 || validHigh > high + REACH * span + 1e-9) {
      section.fail(
          "valid_volts",
          "valid_range",
          "the valid range "
              + Words.number(validLow)
              + " to "
              + Words.number(validHigh)
              + " V reaches more than a tenth of the span outside the calibration, "
              + Words.number(low)
              + " to "
              + Words.number(high)
              + " V: readings out there would stand still; keep it within "
              + Words.number(Math.max(LOWEST_VALID_VOLTS, low - REACH * span))
              + " to "
              + Words.number(Math.min(HIGHEST_VALID_VOLTS, high + REACH * span))
              + " V");
    }
    if (!(validLow >= LOWEST_VALID_VOLTS && validHigh <= HIGHEST_VALID_VOLTS)) {
      section.fail(
          "valid_volts",
          "valid_range",
          "the valid range "
              + Words.number(validLow)
              + " to "
              + Words.number(validHigh)
              + " V leaves no room to see a short: keep it within "
              + Words.number(LOWEST_VALID_VOLTS)
              + " to "
              + Words.number(HIGHEST_VALID_VOLTS)
              + " V");
    }
    return new double[] {validLow, validHigh};
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
