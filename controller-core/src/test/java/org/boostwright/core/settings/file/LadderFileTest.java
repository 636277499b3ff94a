package org.boostwright.core.settings.file;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.EnumSet;
import java.util.List;
import org.boostwright.core.bench.BenchStep;
import org.boostwright.core.bench.proof.DamagedProofException;
import org.boostwright.core.bench.proof.Proof;
import org.boostwright.core.bench.proof.ProofSource;
import org.boostwright.core.ladder.Ladder;
import org.boostwright.core.ladder.LadderRefusedException;
import org.boostwright.core.ladder.Rung;
import org.boostwright.core.settings.Settings;
import org.boostwright.core.state.Permission;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The ladder beside a settings file, as the runtime finds it at each start. */
class LadderFileTest {
  private static final String DATE = "2026-03-02T10:00:00Z";

  @TempDir Path folder;
  private Path car;
  private Settings settings;

  @BeforeEach
  void climb() throws Exception {
    car = folder.resolve("car.toml");
    Files.write(car, Example.bytes());
    settings = Example.settings();
    prove(ProofSource.PI, false);
    climbAll(false);
  }

  private void prove(ProofSource source, boolean practice) throws IOException {
    ProofFile.write(
        ProofFile.beside(car, practice),
        new Proof(
            source,
            SettingsDigest.ofHardware(settings),
            "2026-03-01T10:00:00Z",
            "0.1.0",
            EnumSet.allOf(BenchStep.class),
            List.of(),
            List.of()));
  }

  private void climbAll(boolean practice) throws IOException, LadderRefusedException {
    Ladder ladder = Ladder.EMPTY;
    for (Rung rung : Rung.values()) {
      ladder =
          ladder.pass(
              rung, LadderFile.facts(car, settings, practice), DATE, "0.1.0", "", List.of());
    }
    LadderFile.write(LadderFile.beside(car, practice), ladder);
  }

  private Permission permission(Settings now) {
    return LadderFile.standing(car, now, false).permission(now.valve());
  }

  @Test
  void aClimbedLadderAllowsEverythingAgainAndAgain() {
    assertThat(permission(settings)).isEqualTo(Permission.FULL);
    assertThat(permission(settings)).isEqualTo(Permission.FULL);
    assertThat(LadderFile.beside(car, false)).isEqualTo(folder.resolve("car.ladder.txt"));
  }

  @Test
  void editsOfTheSettingsBringItBackAsFarAsTheyMatter() {
    assertThat(permission(edited("car.name", "Other"))).isEqualTo(Permission.FULL);
    assertThat(permission(edited("units.pressure", "psi"))).isEqualTo(Permission.FULL);
    assertThat(permission(edited("feedback.tracking_s", "0.6"))).isEqualTo(Permission.FULL);
    assertThat(LadderFile.standing(car, edited("feedback.tracking_s", "0.6"), false).next())
        .isEqualTo(Rung.PRESSURE_FEEDBACK);
    assertThat(permission(edited("spool.lead_s", "0.3")).feedbackAllowed()).isFalse();
    assertThat(permission(edited("limits.min_rpm", "1900")).dutyCeilingFraction())
        .isLessThan(0.35);
    for (String key : List.of("limits.cutoff_kpa_abs", "valve.coil_ohms", "car.redline_rpm")) {
      assertThat(permission(edited(key, key.startsWith("v") ? "31" : key.startsWith("c") ? "6900" : "199")))
          .as(key)
          .isEqualTo(Permission.NONE);
    }
  }

  private static Settings edited(String key, String value) {
    String text = new String(Example.bytes(), StandardCharsets.UTF_8);
    return SettingsEdit.of("car.toml", text).setText(key, value).load().orThrow();
  }

  @Test
  void aLostDamagedOrForeignFileAllowsNothing() throws Exception {
    Path file = LadderFile.beside(car, false);
    byte[] whole = Files.readAllBytes(file);
    for (int length = 0; length < whole.length; length += 37) {
      Files.write(file, Arrays.copyOf(whole, length));
      assertThat(permission(settings)).as("cut at %d", length).isEqualTo(Permission.NONE);
    }
    for (int at = 0; at < whole.length; at += 11) {
      byte[] flipped = whole.clone();
      flipped[at] ^= (byte) (1 << at % 8);
      Files.write(file, flipped);
      assertThat(permission(settings)).as("bit in byte %d", at).isEqualTo(Permission.NONE);
      assertThatThrownBy(() -> LadderFile.read(file)).isInstanceOf(DamagedProofException.class);
    }
    Files.write(file, new byte[3_000_000]);
    assertThat(permission(settings)).isEqualTo(Permission.NONE);
    Files.delete(file);
    Files.createDirectory(file);
    assertThat(permission(settings)).isEqualTo(Permission.NONE);
    Files.delete(file);
    assertThat(permission(settings)).isEqualTo(Permission.NONE);
    Files.write(file, whole);
    assertThat(permission(settings)).isEqualTo(Permission.FULL);
    Files.delete(ProofFile.beside(car));
    assertThat(permission(settings)).isEqualTo(Permission.NONE);
  }

  @Test
  void practiceNeverCountsForTheCarEvenCopiedOverIt() throws Exception {
    prove(ProofSource.VIRTUAL, true);
    climbAll(true);
    assertThat(LadderFile.standing(car, settings, true).next()).isNull();
    Files.write(
        LadderFile.beside(car, false), Files.readAllBytes(LadderFile.beside(car, true)));
    assertThat(permission(settings)).isEqualTo(Permission.NONE);
    Files.write(ProofFile.beside(car), Files.readAllBytes(ProofFile.beside(car, true)));
    assertThat(permission(settings)).isEqualTo(Permission.NONE);
  }

  @Test
  void aProofOfRealHardwareIsNoPractice() throws Exception {
    prove(ProofSource.PI, true);
    assertThat(LadderFile.facts(car, settings, true).benchProven()).isFalse();
  }
}
