package org.boostwright.core.settings.file;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import org.boostwright.core.bench.proof.DamagedProofException;
import org.boostwright.core.bench.proof.Proof;
import org.boostwright.core.bench.proof.ProofSource;
import org.boostwright.core.bench.proof.ProofState;
import org.boostwright.core.bench.proof.ProofText;
import org.boostwright.core.bench.proof.Seal;
import org.boostwright.core.ladder.Facts;
import org.boostwright.core.ladder.Ladder;
import org.boostwright.core.ladder.LadderText;
import org.boostwright.core.ladder.Standing;
import org.boostwright.core.settings.Settings;

/**
 * The commissioning ladder beside a settings file: {@code car.toml} has {@code car.ladder.txt}, and
 * for practice on the virtual car {@code car.practice.ladder.txt} with a bench proof of its own.
 *
 * <p>Nothing is cached: each start of the runtime judges settings, bench proof and ladder anew.
 */
public final class LadderFile {
  private static final String ENDING = ".ladder.txt";
  private static final long LONGEST_BYTES = 2_000_000L;

  private LadderFile() {}

  /** Where the ladder of a settings file is. */
  public static Path beside(Path settingsFile, boolean practice) {
    return ProofFile.sibling(settingsFile, practice, ENDING);
  }

  /** Writes a ladder; after a power cut there is the old one or the new one. */
  public static void write(Path file, Ladder ladder) throws IOException {
    AtomicFile.write(file, LadderText.write(ladder).getBytes(StandardCharsets.US_ASCII));
  }

  /**
   * Reads a ladder; a missing file is an empty one.
   *
   * @throws DamagedProofException when it was changed or is not whole
   */
  public static Ladder read(Path file) throws IOException, DamagedProofException {
    return Files.exists(file) ? LadderText.read(text(file)) : Ladder.EMPTY;
  }

  /** Where the car stands now; any doubt counts as nothing proven. */
  public static Standing standing(Path settingsFile, Settings settings, boolean practice) {
    try {
      return read(beside(settingsFile, practice)).standing(facts(settingsFile, settings, practice));
    } catch (DamagedProofException e) {
      return Ladder.damaged(String.valueOf(e.getMessage()));
    } catch (IOException e) {
      return Ladder.damaged("it cannot be read: " + e.getMessage());
    }
  }

  /** What the ladder beside a settings file is judged against. */
  public static Facts facts(Path settingsFile, Settings settings, boolean practice) {
    Path file = ProofFile.beside(settingsFile, practice);
    ProofState state = ProofFile.state(file, settings);
    String seal = "";
    String date = "";
    boolean proven = false;
    try {
      String text = Files.exists(file) ? text(file) : "";
      if (!text.isEmpty()) {
        Proof proof = ProofText.read(text);
        seal = Seal.over(text);
        date = proof.date();
        boolean virtual = proof.source() == ProofSource.VIRTUAL;
        boolean elsewhere = state.status() == ProofState.Status.NOT_THIS_CAR;
        proven = practice ? virtual && elsewhere : state.allowsControl();
      }
    } catch (IOException | DamagedProofException e) {
      // The state of the proof already says so in words.
      seal = "";
    }
    return new Facts(
        SettingsDigest.ofParts(settings),
        proven,
        proven && practice ? "proven on the virtual bench" : state.words(),
        seal,
        date,
        practice);
  }

  private static String text(Path file) throws IOException, DamagedProofException {
    if (Files.size(file) > LONGEST_BYTES) {
      throw new DamagedProofException("it is longer than any");
    }
    try {
      return StandardCharsets.UTF_8
          .newDecoder()
          .decode(ByteBuffer.wrap(Files.readAllBytes(file)))
          .toString();
    } catch (CharacterCodingException e) {
      throw new DamagedProofException("it is not text");
    }
  }
}
