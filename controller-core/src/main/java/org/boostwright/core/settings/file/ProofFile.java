package org.boostwright.core.settings.file;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import org.boostwright.core.bench.proof.DamagedProofException;
import org.boostwright.core.bench.proof.Proof;
import org.boostwright.core.bench.proof.ProofState;
import org.boostwright.core.bench.proof.ProofText;
import org.boostwright.core.settings.Settings;

/** The bench proof beside a settings file: {@code car.toml} has {@code car.bench-proof.txt}. */
public final class ProofFile {
  private static final String ENDING = ".bench-proof.txt";
  private static final String SETTINGS_ENDING = ".toml";
  private static final long LONGEST_BYTES = 100_000L;

  private ProofFile() {}

  /** Where the proof of a settings file is. */
  public static Path beside(Path settingsFile) {
    return beside(settingsFile, false);
  }

  /** Where the proof of a settings file is, or the one for practice on the virtual car. */
  public static Path beside(Path settingsFile, boolean practice) {
    return sibling(settingsFile, practice, ENDING);
  }

  static Path sibling(Path settingsFile, boolean practice, String ending) {
    String name = String.valueOf(settingsFile.getFileName());
    String stem =
        name.endsWith(SETTINGS_ENDING)
            ? name.substring(0, name.length() - SETTINGS_ENDING.length())
            : name;
    return settingsFile.resolveSibling(stem + (practice ? ".practice" : "") + ending);
  }

  /** Writes a proof; after a power cut there is the old one or the new one. */
  public static void write(Path file, Proof proof) throws IOException {
    AtomicFile.write(file, ProofText.write(proof).getBytes(StandardCharsets.UTF_8));
  }

  /** Whether the proof in a file lets these settings control the valve; any doubt says no. */
  public static ProofState state(Path file, Settings settings) {
    String digest = SettingsDigest.ofHardware(settings);
    if (!Files.exists(file)) {
      return ProofState.of(null, digest);
    }
    try {
      return ProofState.of(read(file), digest);
    } catch (DamagedProofException e) {
      return ProofState.damaged(String.valueOf(e.getMessage()));
    } catch (IOException e) {
      return ProofState.damaged("it cannot be read: " + e.getMessage());
    }
  }

  /**
   * Reads a proof.
   *
   * @throws DamagedProofException when it was changed or is not whole
   */
  public static Proof read(Path file) throws IOException, DamagedProofException {
    if (Files.size(file) > LONGEST_BYTES) {
      throw new DamagedProofException("it is longer than any proof");
    }
    try {
      return ProofText.read(
          StandardCharsets.UTF_8
              .newDecoder()
              .decode(ByteBuffer.wrap(Files.readAllBytes(file)))
              .toString());
    } catch (CharacterCodingException e) {
      throw new DamagedProofException("it is not text");
    }
  }
}
