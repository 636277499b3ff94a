package org.boostwright.rig.wiring;

import static org.assertj.core.api.Assertions.assertThat;

import de.siegmar.fastcsv.reader.CsvReader;
import de.siegmar.fastcsv.reader.NamedCsvRecord;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.tomlj.Toml;
import org.tomlj.TomlTable;

/** Netlist, drawing, pin map, harness and parts list name the same parts, pins and nets. */
class WiringAgreementTest {
  private static final Pattern BOLD =
      Pattern.compile("font-weight=\"bold\">([A-Z]+[0-9.]+)</text>");
  private static final Pattern ELEMENT = Pattern.compile("^\\*? ?[RXLMC]?([A-Z]+[0-9]+) .*");

  @Test
  void everyDrawnPartIsInTheNetlistAndInThePartsListAndTheOtherWayRound() throws IOException {
    TreeSet<String> drawn = new TreeSet<>();
    TreeSet<String> listed = new TreeSet<>();
    TreeSet<String> simulated = new TreeSet<>();
    for (Path file : files("drawing", ".svg")) {
      String sheet = name(file);
      Matcher m = BOLD.matcher(Files.readString(file));
      while (m.find()) {
        String ref = m.group(1);
        if (!ref.contains(".") && !sheet.equals("harness")) {
          drawn.add(ref);
        }
      }
    }
    for (Path file : files("netlist", ".cir")) {
      for (String line : Files.readAllLines(file)) {
        Matcher m = ELEMENT.matcher(line);
        if (m.matches()) {
          simulated.add(m.group(1).replaceAll("^[RXM](?=(F|S|JP|NT|[UQK])[0-9])", ""));
        }
      }
    }
    for (NamedCsvRecord row : csv("parts.csv")) {
      List<String> refs = List.of(row.getField("references").split(" "));
      assertThat(row.getField("quantity")).isEqualTo(Integer.toString(refs.size()));
      listed.addAll(refs);
    }
    assertThat(listed).isEqualTo(drawn);
    assertThat(simulated).isEqualTo(drawn);
  }

  @Test
  void everyPinOfTheHeaderIsDrawnOnTheSheetThePinMapNames() throws IOException {
    int used = 0;
    for (NamedCsvRecord row : csv("pinmap.csv")) {
      if (!row.getField("sheet").isEmpty()) {
        used++;
        String drawing =
            Files.readString(
                WiringFolder.wiring().resolve("drawing/" + row.getField("sheet") + ".svg"));
        assertThat(drawing).contains(">A1." + row.getField("header_pin") + "</text>");
        if (!row.getField("gpio").isEmpty()) {
          assertThat(drawing).contains(">GPIO" + row.getField("gpio") + " ");
        }
      }
    }
    assertThat(used).isGreaterThan(15);
  }

  /** Wires of the harness carry the net that the netlist of their sheet names. */
  @Test
  void netsOfTheHarnessAreThoseOfTheNetlists() throws IOException {
    StringBuilder all = new StringBuilder();
    for (Path file : files("netlist", ".cir")) {
      all.append(Files.readString(file));
    }
    for (NamedCsvRecord row : csv("harness.csv")) {
      String net = row.getField("net").toLowerCase(Locale.ROOT);
      String node = net.equals("gnd") ? "0" : net;
      assertThat(all).as(row.getField("pin")).containsPattern("(?m)^\\w+( \\w+)* " + node + " ");
    }
  }

  /** The example settings and the circuit mean the same pins. */
  @Test
  void pinsOfTheExampleSettingsAreThoseOfTheCircuit() throws IOException {
    Map<String, Integer> circuit = new TreeMap<>();
    for (NamedCsvRecord row : csv("pinmap.csv")) {
      if (!row.getField("gpio").isEmpty() && !row.getField("net").isEmpty()) {
        circuit.put(row.getField("net"), Integer.parseInt(row.getField("gpio")));
      }
    }
    Map<String, String> keys =
        Map.of(
            "pwm",
            "COIL_PWM",
            "heartbeat",
            "HEARTBEAT",
            "coil_supply",
            "COIL_ENABLE",
            "lamp",
            "LAMP",
            "key",
            "KEY_PIN",
            "boost_selector",
            "SELECTOR_PIN",
            "spring_only_sense",
            "SPRING_PIN",
            "coil_feedback",
            "COIL_CURRENT",
            "tach",
            "TACH_PIN",
            "road",
            "ROAD_OUT");
    TomlTable pins =
        Toml.parse(WiringFolder.root().resolve("docs/project-car.toml")).getTableOrEmpty("pins");
    assertThat(pins.isEmpty()).isFalse();
    for (String key : pins.keySet()) {
      if (keys.containsKey(key)) {
        assertThat(pins.getLong(key)).as(key).isEqualTo(circuit.get(keys.get(key)).longValue());
      }
    }
  }

  /** What could move the valve or cut the engine boots low and has a pull-down of its own. */
  @Test
  void outputsBootLowWithAPullDownOfAtMost10Kiloohm() throws IOException {
    Circuit circuit = Circuit.own();
    Map<String, String> pullDowns =
        Map.of(
            "COIL_PWM", "R202", "HEARTBEAT", "R302", "COIL_ENABLE", "R307", "CUT_REQUEST", "R402");
    int found = 0;
    for (NamedCsvRecord row : csv("pinmap.csv")) {
      String ref = pullDowns.get(row.getField("net"));
      if (ref != null) {
        found++;
        assertThat(row.getField("at_boot")).as(row.getField("net")).isEqualTo("pulled down");
        Part part =
            circuit.fitted().stream().filter(b -> b.has(ref)).findFirst().orElseThrow().part(ref);
        assertThat(part.value()).isBetween(1.0, 10e3);
        assertThat(part.net("2")).isEqualTo("GND");
      }
    }
    assertThat(found).isEqualTo(4);
  }

  private static List<NamedCsvRecord> csv(String name) throws IOException {
    try (CsvReader<NamedCsvRecord> csv =
        CsvReader.builder().ofNamedCsvRecord(WiringFolder.wiring().resolve(name))) {
      return csv.stream().toList();
    }
  }

  private static List<Path> files(String folder, String end) throws IOException {
    try (Stream<Path> files = Files.list(WiringFolder.wiring().resolve(folder))) {
      return files.filter(file -> file.toString().endsWith(end)).sorted().toList();
    }
  }

  private static String name(Path file) {
    return file.getFileName().toString().replaceAll("\\..*", "");
  }
}
