package org.boostwright.core.settings.file;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.Comparator;
import java.util.HexFormat;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.boostwright.core.settings.Settings;
import org.jspecify.annotations.Nullable;

/**
 * Every settings file that was driven with, whole and with its comments, in the folder {@code
 * settings-history} of the runtime's data. The name of each says its number, the day, the
 * fingerprint of what it does and the one of its bytes, so that a damaged one shows.
 */
public final class SettingsHistory {
  /** The oldest beyond so many are removed: a card must not fill up. */
  public static final int MOST = 500;

  private static final String FOLDER = "settings-history";
  private static final int DIGITS = 12;
  private static final Pattern NAME =
      Pattern.compile("(\\d{4,9})-(\\d{8}T\\d{6}Z)-([0-9a-f]{12})-([0-9a-f]{12})\\.toml");

  private SettingsHistory() {}

  /**
   * One kept file.
   *
   * @param number counted from 1, in the order in which they were driven with
   * @param date when it was first driven with, ISO 8601 basic, by the clock of the machine
   * @param settingsDigest first digits of the fingerprint of what it does
   * @param bytesDigest first digits of the fingerprint of its bytes
   * @param file where it is kept
   */
  public record Kept(
      int number, String date, String settingsDigest, String bytesDigest, Path file) {
    /** Whether it says what these settings say. */
    public boolean same(Settings settings) {
      return SettingsDigest.of(settings).startsWith(settingsDigest);
    }

    /**
     * The file as it was.
     *
     * @throws IOException when it cannot be read or was changed since
     */
    public byte[] bytes() throws IOException {
      byte[] bytes = Files.readAllBytes(file);
      if (!digest(bytes).equals(bytesDigest)) {
        throw new IOException(file + " was changed since it was kept");
      }
      return bytes;
    }
  }

  /** What is kept, oldest first; other files in the folder are passed over. */
  public static List<Kept> list(Path dataFolder) throws IOException {
    try (Stream<Path> files = Files.list(dataFolder.resolve(FOLDER))) {
      return files
          .map(SettingsHistory::kept)
          .flatMap(Stream::ofNullable)
          .sorted(Comparator.comparingInt(Kept::number))
          .toList();
    } catch (NoSuchFileException e) {
      return List.of();
    }
  }

  private static @Nullable Kept kept(Path file) {
    Matcher m = NAME.matcher(String.valueOf(file.getFileName()));
    return m.matches()
        ? new Kept(Integer.parseInt(m.group(1)), m.group(2), m.group(3), m.group(4), file)
        : null;
  }

  /**
   * Keeps a settings file, unless it is the newest one already.
   *
   * @param bytes the file
   * @param settings what it says
   * @param date now, ISO 8601 in UTC such as 2026-05-01T10:20:30Z
   */
  public static void keep(Path dataFolder, byte[] bytes, Settings settings, String date)
      throws IOException {
    List<Kept> all = list(dataFolder);
    String digest = digest(bytes);
    Kept last = all.isEmpty() ? null : all.get(all.size() - 1);
    if (last != null && last.bytesDigest().equals(digest) && intact(last)) {
      return;
    }
    Path folder = Files.createDirectories(dataFolder.resolve(FOLDER));
    String name =
        "%04d-%s-%s-%s.toml"
            .formatted(
                last == null ? 1 : last.number() + 1,
                basic(date),
                SettingsDigest.of(settings).substring(0, DIGITS),
                digest);
    AtomicFile.write(folder.resolve(name), bytes);
    for (Kept old : all.subList(0, Math.max(0, all.size() + 1 - MOST))) {
      Files.deleteIfExists(old.file());
    }
  }

  private static boolean intact(Kept kept) {
    try {
      return kept.bytes().length > 0;
    } catch (IOException e) {
      return false;
    }
  }

  /** 2026-05-01T10:20:30.123Z to 20260501T102030Z. */
  private static String basic(String date) {
    return date.replaceFirst("\\.\\d+", "").replace("-", "").replace(":", "");
  }

  private static String digest(byte[] bytes) {
    try {
      byte[] sha = MessageDigest.getInstance("SHA-256").digest(bytes);
      return HexFormat.of().formatHex(sha).substring(0, DIGITS);
    } catch (NoSuchAlgorithmException e) {
      throw new IllegalStateException("every Java has SHA-256", e);
    }
  }
}
