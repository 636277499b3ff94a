package org.boostwright.core.settings.file;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Optional;
import org.boostwright.core.bench.proof.DamagedProofException;
import org.boostwright.core.upkeep.OperatingHours;

/** The counted hours in the folder of the runtime's data: the file {@code hours}. */
public final class HoursFile {
  private static final String NAME = "hours";
  private static final long LONGEST_BYTES = 4096L;

  private HoursFile() {}

  /** Where the hours of a data folder are. */
  public static Path in(Path dataFolder) {
    return dataFolder.resolve(NAME);
  }

  /**
   * Reads them; empty where nothing was ever counted.
   *
   * @throws DamagedProofException when the file was changed or is not whole
   */
  public static Optional<OperatingHours> read(Path file) throws IOException, DamagedProofException {
    if (!Files.exists(file)) {
      return Optional.empty();
    }
    if (Files.size(file) > LONGEST_BYTES) {
      throw new DamagedProofException("it is longer than any");
    }
    String text = new String(Files.readAllBytes(file), StandardCharsets.ISO_8859_1);
    return Optional.of(OperatingHours.read(text));
  }

  /** Writes them; after a power cut there are the old ones or the new ones. */
  public static void write(Path file, OperatingHours hours) throws IOException {
    Path folder = file.toAbsolutePath().getParent();
    if (folder != null) {
      Files.createDirectories(folder);
    }
    AtomicFile.write(file, hours.text().getBytes(StandardCharsets.US_ASCII));
  }
}
