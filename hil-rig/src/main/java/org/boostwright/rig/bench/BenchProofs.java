package org.boostwright.rig.bench;

import java.util.List;
import org.boostwright.core.bench.BenchPlan;
import org.boostwright.core.bench.BenchRecord;
import org.boostwright.core.bench.BenchVerdict;
import org.boostwright.core.bench.proof.Proof;
import org.boostwright.core.bench.proof.ProofMaker;
import org.boostwright.core.bench.proof.ProofSource;
import org.boostwright.rig.result.ProgramVersion;

/** Makes the proof of a session with this program's version. */
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
    return ProofMaker.of(
        source, hardwareDigest, date, ProgramVersion.get(), record, plan, verdicts);
  }
}
