package org.boostwright.core.bench.proof;

import java.util.ArrayList;
import java.util.List;
import org.boostwright.core.bench.BenchFigures;
import org.boostwright.core.bench.BenchPlan;
import org.boostwright.core.bench.BenchRecord;
import org.boostwright.core.bench.BenchVerdict;

/** Makes the proof of a session, sound or not, with its numbers; it says itself what it allows. */
public final class ProofMaker {
  private ProofMaker() {}

  /**
   * The proof.
   *
   * @param source which bench
   * @param hardwareDigest fingerprint of the settings' hardware part
   * @param date when, ISO 8601
   * @param version program that made it
   * @param record what was measured
   * @param plan what was asked
   * @param verdicts what was concluded
   */
  public static Proof of(
      ProofSource source,
      String hardwareDigest,
      String date,
      String version,
      BenchRecord record,
      BenchPlan plan,
      List<BenchVerdict> verdicts) {
    List<ProofMeasurement> measurements = new ArrayList<>();
    for (BenchFigures.Figure f : BenchFigures.of(record, plan)) {
      measurements.add(
          new ProofMeasurement(f.id(), f.value(), f.unit(), Double.NaN, Double.NaN));
    }
    return new Proof(
        source,
        hardwareDigest,
        date,
        version,
        record.completed,
        Proof.codes(verdicts),
        measurements);
  }
}
