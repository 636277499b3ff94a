package org.boostwright.rig.ladder;

import java.util.ArrayList;
import java.util.List;
import org.boostwright.core.bench.proof.ProofMeasurement;
import org.boostwright.rig.result.Finding;
import org.boostwright.rig.result.Measurement;
import org.boostwright.rig.result.Severity;

/** What was measured for a rung, against what it has to be. */
public final class Checks {
  /** Nothing to be judged against on this side. */
  static final double NONE = Double.NaN;

  private final List<Measurement> measurements = new ArrayList<>();
  private final List<Finding> findings = new ArrayList<>();

  /** A number that has to lie within limits. */
  void judge(String id, String text, double value, String unit, double low, double high) {
    measurements.add(Measurement.judged(id, text, value, unit, low, high));
  }

  /** A number that is only kept. */
  void keep(String id, String text, double value, String unit) {
    measurements.add(Measurement.plain(id, text, value, unit));
  }

  /** Something to be said. */
  void find(String code, Severity severity, String text, String next) {
    findings.add(new Finding(code, severity, text, next));
  }

  /** What was measured. */
  public List<Measurement> measurements() {
    return measurements;
  }

  /** What was found besides. */
  public List<Finding> findings() {
    return findings;
  }

  /** True when everything is as it has to be. */
  public boolean passed() {
    return !measurements.isEmpty()
        && measurements.stream().noneMatch(m -> m.judgement().fails())
        && findings.stream().noneMatch(f -> f.severity() == Severity.PROBLEM);
  }

  /** The numbers as the ladder keeps them. */
  public List<ProofMeasurement> proofs() {
    List<ProofMeasurement> proofs = new ArrayList<>();
    for (Measurement m : measurements) {
      proofs.add(new ProofMeasurement(m.id(), m.value(), m.unit(), m.low(), m.high()));
    }
    return proofs;
  }
}
