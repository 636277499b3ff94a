package org.boostwright.core.bench.proof;

import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import org.boostwright.core.bench.BenchStep;
import org.boostwright.core.bench.BenchVerdict;
import org.boostwright.core.bench.VerdictCode;

/**
 * The signed-off record of a bench session.
 *
 * @param source which bench it was made on
 * @param hardwareDigest fingerprint of the settings that say what is screwed, plumbed and soldered
 * @param date when, as ISO 8601 text; given by the caller
 * @param toolVersion version of this program
 * @param steps procedures that ran to their end
 * @param verdicts what was concluded; empty when all was sound
 * @param measurements what was measured
 */
public record Proof(
    ProofSource source,
    String hardwareDigest,
    String date,
    String toolVersion,
    Set<BenchStep> steps,
    List<VerdictCode> verdicts,
    List<ProofMeasurement> measurements) {

  /** Procedures without which nothing is proven. */
  public static final Set<BenchStep> REQUIRED =
      Set.of(
          BenchStep.AMBIENT,
          BenchStep.CLICK,
          BenchStep.REST,
          BenchStep.POLARITY,
          BenchStep.LEAK,
          BenchStep.EDGES,
          BenchStep.SWEEP);

  /** Copies every collection; refuses text that would break the written form. */
  public Proof {
    steps = Set.copyOf(steps);
    verdicts = List.copyOf(verdicts);
    measurements = List.copyOf(measurements);
    for (String text : List.of(hardwareDigest, date, toolVersion)) {
      if (!plain(text)) {
        throw new IllegalArgumentException("a proof's texts must be plain and not empty");
      }
    }
  }

  private static boolean plain(String text) {
    for (int i = 0; i < text.length(); i++) {
      if (text.charAt(i) < ' ' || text.charAt(i) > '~') {
        return false;
      }
    }
    return !text.isEmpty();
  }

  /** Codes of the verdicts of a session. */
  public static List<VerdictCode> codes(List<BenchVerdict> verdicts) {
    Set<VerdictCode> codes = new TreeSet<>();
    for (BenchVerdict verdict : verdicts) {
      codes.add(verdict.code());
    }
    return List.copyOf(codes);
  }

  /** True when no verdict stands in the way. */
  public boolean sound() {
    for (VerdictCode verdict : verdicts) {
      if (verdict.grade() != VerdictCode.Grade.ADVICE) {
        return false;
      }
    }
    return true;
  }

  /** Required procedures that did not run. */
  public Set<BenchStep> missing() {
    Set<BenchStep> missing = new TreeSet<>(REQUIRED);
    missing.removeAll(steps);
    return missing;
  }
}
