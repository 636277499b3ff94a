package org.boostwright.core.bench.proof;

import org.boostwright.core.bench.BenchStep;
import org.jspecify.annotations.Nullable;

/**
 * Whether a bench proof lets the controller move the valve with the engine running.
 *
 * @param status the answer
 * @param words why, for people
 */
public record ProofState(Status status, String words) {
  /** The answers. */
  public enum Status {
    /** Everything it needs is proven for exactly this hardware. */
    VALID,
    /** There is no proof. */
    MISSING,
    /** The file was changed or cut short. */
    DAMAGED,
    /** Pins, frequency, polarity, sensors or valve settings differ from those proven. */
    HARDWARE_CHANGED,
    /** A verdict stands in the way. */
    NOT_PASSED,
    /** Required procedures did not run. */
    INCOMPLETE,
    /** Made where it proves nothing about the car. */
    NOT_THIS_CAR
  }

  /** True only when the controller may go beyond the spring. */
  public boolean allowsControl() {
    return status == Status.VALID;
  }

  /**
   * Judges a proof.
   *
   * @param proof the proof; null when there is none
   * @param hardwareDigest fingerprint of the present settings' hardware part
   */
  public static ProofState of(@Nullable Proof proof, String hardwareDigest) {
    if (proof == null) {
      return new ProofState(Status.MISSING, "the valve has not been proven on the bench");
    }
    if (!proof.sound()) {
      return new ProofState(
          Status.NOT_PASSED,
          "the bench found: " + words(proof) + "; put it right and run it again");
    }
    if (!proof.missing().isEmpty()) {
      StringBuilder names = new StringBuilder();
      for (BenchStep step : proof.missing()) {
        names.append(names.length() == 0 ? "" : ", ").append(step.id());
      }
      return new ProofState(Status.INCOMPLETE, "these bench steps are missing: " + names);
    }
    if (!proof.hardwareDigest().equals(hardwareDigest)) {
      return new ProofState(
          Status.HARDWARE_CHANGED,
          "pins, frequency, polarity, sensor or valve settings changed since the bench proof of "
              + proof.date());
    }
    if (!proof.source().provesCar()) {
      return new ProofState(
          Status.NOT_THIS_CAR,
          "the bench proof does not count for the car: " + proof.source().why());
    }
    return new ProofState(Status.VALID, "proven on the bench, " + proof.date());
  }

  /** For a proof that cannot be read. */
  public static ProofState damaged(String why) {
    return new ProofState(Status.DAMAGED, "the bench proof is damaged (" + why + "); run it again");
  }

  private static String words(Proof proof) {
    StringBuilder names = new StringBuilder();
    proof.verdicts().forEach(v -> names.append(names.length() == 0 ? "" : ", ").append(v.id()));
    return names.toString();
  }
}
