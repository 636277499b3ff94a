package org.boostwright.rig.bench;

import java.util.ArrayList;
import java.util.List;
import org.boostwright.core.bench.BenchPlan;
import org.boostwright.core.bench.BenchRecord;
import org.boostwright.core.bench.BenchVerdict;
import org.boostwright.core.bench.proof.Proof;
import org.boostwright.core.bench.proof.ProofMeasurement;
import org.boostwright.core.bench.proof.ProofSource;
import org.boostwright.rig.result.Measurement;
import org.boostwright.rig.result.ProgramVersion;
import org.boostwright.rig.result.ResultBuilder;

/** Makes the proof of a session, with the numbers of its result. */
public final class BenchProofs {
  private BenchProofs() {}

  /**
   * The proof of a session, sound or not; it says itself what it allows.
   *
   * @param source which bench
   * @param hardwareDigest fingerprint of the settings' hardware part
   * @param date when, ISO 8601
   * @param record what was measured
   * @param plan what was asked
   * @param verdicts what was concluded
   */
  public static Proof of(
      ProofSource source,
      String hardwareDigest,
      String date,
      BenchRecord record,
      BenchPlan plan,
      List<BenchVerdict> verdicts) {
    ResultBuilder numbers = new ResultBuilder("bench");
    BenchResult.add(numbers, record, plan, verdicts);
    List<ProofMeasurement> measurements = new ArrayList<>();
    for (Measurement m : numbers.build().measurements()) {
      measurements.add(new ProofMeasurement(m.id(), m.value(), m.unit(), Double.NaN, Double.NaN));
    }
    return new Proof(
        source,
        hardwareDigest,
        date,
        ProgramVersion.get(),
        record.completed,
        Proof.codes(verdicts),
        measurements);
  }
}
