package org.boostwright.core.bench.proof;

import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.TreeSet;
import org.boostwright.core.bench.BenchStep;
import org.boostwright.core.bench.VerdictCode;

/** The written form of a proof: one line a fact, fields separated by tabs, and last its {@link Seal}. */
public final class ProofText {
  private static final String FIRST = "boostwright bench proof 1";

  private ProofText() {}

  /** Writes a proof. */
  public static String write(Proof proof) {
    StringBuilder text = new StringBuilder(FIRST).append('\n');
    line(text, "source", proof.source().id());
    line(text, "hardware", proof.hardwareDigest());
    line(text, "date", proof.date());
    line(text, "version", proof.toolVersion());
    for (BenchStep step : new TreeSet<>(proof.steps())) {
      line(text, "step", step.id());
    }
    for (VerdictCode verdict : proof.verdicts()) {
      line(text, "verdict", verdict.id());
    }
    for (ProofMeasurement m : proof.measurements()) {
      line(
          text,
          "measured",
          m.id(),
          Double.toString(m.value()),
          m.unit(),
          Double.toString(m.low()),
          Double.toString(m.high()));
    }
    return Seal.put(text.toString());
  }

  private static void line(StringBuilder text, String... fields) {
    text.append(String.join("\t", fields)).append('\n');
  }

  /**
   * Reads a proof.
   *
   * @throws DamagedProofException when anything in it was changed or is missing
   */
  public static Proof read(String text) throws DamagedProofException {
    String body = Seal.check(text);
    String[] lines = body.split("\n", -1);
    if (!lines[0].equals(FIRST)) {
      throw new DamagedProofException("it does not begin with '" + FIRST + "'");
    }
    try {
      return parse(lines);
    } catch (IllegalArgumentException | ArrayIndexOutOfBoundsException e) {
      throw new DamagedProofException("a line of it is not understood");
    }
  }

  private static Proof parse(String[] lines) {
    ProofSource source = null;
    String hardware = "";
    String date = "";
    String version = "";
    Set<BenchStep> steps = EnumSet.noneOf(BenchStep.class);
    List<VerdictCode> verdicts = new ArrayList<>();
    List<ProofMeasurement> measurements = new ArrayList<>();
    for (int i = 1; i < lines.length - 1; i++) {
      String[] f = lines[i].split("\t", -1);
      switch (f[0]) {
        case "source" -> source = ProofSource.valueOf(f[1].toUpperCase(Locale.ROOT));
        case "hardware" -> hardware = f[1];
        case "date" -> date = f[1];
        case "version" -> version = f[1];
        case "step" -> steps.add(BenchStep.valueOf(f[1].toUpperCase(Locale.ROOT)));
        case "verdict" -> verdicts.add(VerdictCode.valueOf(f[1].toUpperCase(Locale.ROOT)));
        case "measured" -> measurements.add(measurement(f));
        default -> throw new IllegalArgumentException(f[0]);
      }
    }
    if (source == null) {
      throw new IllegalArgumentException("no source");
    }
    return new Proof(source, hardware, date, version, steps, verdicts, measurements);
  }

  private static ProofMeasurement measurement(String[] f) {
    return new ProofMeasurement(
        f[1], Double.parseDouble(f[2]), f[3], Double.parseDouble(f[4]), Double.parseDouble(f[5]));
  }
}
