package org.boostwright.core.settings.file;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.boostwright.core.settings.OptionalWires;
import org.boostwright.core.settings.PinSettings;
import org.jspecify.annotations.Nullable;

/**
 * Reads {@code [wires]} and {@code [pins]}.
 *
 * <p>Pulls at boot: GPIO 0 to 8 up, 9 to 27 down (Broadcom, BCM2835 ARM Peripherals, table 6-31).
 * Hardware PWM: channel 0 on GPIO 12 and 18, channel 1 on 13 and 19 (same table); on boards whose
 * PWM has four channels, GPIO 12, 13, 18, 19 are channels 0, 1, 2, 3 (from memory).
 */
final class PinReader {
  private static final int LAST_GPIO = 27;
  private static final int LAST_PULLED_UP = 8;

  /** The pin of each channel on a board with four; with two, each channel has two of them. */
  private static final List<Integer> FOUR_CHANNELS = List.of(12, 13, 18, 19);

  private final Reading reading;
  private final Map<Integer, String> taken = new LinkedHashMap<>();

  PinReader(Reading reading) {
    this.reading = reading;
  }

  static OptionalWires wires(Section section) {
    return new OptionalWires(
        section.flag("key", false),
        section.flag("permit", false),
        section.flag("boost_selector", false),
        section.flag("coil_feedback", false),
        section.flag("spring_only_sense", false));
  }

  @Nullable PinSettings pins(
      Section section, OptionalWires wires, boolean engineCut, boolean road) {
    boolean i2c = section.flag("i2c_in_use", true);
    boolean spi = section.flag("spi_in_use", false);
    boolean uart = section.flag("uart_in_use", false);
    bus(i2c, "the two-wire bus (i2c_in_use)", 2, 3);
    bus(spi, "the SPI bus (spi_in_use)", 7, 8, 9, 10, 11);
    bus(uart, "the serial port (uart_in_use)", 14, 15);
    boolean audio = section.flag("audio_board_in_use", false);
    bus(audio, "the audio board (audio_board_in_use)", 18, 19, 20, 21);
    int chip = section.whole("pwm_chip", 0, 0, 9);
    int channel = section.whole("pwm_channel", 0, 0, 3);
    int pwm = pin(section, "pwm", true, true);
    int heartbeat = pin(section, "heartbeat", true, true);
    int coilSupply = pin(section, "coil_supply", false, true);
    int cut = pin(section, "engine_cut", engineCut, true);
    int lamp = pin(section, "lamp", false, false);
    int key = pin(section, "key", wires.keyInput(), false);
    int permit = pin(section, "permit", wires.permitInput(), false);
    int selector = pin(section, "boost_selector", wires.boostSelector(), false);
    int springOnly = pin(section, "spring_only_sense", wires.springOnlySense(), false);
    int feedback = pin(section, "coil_feedback", wires.coilFeedback(), false);
    int tach = pin(section, "tach", true, false);
    int roadPin = pin(section, "road", road, false);
    int watchdog = pin(section, "watchdog_board", false, false);
    boolean machineWatchdog = section.flag("machine_watchdog", true);
    if (!section.present()) {
      return null;
    }
    unexpected(section, "key", wires.keyInput());
    unexpected(section, "permit", wires.permitInput());
    unexpected(section, "boost_selector", wires.boostSelector());
    unexpected(section, "spring_only_sense", wires.springOnlySense());
    unexpected(section, "coil_feedback", wires.coilFeedback());
    if (section.has("road") && !road) {
      section.fail(
          "road",
          "pin_without_wire",
          "has a pin but car.road_pulses_per_km is 0; write the pulses, or remove the pin");
    }
    hardwarePwm(section, pwm, channel);
    return new PinSettings(
        chip,
        channel,
        pwm,
        heartbeat,
        coilSupply,
        cut,
        lamp,
        key,
        permit,
        selector,
        springOnly,
        feedback,
        tach,
        roadPin,
        i2c,
        spi,
        uart,
        audio,
        watchdog,
        machineWatchdog);
  }

  private void bus(boolean used, String name, int... pins) {
    for (int pin : pins) {
      if (used) {
        taken.put(pin, name);
      }
    }
  }

  private int pin(Section section, String key, boolean needed, boolean mustBootLow) {
    int pin = section.whole(key, PinSettings.NOT_WIRED, 0, LAST_GPIO);
    if (!section.present()) {
      return pin;
    }
    if (!section.has(key)) {
      if (needed) {
        reading.error(
            "pin_missing",
            section.position(),
            section.dotted(key) + ": missing, and this wire is needed; write its GPIO number");
      }
      return pin;
    }
    if (pin == PinSettings.NOT_WIRED) {
      return pin;
    }
    String other = taken.putIfAbsent(pin, section.dotted(key));
    if (other != null) {
      section.fail(
          key,
          "pin_taken",
          "GPIO " + pin + " is already used by " + other + "; choose another pin");
    }
    if (mustBootLow && pin <= LAST_PULLED_UP) {
      section.fail(
          key,
          "pin_boots_high",
          "GPIO "
              + pin
              + " is pulled up while the board boots, which could energise this output; use one"
              + " of GPIO 9 to 27, with a pull-down of at most 10 kohm");
    }
    return pin;
  }

  private static void unexpected(Section section, String key, boolean wired) {
    if (section.has(key) && !wired) {
      section.fail(
          key,
          "pin_without_wire",
          "has a pin but wires." + key + " is not true; set it, or remove the pin");
    }
  }

  private static void hardwarePwm(Section section, int pwm, int channel) {
    if (pwm == PinSettings.NOT_WIRED) {
      return;
    }
    int four = FOUR_CHANNELS.indexOf(pwm);
    if (four < 0) {
      section.fail(
          "pwm",
          "pin_without_pwm",
          "GPIO " + pwm + " has no hardware PWM; use GPIO 12, 13, 18 or 19");
      return;
    }
    int two = four % 2;
    if (channel != two && channel != four) {
      section.fail(
          section.has("pwm_channel") ? "pwm_channel" : "pwm",
          "pwm_channel",
          "channel "
              + channel
              + " does not drive GPIO "
              + pwm
              + "; write "
              + (two == four ? "" + two : two + ", or " + four + " on a board with four channels"));
    }
  }
}
