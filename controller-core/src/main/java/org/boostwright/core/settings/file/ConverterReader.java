package org.boostwright.core.settings.file;

import java.util.LinkedHashMap;
import java.util.Map;
import org.boostwright.core.AnalogChannel;
import org.boostwright.core.settings.AnalogSensor;
import org.boostwright.core.settings.ConverterSettings;
import org.boostwright.core.settings.ConverterSettings.Kind;
import org.boostwright.core.settings.ScanPlan;
import org.boostwright.core.settings.SensorSettings;
import org.jspecify.annotations.Nullable;

/** Reads {@code [converter]}: the chip, and which sensor sits on which of its inputs. */
final class ConverterReader {
  private static final Map<String, Kind> KINDS =
      Map.of("ads1115", Kind.ADS1115, "mcp3208", Kind.MCP3208);

  private ConverterReader() {}

  static @Nullable ConverterSettings read(Section section, SensorSettings sensors) {
    Kind kind = section.choice("kind", Kind.ADS1115, KINDS);
    boolean i2c = kind == Kind.ADS1115;
    int bus = section.whole("bus", i2c ? 1 : 0, 0, 30);
    int address =
        i2c
            ? section.whole("i2c_address", 0x48, 0x48, 0x4B)
            : section.whole("chip_select", 0, 0, 2);
    double fullScale =
        section.number(
            "full_scale_volts", i2c ? 6.144 : 5.0, Quantity.VOLTS, new Bounds(2.0, 6.144));
    if (i2c && fullScale != 6.144 && fullScale != 4.096 && fullScale != 2.048) {
      section.fail(
          "full_scale_volts",
          "converter_range",
          "an ADS1115 has no such range; write 6.144, 4.096 or 2.048");
    }
    int[] inputs = new int[AnalogChannel.COUNT];
    Map<Integer, String> taken = new LinkedHashMap<>();
    for (AnalogChannel channel : AnalogChannel.values()) {
      inputs[channel.ordinal()] = input(section, kind, channel, sensors, taken);
    }
    if (!section.present()) {
      return null;
    }
    ConverterSettings converter = new ConverterSettings(kind, bus, address, fullScale, inputs);
    checkPace(section, converter, sensors);
    return converter;
  }

  private static int input(
      Section section,
      Kind kind,
      AnalogChannel channel,
      SensorSettings sensors,
      Map<Integer, String> taken) {
    String key = channel.id();
    int input = section.whole(key, ConverterSettings.NOT_WIRED, 0, kind.inputs() - 1);
    boolean fitted = sensors.channel(channel) != null;
    if (!section.present()) {
      return input;
    }
    if (fitted && !section.has(key)) {
      section.fail(
          key,
          "converter_input_missing",
          "missing, and [sensors." + key + "] is there; write the converter's input it sits on");
    } else if (!fitted && section.has(key)) {
      section.fail(
          key,
          "converter_input_unused",
          "has an input but there is no [sensors." + key + "]; write that, or remove the input");
    }
    String other =
        input == ConverterSettings.NOT_WIRED ? null : taken.putIfAbsent(input, section.dotted(key));
    if (other != null) {
      section.fail(
          key,
          "converter_input_taken",
          "input " + input + " is already used by " + other + "; choose another input");
    }
    return input;
  }

  /** A channel that comes round more slowly than declared would be called stale all the time. */
  private static void checkPace(
      Section section, ConverterSettings converter, SensorSettings sensors) {
    ScanPlan plan = ScanPlan.of(converter);
    for (AnalogChannel channel : AnalogChannel.values()) {
      AnalogSensor sensor = sensors.channel(channel);
      if (sensor == null || converter.input(channel) == ConverterSettings.NOT_WIRED) {
        continue;
      }
      double period = plan.periodMillis(channel);
      if (!(sensor.refreshMillis() >= period)) {
        section.fail(
            channel.id(),
            "converter_too_slow",
            "comes round every "
                + Words.number(period)
                + " ms on this converter, but sensors."
                + channel.id()
                + ".refresh_ms says "
                + Words.number(sensor.refreshMillis())
                + "; write refresh_ms = "
                + Words.number(period)
                + " or more");
      }
    }
  }
}
