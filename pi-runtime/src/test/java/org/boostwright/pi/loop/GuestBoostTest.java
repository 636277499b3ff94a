package org.boostwright.pi.loop;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.function.IntConsumer;
import org.boostwright.core.Controller;
import org.boostwright.core.record.LogFormat;
import org.boostwright.core.settings.OptionalWires;
import org.boostwright.core.settings.Settings;
import org.boostwright.core.settings.file.SettingsEdit;
import org.boostwright.core.settings.file.SettingsFile;
import org.boostwright.core.state.SafetyState;
import org.boostwright.pi.io.PiBench;
import org.boostwright.pi.record.RowQueue;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Selector, guest setting, permit, spring-only switch and gears over the Pi's own pins. */
class GuestBoostTest {
  private static final int TARGET = LogFormat.column("target_kpa_abs");
  private static final int GEAR = LogFormat.column("gear");
  private static final int TICKS = 1300;
  private static final Path EXAMPLE =
      Path.of(System.getProperty("boostwright.root", ".."), "docs", "project-car.toml");

  @TempDir Path folder;
  @TempDir Path data;

  private final double[] row = new double[LogFormat.COLUMN_COUNT];
  private double highestTarget;

  /** The example without limits of gears, as far as not stated otherwise. */
  private static Settings settings(String... keysAndValues) throws Exception {
    SettingsEdit edit =
        SettingsEdit.of("car.toml", Files.readString(EXAMPLE))
            .setText("limits.gear_target_kpa_abs", "[180, 180, 180, 180, 180]");
    for (int i = 0; i < keysAndValues.length; i += 2) {
      edit = edit.setText(keysAndValues[i], keysAndValues[i + 1]);
    }
    return SettingsFile.parse("car.toml", edit.text().getBytes(StandardCharsets.UTF_8)).orThrow();
  }

  /** Three seconds of standing, a second of idling, then full throttle at 4000 1/min. */
  private PiBench drive(Settings settings, @Nullable GuestBoost driver, IntConsumer each) {
    return drive(new PiBench(folder, settings), driver, each);
  }

  private PiBench drive(PiBench pi, @Nullable GuestBoost driver, IntConsumer each) {
    RowQueue rows = new RowQueue(8);
    TickLoop loop = new TickLoop(new Controller(pi.settings), pi.io, rows, pi.clock, null, driver);
    highestTarget = 0.0;
    for (int tick = 0; tick < TICKS; tick++) {
      boolean boost = tick >= 800;
      pi.engineRpm = tick < 600 ? 0.0 : boost ? 4000.0 : 900.0;
      pi.mapKpaAbs = tick < 600 ? 101.3 : boost ? 150.0 : 40.0;
      pi.throttlePct = boost ? 100.0 : 6.0;
      each.accept(tick);
      loop.tick(pi.between());
      rows.remove();
      assertThat(loop.latest().read(row)).isTrue();
      if (tick >= 900) {
        highestTarget = Math.max(highestTarget, row[TARGET]);
      }
    }
    return pi;
  }

  private static SafetyState state(double[] row) {
    return SafetyState.values()[(int) row[LogFormat.STATE]];
  }

  @Test
  void theSelectorOnItsPinIsHighOnlyWhileItIsSteadilyHigh() throws Exception {
    Settings settings = settings();
    double low = settings.limits().lowBoostKpaAbs();
    drive(settings, null, tick -> {});
    assertThat(highestTarget).as("the twin: high").isGreaterThan(low + 5.0);

    PiBench off = new PiBench(folder, settings);
    drive(off, null, tick -> off.hardware.levels[PiBench.SELECTOR] = false);
    assertThat(highestTarget).as("low, and so a wire that is off").isCloseTo(low, within(1e-9));

    PiBench loose = new PiBench(folder, settings);
    // 0.9 s high, one tick low: never a whole second.
    drive(loose, null, tick -> loose.hardware.levels[PiBench.SELECTOR] = tick % 180 != 0);
    assertThat(highestTarget).as("chattering").isCloseTo(low, within(1e-9));

    PiBench dead = new PiBench(folder, settings);
    drive(dead, null, tick -> dead.hardware.stuck[PiBench.SELECTOR] = true);
    assertThat(highestTarget).as("a pin that cannot be read").isCloseTo(low, within(1e-9));
  }

  @Test
  void aGuestHasLowBoostWhateverTheSelectorSays() throws Exception {
    Settings settings = settings("limits.guest", "true");
    double low = settings.limits().lowBoostKpaAbs();
    GuestBoost driver = GuestBoost.open(data);
    drive(settings, driver, tick -> {});
    assertThat(highestTarget).as("nobody has said yet").isCloseTo(low, within(1e-9));
    driver.set(false);
    drive(settings, GuestBoost.open(data), tick -> {});
    assertThat(highestTarget).as("the owner").isGreaterThan(low + 5.0);
    driver.set(true);
    drive(settings, GuestBoost.open(data), tick -> {});
    assertThat(highestTarget).isCloseTo(low, within(1e-9));
  }

  @Test
  void anOwnerSaidWhileTheEngineRunsCountsFromTheNextStop() throws Exception {
    Settings settings = settings("limits.guest", "true");
    double low = settings.limits().lowBoostKpaAbs();
    GuestBoost driver = GuestBoost.open(data);
    drive(settings, driver, tick -> say(driver, tick == 700));
    assertThat(highestTarget).as("said while it runs").isCloseTo(low, within(1e-9));
    driver.set(true);
    drive(settings, driver, tick -> say(driver, tick == 590));
    assertThat(highestTarget).as("the twin: said while it stands").isGreaterThan(low + 5.0);
  }

  private static void say(GuestBoost driver, boolean owner) {
    try {
      if (owner) {
        driver.set(false);
      }
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  @Test
  void theGuestSettingNeedsNoSelector() throws Exception {
    Settings settings =
        settings("limits.guest", "true")
            .withOptional(new OptionalWires(true, false, false, true, true));
    double low = settings.limits().lowBoostKpaAbs();
    drive(settings, GuestBoost.open(data), tick -> {});
    assertThat(highestTarget).isCloseTo(low, within(1e-9));
  }

  @Test
  void everyDamagedLetterOfTheKeptSettingIsAGuest() throws Exception {
    GuestBoost.open(data).set(false);
    Path file = data.resolve("guest");
    byte[] whole = Files.readAllBytes(file);
    assertThat(GuestBoost.open(data).guest()).isFalse();
    for (int i = 0; i < whole.length; i++) {
      byte[] damaged = whole.clone();
      damaged[i] ^= 1;
      Files.write(file, damaged);
      assertThat(GuestBoost.open(data).guest()).as("byte %d", i).isTrue();
    }
    Files.delete(file);
    assertThat(GuestBoost.open(data).guest()).isTrue();
    Files.createDirectory(file);
    assertThat(GuestBoost.open(data).guest()).as("unreadable").isTrue();
  }

  @Test
  @Tag("P1")
  void anOpenPermitIsRestInTheSameTickAndAClosedOneIsNot() throws Exception {
    Settings settings = settings("wires.permit", "true", "pins.permit", "" + PiBench.PERMIT);
    drive(settings, null, tick -> {});
    assertThat(state(row)).as("the twin").isEqualTo(SafetyState.CONTROLLING);

    PiBench pi = new PiBench(folder, settings);
    boolean[] driven = {false};
    drive(
        pi,
        null,
        tick -> {
          driven[0] |= row[LogFormat.DUTY] > 0.0;
          pi.hardware.levels[PiBench.PERMIT] = tick < 1200;
          if (tick > 1200) {
            assertThat(row[LogFormat.DUTY]).as("tick %d", tick).isZero();
            assertThat(pi.hardware.levels[PiBench.COIL_SUPPLY]).as("tick %d", tick).isFalse();
          }
        });
    assertThat(driven[0]).isTrue();
    assertThat(state(row).isRest()).isTrue();
  }

  @Test
  void theSpringOnlySwitchIsSeenAndRests() throws Exception {
    PiBench pi = new PiBench(folder, settings());
    drive(pi, null, tick -> pi.hardware.levels[PiBench.SPRING_ONLY] = tick < 1200);
    assertThat(state(row)).isEqualTo(SafetyState.RESTING);
    assertThat(row[LogFormat.column("coil_feed")]).isZero();
    assertThat(row[LogFormat.DUTY]).isZero();
  }

  @ParameterizedTest
  @CsvSource({"1, 113.83, 160", "3, 48.22, 172", "5, 29.36, 150", "0, 20.0, 150"})
  void everyGearHasItsLimitAndAnUnknownOneTheLowest(int gear, double rpmPerKmh, double limit)
      throws Exception {
    Settings settings = settings("limits.gear_target_kpa_abs", "[160, 165, 172, 160, 150]");
    PiBench pi = new PiBench(folder, settings);
    drive(pi, null, tick -> pi.roadKmh = tick < 800 ? 0.0 : 4000.0 / rpmPerKmh);
    assertThat(row[GEAR]).isEqualTo(gear);
    assertThat(row[TARGET]).isCloseTo(limit, within(1e-9));
  }
}
