package org.boostwright.pi.loop;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import org.boostwright.core.bench.proof.DamagedProofException;
import org.boostwright.core.settings.file.HoursFile;
import org.boostwright.core.upkeep.HoursMeter;
import org.boostwright.core.upkeep.OperatingHours;

/**
 * Keeps hours and valve cycles over power cuts.
 *
 * <p>While something is counted the file is written anew at most once a minute, about 300 bytes, so
 * that a cut loses at most a minute and a thousand hours are 60,000 small writes, far below what
 * the recordings write; nothing is written while the car stands.
 */
public final class HoursStore {
  /** Shortest time between two writes, ns. */
  static final long EVERY_NANOS = 60_000_000_000L;

  private final Path file;
  private final OperatingHours before;
  private OperatingHours kept;
  private long savedNanos;
  private boolean timed;

  private HoursStore(Path file, OperatingHours before) {
    this.file = file;
    this.before = before;
    kept = before;
  }

  /**
   * Goes on counting where the last run ended. A damaged file is moved aside, not lost, and
   * counting begins again: the date it begins at says so.
   *
   * @param date now, ISO 8601
   */
  public static HoursStore open(Path dataFolder, String date) throws IOException {
    Path file = HoursFile.in(dataFolder);
    try {
      OperatingHours before = HoursFile.read(file).orElseGet(() -> OperatingHours.from(date));
      return new HoursStore(file, before);
    } catch (DamagedProofException e) {
      Files.move(
          file,
          file.resolveSibling(file.getFileName() + ".damaged"),
          StandardCopyOption.REPLACE_EXISTING);
      return new HoursStore(file, OperatingHours.from(date));
    }
  }

  /**
   * Keeps what was counted, if there is anything new.
   *
   * @param last at the end of a run: now, however short ago the last time was
   */
  public void save(HoursMeter meter, long nowNanos, boolean last) throws IOException {
    if (!timed) {
      timed = true;
      savedNanos = nowNanos;
    }
    if (!last && nowNanos - savedNanos < EVERY_NANOS) {
      return;
    }
    savedNanos = nowNanos;
    OperatingHours now = before.plus(meter.counted(before.since()));
    if (now.equals(kept)) {
      return;
    }
    HoursFile.write(file, now);
    kept = now;
  }
}
