package org.boostwright.pi.loop;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.util.Arrays;
import org.boostwright.core.settings.file.AtomicFile;

/**
 * The guest setting: low boost for somebody else driving, whatever the selector says, until the
 * owner ends it. Kept over power cuts in a file of the data folder; a file that is missing, damaged
 * or unreadable is a guest.
 */
public final class GuestBoost {
  private static final byte[] OWNER =
      "boostwright-guest-1\ndriver=owner\nend\n".getBytes(StandardCharsets.US_ASCII);
  private static final byte[] GUEST =
      "boostwright-guest-1\ndriver=guest\nend\n".getBytes(StandardCharsets.US_ASCII);

  private final Path file;
  private volatile boolean guest = true;

  private GuestBoost(Path file) {
    this.file = file;
  }

  /** As it was kept; any doubt is a guest. */
  public static GuestBoost open(Path dataFolder) {
    GuestBoost kept = new GuestBoost(dataFolder.resolve("guest"));
    try {
      kept.guest = !Arrays.equals(Files.readAllBytes(kept.file), OWNER);
    } catch (NoSuchFileException e) {
      // Nobody has said yet who drives.
    } catch (IOException e) {
      System.err.println("guest setting: " + kept.file + " cannot be read; low boost holds");
    }
    return kept;
  }

  /** Whether a guest drives; for any thread, it never waits. */
  public boolean guest() {
    return guest;
  }

  /**
   * Takes over who drives, and keeps it. A guest counts at once; an owner only when that is kept.
   *
   * @throws IOException when it cannot be kept; a guest counts all the same until the end of the
   *     run
   */
  public synchronized void set(boolean guestDrives) throws IOException {
    guest = guest || guestDrives;
    Path folder = file.toAbsolutePath().getParent();
    if (folder != null) {
      Files.createDirectories(folder);
    }
    AtomicFile.write(file, guestDrives ? GUEST : OWNER);
    guest = guestDrives;
  }
}
