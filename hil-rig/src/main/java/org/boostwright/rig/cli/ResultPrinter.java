package org.boostwright.rig.cli;

import java.io.PrintWriter;
import java.util.Comparator;
import java.util.List;
import org.boostwright.rig.report.DisplayUnits;
import org.boostwright.rig.result.Finding;
import org.boostwright.rig.result.Judgement;
import org.boostwright.rig.result.Measurement;
import org.boostwright.rig.result.Result;
import org.boostwright.rig.result.SafeText;
import org.boostwright.rig.result.Verdict;

/** Prints a result as text for people. */
final class ResultPrinter {
  private final Terminal terminal;
  private final PrintWriter out;

  ResultPrinter(Terminal terminal) {
    this.terminal = terminal;
    this.out = terminal.out();
  }

  /** The verdict in one line. */
  void line(Result result) {
    String word = result.verdict().word();
    String painted = result.verdict() == Verdict.PASSED ? terminal.good(word) : terminal.bad(word);
    out.println(terminal.bold(result.command()) + " " + painted + ": " + SafeText.visible(result.headline()));
    out.flush();
  }

  /** Verdict, measurements, findings, cautions and files. */
  void full(Result result) {
    line(result);
    measurements(result);
    boolean apart = true;
    for (Finding finding : bySeverity(result)) {
      // Notes without advice stand close together, everything else apart.
      boolean plain = finding.next().isBlank();
      if (apart || !plain) {
        out.println();
      }
      apart = !plain;
      wrapped(finding.severity().word() + ": ", finding.text());
      if (!finding.next().isBlank()) {
        wrapped("  next: ", finding.next());
      }
    }
    if (!result.cautions().isEmpty()) {
      out.println();
      for (String caution : result.cautions()) {
        wrapped("caution: ", caution);
      }
    }
    if (!result.files().isEmpty()) {
      out.println();
      int width = result.files().keySet().stream().mapToInt(String::length).max().orElse(0);
      result.files().forEach((kind, path) -> out.println(padded(kind, width) + "  " + SafeText.visible(path)));
    }
    out.flush();
  }

  private void measurements(Result result) {
    List<Measurement> all = result.measurements();
    if (all.isEmpty()) {
      return;
    }
    DisplayUnits units = new DisplayUnits(result.units());
    int width = all.stream().mapToInt(m -> m.text().length()).max().orElse(0);
    int values = 0;
    for (Measurement m : all) {
      values = Math.max(values, units.text(m.value(), m.unit()).length());
    }
    out.println();
    for (Measurement m : all) {
      StringBuilder line = new StringBuilder("  ").append(padded(m.text(), width));
      line.append("  ").append(padded(units.text(m.value(), m.unit()), values));
      if (m.judgement() != Judgement.NOT_JUDGED) {
        String word = m.judgement().word();
        line.append("  ").append(m.judgement().fails() ? terminal.bad(word) : terminal.good(word));
        line.append(" (").append(units.allowed(m)).append(')');
      }
      out.println(line.toString().stripTrailing());
    }
  }

  private void wrapped(String label, String text) {
    String indent = " ".repeat(label.length());
    StringBuilder line = new StringBuilder(label);
    boolean empty = true;
    for (String word : SafeText.visible(text).split("\\s+")) {
      if (!empty && line.length() + 1 + word.length() > Terminal.WIDTH) {
        out.println(line);
        line = new StringBuilder(indent);
        empty = true;
      }
      line.append(empty ? "" : " ").append(word);
      empty = false;
    }
    out.println(line);
  }

  private static String padded(String text, int width) {
    return text + " ".repeat(Math.max(0, width - text.length()));
  }

  private static List<Finding> bySeverity(Result result) {
    return result.findings().stream()
        .sorted(Comparator.comparing(Finding::severity).reversed())
        .toList();
  }
}
