package org.boostwright.rig.wiring;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/**
 * The 40-pin header of a Raspberry Pi 4 and 5: which GPIO sits where, what it does while the board
 * boots, what else it can do.
 *
 * <p>Boot pulls: GPIO 0 to 8 up, 9 to 27 down (Broadcom, BCM2711 ARM Peripherals, section 5.3; the
 * Pi 5's RP1 boots with the same pulls, RP1 Peripherals, section 3.1.3, from memory). GPIO 2 and 3
 * carry 1.8 kΩ to 3.3 V on the board.
 */
public final class PiHeader {
  /** What a pin does while the board boots. */
  public enum BootPull {
    UP,
    DOWN,
    FIXED_UP,
    /** Not a GPIO. */
    NONE
  }

  /**
   * A place on the header.
   *
   * @param place 1 to 40
   * @param name 3V3, 5V, GND or GPIO and number
   * @param gpio number of the processor, -1 for none
   * @param bootPull what it does while the board boots
   * @param pi4 what else it can do on a Pi 4
   * @param pi5 what else it can do on a Pi 5
   */
  public record Place(
      int place, String name, int gpio, BootPull bootPull, String pi4, String pi5) {}

  private static final String[] NAMES = {
    "3V3", "5V", "2", "5V", "3", "GND", "4", "14", "GND", "15", "17", "18", "27", "GND", "22", "23",
    "3V3", "24", "10", "GND", "9", "25", "11", "8", "GND", "7", "0", "1", "5", "GND", "6", "12",
    "13", "GND", "19", "16", "26", "20", "GND", "21"
  };

  /** All places in order. */
  public static final List<Place> PLACES = places();

  private PiHeader() {}

  /** The place of a GPIO; -1 when it is not on the header. */
  public static int placeOf(int gpio) {
    for (Place place : PLACES) {
      if (place.gpio() == gpio) {
        return place.place();
      }
    }
    return -1;
  }

  private static List<Place> places() {
    List<Place> places = new ArrayList<>();
    for (int i = 0; i < NAMES.length; i++) {
      String name = NAMES[i];
      boolean gpio =
          Character.isDigit(name.charAt(0)) && !name.endsWith("V") && !name.endsWith("3V3");
      int number = gpio ? Integer.parseInt(name) : -1;
      places.add(
          new Place(
              i + 1,
              gpio ? String.format(Locale.ROOT, "GPIO%d", number) : name,
              number,
              gpio ? pull(number) : BootPull.NONE,
              gpio ? other(number, false) : "",
              gpio ? other(number, true) : ""));
    }
    return List.copyOf(places);
  }

  private static BootPull pull(int gpio) {
    if (gpio == 2 || gpio == 3) {
      return BootPull.FIXED_UP;
    }
    return gpio <= 8 ? BootPull.UP : BootPull.DOWN;
  }

  private static String other(int gpio, boolean pi5) {
    return switch (gpio) {
      case 0, 1 -> "board identification: leave free";
      case 2 -> "two-wire bus 1 SDA";
      case 3 -> "two-wire bus 1 SCL; low wakes a halted board";
      case 4 -> "one-wire bus by default";
      case 7 -> "SPI 0 CE1";
      case 8 -> "SPI 0 CE0";
      case 9 -> "SPI 0 MISO";
      case 10 -> "SPI 0 MOSI";
      case 11 -> "SPI 0 SCLK";
      case 12 -> "PWM channel 0";
      case 13 -> "PWM channel 1";
      case 14 -> "serial port TXD: high while a console runs";
      case 15 -> "serial port RXD";
      case 18 -> pi5 ? "PWM channel 2; I2S audio clock" : "PWM channel 0; I2S audio clock";
      case 19 -> pi5 ? "PWM channel 3; I2S audio" : "PWM channel 1; I2S audio";
      case 20, 21 -> "I2S audio; SPI 1";
      case 16, 17 -> "SPI 1 chip select";
      case 26 -> "power-off overlay by default";
      default -> "";
    };
  }
}
