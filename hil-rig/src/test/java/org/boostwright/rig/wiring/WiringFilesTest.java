package org.boostwright.rig.wiring;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.SortedMap;
import java.util.TreeSet;
import java.util.stream.Stream;
import org.boostwright.core.settings.WiringSettings;
import org.junit.jupiter.api.Test;

/** The committed wiring files are those of the description, byte for byte. */
class WiringFilesTest {
  private static final SortedMap<String, String> FILES = WiringFiles.of(Circuit.own());

  @Test
  void committedFilesAreRegeneratedByteForByte() throws IOException {
    for (String name : FILES.keySet()) {
      Path file = WiringFolder.wiring().resolve(name);
      assertThat(file).as("regenerate with: ./boostwright wiring --write").exists();
      assertThat(Files.readString(file)).as(name).isEqualTo(FILES.get(name));
    }
  }

  @Test
  void noFileIsLeftOverFromAnEarlierDescription() throws IOException {
    TreeSet<String> committed = new TreeSet<>();
    for (String folder : new String[] {"netlist", "drawing", "sim"}) {
      try (Stream<Path> files = Files.list(WiringFolder.wiring().resolve(folder))) {
        files.forEach(file -> committed.add(folder + "/" + file.getFileName()));
      }
    }
    committed.removeAll(FILES.keySet());
    assertThat(committed).isEmpty();
  }

  @Test
  void theExternalGateHasADrawingOfItsOwnInBothPositions() {
    String one = FILES.get("drawing/plumbing.svg");
    String external = FILES.get("drawing/plumbing-external-gate.svg");
    assertThat(external)
        .contains("external gate", "below diaphragm", "open to the air", "lifted: opens at")
        .contains("At rest: coil off", "Energised: coil on", "spring: shut");
    assertThat(one).doesNotContain("external gate").contains("actuator");
  }

  @Test
  void descriptionWrittenTwiceGivesTheSameBytes() {
    assertThat(WiringFiles.of(Circuit.own())).isEqualTo(FILES);
  }

  @Test
  void otherValuesReachNetlistAndDrawing() {
    WiringSettings own = WiringSettings.DEFAULT;
    WiringSettings.Driver d = own.driver();
    WiringSettings.Driver other =
        new WiringSettings.Driver(
            d.gateDriveVolts(),
            d.thresholdMaxVolts(),
            d.drainRatingVolts(),
            d.onOhms(),
            2200.0,
            d.fuseAmps(),
            d.loadDumpVolts());
    SortedMap<String, String> files =
        WiringFiles.of(
            Circuit.of(
                new WiringSettings(
                    own.converterSupplyVolts(), own.map(), own.coil(), other, own.heartbeat())));
    assertThat(files.get("netlist/valve-driver.cir")).contains("R202 q201_g 0 2.2k");
    assertThat(files.get("drawing/valve-driver.svg")).contains("2.2 kΩ").doesNotContain("4.7 kΩ");
  }
}
