package org.boostwright.pi.loop;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.boostwright.core.Controller;
import org.boostwright.core.settings.file.HoursFile;
import org.boostwright.core.upkeep.OperatingHours;
import org.boostwright.pi.io.PiBench;
import org.boostwright.pi.record.RowQueue;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Hours and valve cycles of drives over the Pi's own pins, kept over power cuts. */
class HoursStoreTest {
  private static final String DATE = "2026-05-01T10:00:00Z";
  private static final long MINUTE_TICKS = 12_000L;

  @TempDir Path folder;
  @TempDir Path data;

  private final RowQueue rows = new RowQueue(8);
  private int writes;

  private OperatingHours kept() throws Exception {
    return HoursFile.read(HoursFile.in(data)).orElseThrow();
  }

  /** Ticks one drive; {@code pulled} in full boost after four seconds, else idling. */
  private TickLoop drive(int ticks, boolean pulled, HoursStore store) throws Exception {
    PiBench pi = new PiBench(folder);
    TickLoop loop = new TickLoop(new Controller(pi.settings), pi.io, rows, pi.clock, null);
    long offset = pi.clock.nanoTime();
    for (int tick = 0; tick < ticks; tick++) {
      boolean boost = pulled && tick >= 800;
      pi.engineRpm = tick < 600 ? 0.0 : boost ? 4000.0 : 900.0;
      pi.mapKpaAbs = tick < 600 ? 101.3 : boost ? 150.0 : 40.0;
      pi.throttlePct = boost ? 100.0 : 6.0;
      loop.tick(pi.between());
      rows.remove();
      byte[] old = bytes();
      store.save(loop.hours(), pi.clock.nanoTime() - offset, false);
      writes += Arrays.equals(old, bytes()) ? 0 : 1;
    }
    return loop;
  }

  private byte[] bytes() throws Exception {
    Path file = HoursFile.in(data);
    return Files.exists(file) ? Files.readAllBytes(file) : new byte[0];
  }

  @Test
  void whatADriveCountedIsKeptAndTheNextGoesOn() throws Exception {
    HoursStore store = HoursStore.open(data, DATE);
    TickLoop loop = drive(2000, true, store);
    store.save(loop.hours(), 0L, true);
    OperatingHours first = kept();
    assertThat(first.since()).isEqualTo(DATE);
    assertThat(first.starts()).isEqualTo(1);
    assertThat(first.engineSeconds()).isCloseTo(7.0, within(0.3));
    assertThat(first.drivenSeconds()).isBetween(3.0, 6.0);
    assertThat(first.valveCycles()).isCloseTo(30.0 * first.drivenSeconds(), within(20.0));

    HoursStore next = HoursStore.open(data, "2026-06-01T10:00:00Z");
    loop = drive(1400, false, next);
    next.save(loop.hours(), 0L, true);
    OperatingHours second = kept();
    assertThat(second.since()).isEqualTo(DATE);
    assertThat(second.starts()).isEqualTo(2);
    assertThat(second.engineSeconds()).isCloseTo(first.engineSeconds() + 4.0, within(0.3));
    assertThat(second.valveCycles()).isEqualTo(first.valveCycles());
  }

  @Test
  void aPowerCutLosesAtMostAMinuteAndAMinuteIsOneWrite() throws Exception {
    HoursStore store = HoursStore.open(data, DATE);
    int ticks = (int) (3 * MINUTE_TICKS + 9_000);
    drive(ticks, false, store);
    // The cut: no last save. 225 s of ticks, the engine ran for all but three of them.
    double ran = ticks * 5e-3 - 3.0;
    assertThat(kept().engineSeconds()).isBetween(ran - 60.0, ran);
    assertThat(writes).isEqualTo(3);
  }

  @Test
  void aStandingCarWritesNothing() throws Exception {
    HoursStore store = HoursStore.open(data, DATE);
    drive(500, false, store);
    assertThat(HoursFile.in(data)).doesNotExist();
  }

  @Test
  void aDamagedFileIsMovedAsideAndTheNewDateSaysSo() throws Exception {
    HoursFile.write(HoursFile.in(data), new OperatingHours(DATE, 4, 7200.0, 10.0, 300.0));
    byte[] damaged = bytes();
    damaged[40] ^= 4;
    Files.write(HoursFile.in(data), damaged);
    HoursStore store = HoursStore.open(data, "2026-07-01T10:00:00Z");
    TickLoop loop = drive(1000, false, store);
    store.save(loop.hours(), 0L, true);
    assertThat(kept().since()).isEqualTo("2026-07-01T10:00:00Z");
    assertThat(kept().engineSeconds()).isLessThan(10.0);
    assertThat(data.resolve("hours.damaged")).hasBinaryContent(damaged);
    List<String> names = new ArrayList<>();
    try (var files = Files.list(data)) {
      files.forEach(file -> names.add(file.getFileName().toString()));
    }
    assertThat(names).containsExactlyInAnyOrder("hours", "hours.damaged");
  }
}
