package org.boostwright.pi.loop;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.util.Locale;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.boostwright.core.settings.file.AtomicFile;

/**
 * The last ambient pressure that was measured, kept over the power being off.
 *
 * <p>Ambient can only be measured with the engine stopped, and a Pi often boots when it already
 * runs. The value is then the last good one; how long ago that was the Pi cannot know for sure (it
 * has no clock of its own), so the core allows for the largest climb from the start.
 */
public final class AmbientStore {
  private static final double LOW_KPA = 60.0;
  private static final double HIGH_KPA = 106.0;
  private static final double WORTH_WRITING_KPA = 0.2;
  private static final Pattern TEXT =
      Pattern.compile("boostwright-ambient-1\\nkpa_abs=(\\d{2,3}\\.\\d{3})\\nend\\n");

  private final Path file;
  private double storedKpaAbs = Double.NaN;

  /** Keeps the value in a file. */
  public AmbientStore(Path file) {
    this.file = file;
  }

  /** The kept value, kPa absolute; NaN when there is none, or it is damaged or impossible. */
  public double load() throws IOException {
    storedKpaAbs = Double.NaN;
    try {
      byte[] bytes = Files.readAllBytes(file);
      Matcher matcher = TEXT.matcher(new String(bytes, StandardCharsets.ISO_8859_1));
      if (matcher.matches()) {
        double kpa = Double.parseDouble(matcher.group(1));
        storedKpaAbs = kpa >= LOW_KPA && kpa <= HIGH_KPA ? kpa : Double.NaN;
      }
    } catch (NoSuchFileException e) {
      // The first start.
    }
    return storedKpaAbs;
  }

  /** Keeps a measured value, unless nearly the same is kept already; NaN keeps nothing. */
  public void save(double kpaAbs) throws IOException {
    boolean possible = kpaAbs >= LOW_KPA && kpaAbs <= HIGH_KPA;
    if (!possible || Math.abs(kpaAbs - storedKpaAbs) < WORTH_WRITING_KPA) {
      return;
    }
    String text = String.format(Locale.ROOT, "boostwright-ambient-1\nkpa_abs=%.3f\nend\n", kpaAbs);
    Path folder = file.toAbsolutePath().getParent();
    if (folder != null) {
      Files.createDirectories(folder);
    }
    AtomicFile.write(file, text.getBytes(StandardCharsets.US_ASCII));
    storedKpaAbs = kpaAbs;
  }
}
