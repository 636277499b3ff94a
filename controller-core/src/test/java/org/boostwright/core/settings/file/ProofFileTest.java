package org.boostwright.core.settings.file;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.EnumSet;
import java.util.List;
import org.boostwright.core.bench.BenchStep;
import org.boostwright.core.bench.proof.Proof;
import org.boostwright.core.bench.proof.ProofSource;
import org.boostwright.core.bench.proof.ProofState.Status;
import org.boostwright.core.settings.Settings;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** The proof beside a settings file holds as long as the hardware in the file stays the same. */
@Tag("P5")
class ProofFileTest {
  private final Settings proven = Example.settings();

  @TempDir Path folder;

  private Path written() throws Exception {
    Path file = ProofFile.beside(folder.resolve("car.toml"));
    ProofFile.write(
        file,
        new Proof(
            ProofSource.PI,
            SettingsDigest.ofHardware(proven),
            "2026-03-01",
            "0.1.0",
            EnumSet.allOf(BenchStep.class),
            List.of(),
            List.of()));
    return file;
  }

  private static Settings changed(String key, String value) {
    String text = new String(Example.bytes(), StandardCharsets.UTF_8);
    return SettingsEdit.of("project-car.toml", text).setText(key, value).load().orThrow();
  }

  @Test
  void theProofLiesBesideTheSettings() {
    assertThat(ProofFile.beside(Path.of("garage", "car.toml")))
        .isEqualTo(Path.of("garage", "car.bench-proof.txt"));
  }

  @Test
  void theSameHardwareIsProven() throws Exception {
    assertThat(ProofFile.state(written(), proven).status()).isEqualTo(Status.VALID);
  }

  @ParameterizedTest
  @CsvSource({
    "valve.frequency_hz, 31",
    "valve.coil_ohms, 29",
    "pins.heartbeat, 19",
    "pins.pwm, 12",
    "sensors.map.location, before_throttle",
    "sensors.map.life_change_kpa, 9",
    "actuator.spring_cracks_kpa_gauge, 55"
  })
  void pinsFrequencySensorsAndValveVoidTheProof(String key, String value) throws Exception {
    assertThat(ProofFile.state(written(), changed(key, value)).status())
        .isEqualTo(Status.HARDWARE_CHANGED);
  }

  @ParameterizedTest
  @CsvSource({
    "limits.cutoff_kpa_abs, 199",
    "sensors.throttle.valid_volts, '[0.3, 4.8]'",
    "feedback.enabled, false",
    "car.name, Other",
    "units.pressure, psi"
  })
  void tablesLimitsAndFeedbackDoNot(String key, String value) throws Exception {
    Settings other = changed(key, value);
    assertThat(other).isNotEqualTo(proven);
    assertThat(ProofFile.state(written(), other).status()).isEqualTo(Status.VALID);
  }

  @Test
  void noFileAndADamagedOneAreNoProof() throws Exception {
    Path file = written();
    byte[] bytes = Files.readAllBytes(file);
    assertThat(ProofFile.state(folder.resolve("none.txt"), proven).status())
        .isEqualTo(Status.MISSING);
    for (int at = 0; at < bytes.length; at++) {
      Files.write(file, Arrays.copyOf(bytes, at));
      assertThat(ProofFile.state(file, proven).status())
          .as("cut at %d", at)
          .isEqualTo(Status.DAMAGED);
      byte[] changed = bytes.clone();
      changed[at] ^= (byte) (1 << at % 8);
      Files.write(file, changed);
      assertThat(ProofFile.state(file, proven).status())
          .as("byte %d", at)
          .isEqualTo(Status.DAMAGED);
    }
    Files.write(file, Arrays.copyOf(bytes, bytes.length + 1));
    assertThat(ProofFile.state(file, proven).status()).isEqualTo(Status.DAMAGED);
    Files.write(file, new byte[200_000]);
    assertThat(ProofFile.state(file, proven).allowsControl()).isFalse();
  }
}
