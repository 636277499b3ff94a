package org.boostwright.rig.wiring.draw;

import java.util.Locale;
import java.util.Map;
import java.util.TreeMap;
import org.boostwright.rig.wiring.Block;
import org.boostwright.rig.wiring.Circuit;
import org.boostwright.rig.wiring.Part;
import org.boostwright.rig.wiring.PiHeader;
import org.boostwright.rig.wiring.PiHeader.BootPull;
import org.boostwright.rig.wiring.PiHeader.Place;
import org.boostwright.rig.wiring.Symbol;

/** Writes the pin map of the computer's header from the terminals on the sheets. */
public final class PinMap {
  /**
   * What the circuit does with a place.
   *
   * @param net the net
   * @param text words on the sheet
   * @param sheet name of the sheet
   * @param option true when only another sheet than the fitted ones uses it
   */
  public record Use(String net, String text, String sheet, boolean option) {}

  private static final String HEADER = "A1.";

  private PinMap() {}

  /** Uses by place on the header. */
  public static Map<Integer, Use> uses(Circuit circuit) {
    Map<Integer, Use> uses = new TreeMap<>();
    circuit.fitted().forEach(block -> collect(uses, block, false));
    circuit.alternatives().forEach(block -> collect(uses, block, true));
    return uses;
  }

  private static void collect(Map<Integer, Use> uses, Block block, boolean option) {
    for (Part part : block.parts()) {
      if (part.symbol() == Symbol.TERMINAL && part.ref().startsWith(HEADER)) {
        int place = Integer.parseInt(part.ref().substring(HEADER.length()));
        uses.putIfAbsent(place, new Use(part.net("1"), part.text(), block.id(), option));
      }
    }
  }

  /** As CSV. */
  public static String csv(Circuit circuit) {
    Map<Integer, Use> uses = uses(circuit);
    CsvText csv = new CsvText();
    csv.row("header_pin", "name", "gpio", "at_boot", "use", "net", "sheet", "pi4", "pi5");
    for (Place place : PiHeader.PLACES) {
      Use use = uses.get(place.place());
      csv.row(
          Integer.toString(place.place()),
          place.name(),
          place.gpio() < 0 ? "" : Integer.toString(place.gpio()),
          boot(place.bootPull()),
          use == null ? "" : words(use),
          use == null ? "" : use.net(),
          use == null ? "" : use.sheet(),
          place.pi4(),
          place.pi5());
    }
    return csv.text();
  }

  /** As a page. */
  public static String markdown(Circuit circuit) {
    Map<Integer, Use> uses = uses(circuit);
    StringBuilder page =
        new StringBuilder(
            """
            # Pin map, Raspberry Pi 4 and 5

            Generated from the circuit description; the same in [pinmap.csv](pinmap.csv). GPIO numbers are those of the processor, header pins those counted along the 40-pin header.

            At boot: what the pin does until a program sets it. Outputs that could move the valve or cut the engine sit only on pins that are pulled *down* while the board boots, each with a pull-down of its own of 4.7 kΩ besides. GPIO 18 is PWM channel 0 on a Pi 4 and channel 2 on a Pi 5: `pwm_channel` in the settings differs, the wire does not. An audio board on the header (I2S) needs GPIO 18 to 21 and cannot be fitted.

            | header pin | name | at boot | use here | net | Pi 4 otherwise | Pi 5 otherwise |
            |---|---|---|---|---|---|---|
            """);
    for (Place place : PiHeader.PLACES) {
      Use use = uses.get(place.place());
      page.append(
          String.format(
              Locale.ROOT,
              "| %d | %s | %s | %s | %s | %s | %s |%n",
              place.place(),
              place.name(),
              boot(place.bootPull()),
              use == null ? "" : words(use),
              use == null ? "" : use.net(),
              place.pi4(),
              place.pi4().isEmpty() || !place.pi5().equals(place.pi4())
                  ? place.pi5()
                  : "the same"));
    }
    return page.toString().replace("\r\n", "\n").replace("|  |", "| |").replace("|  |", "| |");
  }

  private static String words(Use use) {
    String text = use.text().replaceFirst("^GPIO\\d+ ", "");
    return use.option() ? text + " (only with " + use.sheet() + ")" : text;
  }

  private static String boot(BootPull pull) {
    return switch (pull) {
      case UP -> "pulled up";
      case DOWN -> "pulled down";
      case FIXED_UP -> "1.8 kΩ to 3.3 V on the board";
      case NONE -> "";
    };
  }
}
