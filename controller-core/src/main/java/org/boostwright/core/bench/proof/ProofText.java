package org.boostwright.core.bench.proof;

import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.TreeSet;
import org.boostwright.core.bench.BenchStep;
import org.boostwright.core.bench.VerdictCode;

/**
 * The written form of a proof: one line a fact, fields separated by tabs, and last its {@link
 * Seal}.
 */
public final class ProofText {
  private static final String FIRST = "boostwright bench proof 1";

  private ProofText() {}

  /** Writes a proof. */
  public static String write(Proof proof) {
    StringBuilder text = new StringBuilder(FIRST).append('\n');
    Seal.line(text, "source", proof.source().id());
    Seal.line(text, "hardware", proof.hardwareDigest());
    Seal.line(text, "date", proof.date());
    Seal.line(text, "version", proof.toolVersion());
    for (BenchStep step : new TreeSet<>(proof.steps())) {
      Seal.line(text, "step", step.id());
    }
    for (VerdictCode verdict : proof.verdicts()) {
      Seal.line(text, "verdict", verdict.id());
    }
    for (ProofMeasurement m : proof.measurements()) {
      Seal.line(text, m.fields());
    }
    return Seal.put(text.toString());
  }

  /**
   * Reads a proof.
   *
   * @throws DamagedProofException when anything in it was changed or is missing
   */
  public static Proof read(String text) throws DamagedProofException {
    List<String> lines = Seal.lines(text, FIRST);
    try {
      return parse(lines);
    } catch (IllegalArgumentException | ArrayIndexOutOfBoundsException e) {
      throw new DamagedProofException("a line of it is not understood");
    }
  }

  private static Proof parse(List<String> lines) {
    ProofSource source = null;
    String hardware = "";
    String date = "";
    String version = "";
    Set<BenchStep> steps = EnumSet.noneOf(BenchStep.class);
    List<VerdictCode> verdicts = new ArrayList<>();
    List<ProofMeasurement> measurements = new ArrayList<>();
    for (String line : lines) {
      String[] f = line.split("\t", -1);
      switch (f[0]) {
        case "source" -> source = ProofSource.valueOf(f[1].toUpperCase(Locale.ROOT));
        case "hardware" -> hardware = f[1];
        case "date" -> date = f[1];
        case "version" -> version = f[1];
        case "step" -> steps.add(BenchStep.valueOf(f[1].toUpperCase(Locale.ROOT)));
        case "verdict" -> verdicts.add(VerdictCode.valueOf(f[1].toUpperCase(Locale.ROOT)));
        case ProofMeasurement.FIRST_FIELD -> measurements.add(ProofMeasurement.of(f));
        default -> throw new IllegalArgumentException(f[0]);
      }
    }
    if (source == null) {
      throw new IllegalArgumentException("no source");
    }
    return new Proof(source, hardware, date, version, steps, verdicts, measurements);
  }
}
