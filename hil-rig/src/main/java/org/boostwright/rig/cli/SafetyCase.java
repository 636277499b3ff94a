package org.boostwright.rig.cli;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import java.util.TreeSet;
import org.boostwright.core.monitor.FaultCode;
import org.boostwright.core.settings.file.AtomicFile;
import org.boostwright.rig.scenario.campaign.CampaignSummary;
import org.boostwright.rig.scenario.campaign.DriftSweep;
import org.boostwright.rig.scenario.campaign.KindSummary;
import org.boostwright.rig.scenario.file.ScenarioVerdict;

/**
 * Writes {@code docs/safety-case.md}: for each row of the fault list what detects it, what happens,
 * what was measured with which margin and which tests show it; then what is not detected, and what
 * is assumed.
 *
 * <p>Every number comes from the given campaign and scenario runs, every test from the tags in the
 * test sources.
 */
final class SafetyCase {
  private final StringBuilder text = new StringBuilder();
  private final String campaign;
  private final CampaignSummary summary;
  private final List<ScenarioVerdict> verdicts;
  private final List<DriftSweep.Line> drift;
  private final Map<String, TreeSet<String>> tests;

  private SafetyCase(
      String campaign,
      CampaignSummary summary,
      List<ScenarioVerdict> verdicts,
      List<DriftSweep.Line> drift,
      Map<String, TreeSet<String>> tests) {
    this.campaign = campaign;
    this.summary = summary;
    this.verdicts = verdicts;
    this.drift = drift;
    this.tests = tests;
  }

  /**
   * Writes the page.
   *
   * @param root folder of the project, where the test sources are
   */
  static void write(
      Path file,
      Path root,
      String campaign,
      CampaignSummary summary,
      List<ScenarioVerdict> verdicts,
      List<DriftSweep.Line> drift)
      throws IOException {
    SafetyCase page = new SafetyCase(campaign, summary, verdicts, drift, TestTags.scan(root));
    AtomicFile.write(file, page.page().getBytes(StandardCharsets.UTF_8));
  }

  private String page() {
    text.append(SafetyCaseText.INTRODUCTION);
    line("");
    line("## What was measured");
    line("");
    totals();
    line("");
    line("## Row by row");
    line("");
    text.append(SafetyCaseText.TABLE_WORDS);
    for (SafetyCaseText.Row row : SafetyCaseText.ROWS) {
      row(row);
    }
    line("");
    line("## What is not detected");
    line("");
    text.append(SafetyCaseText.UNDETECTED);
    line("");
    unreported();
    line("");
    text.append(SafetyCaseText.DRIFT);
    drift();
    line("");
    line("## Only an engine cut stops it");
    line("");
    text.append(SafetyCaseText.APART);
    line("");
    apart();
    text.append(SafetyCaseText.REMAINS);
    return text.toString();
  }

  private void line(String format, Object... values) {
    text.append(values.length == 0 ? format : String.format(Locale.ROOT, format, values));
    text.append('\n');
  }

  private void totals() {
    long passed =
        verdicts.stream().filter(v -> v.status() == ScenarioVerdict.Status.PASSED).count();
    long scenarios = verdicts.stream().map(v -> v.scenario().id()).distinct().count();
    line("| what | result |");
    line("|---|---|");
    line("| campaign | %s |", campaign);
    line("| runs judged | %,d |", summary.runs());
    line("| unsafe runs | %d |", summary.unsafe());
    line(
        "| 95 %% upper bound of the rate of unsafe runs (Clopper and Pearson 1934) | %.2g |",
        summary.upper95());
    line("| highest true pressure over the limit in them | %.1f kPa |", summary.peakOverKpa());
    line(
        "| the same drives without the fault that raised something unjustified | %d of %,d |",
        summary.falseAlarms(), summary.runs() + summary.apart() + summary.invalid());
    line("| runs that only an engine cut could stop, reported apart | %,d |", summary.apart());
    line("| runs whose fault never took effect; they say nothing | %d |", summary.invalid());
    line("| scenario files | %d, with %d runs, %d passed |", scenarios, verdicts.size(), passed);
  }

  private void row(SafetyCaseText.Row row) {
    List<KindSummary> kinds =
        summary.kinds().stream().filter(k -> k.kind().row().equals(row.id())).toList();
    List<ScenarioVerdict> mine =
        verdicts.stream().filter(v -> v.scenario().row().equals(row.id())).toList();
    line(
        "| %s | %s | %s | %s | %s | %s |",
        row.id(),
        row.fault(),
        detection(row.id()),
        row.reaction(),
        measured(kinds, mine),
        shownBy(row.id(), mine));
  }

  private static String detection(String id) {
    List<String> codes = new ArrayList<>();
    for (FaultCode code : FaultCode.values()) {
      if (List.of(code.requirement().split(" ")).contains(id)) {
        codes.add("`" + code.id() + "`");
      }
    }
    return codes.isEmpty() ? "-" : String.join(", ", codes);
  }

  private static String measured(List<KindSummary> kinds, List<ScenarioVerdict> mine) {
    List<String> words = new ArrayList<>();
    ScenarioVerdict tightest = null;
    for (ScenarioVerdict v : mine) {
      boolean timed = v.variation().isEmpty() && allowed(v) > 0.0;
      if (timed && (tightest == null || share(v) > share(tightest))) {
        tightest = v;
      }
    }
    if (tightest != null) {
      words.add(
          String.format(
              Locale.ROOT,
              "coil off after %.0f ms, %.0f allowed",
              tightest.reactionSeconds() * 1e3,
              allowed(tightest) * 1e3));
    }
    int boost = kinds.stream().mapToInt(KindSummary::underBoost).sum();
    if (boost > 0) {
      int reported = kinds.stream().mapToInt(KindSummary::reported).sum();
      int runs = kinds.stream().mapToInt(KindSummary::runs).sum();
      double peak =
          kinds.stream()
              .mapToDouble(KindSummary::peakOverKpa)
              .filter(Double::isFinite)
              .max()
              .orElse(Double.NaN);
      words.add(
          String.format(
              Locale.ROOT,
              "%d runs, under boost %d, reported %d; peak %.1f kPa over the limit",
              runs,
              boost,
              reported,
              peak));
    }
    return words.isEmpty() ? "see the tests" : String.join("; ", words);
  }

  private static double allowed(ScenarioVerdict verdict) {
    return verdict.scenario().expect().restWithinSeconds();
  }

  private static double share(ScenarioVerdict verdict) {
    return verdict.reactionSeconds() / allowed(verdict);
  }

  private String shownBy(String id, List<ScenarioVerdict> mine) {
    List<String> words = new ArrayList<>();
    mine.stream()
        .map(v -> v.scenario().id())
        .distinct()
        .forEach(scenario -> words.add("`" + scenario + "`"));
    words.addAll(Objects.requireNonNullElse(tests.get(id), new TreeSet<>()));
    return words.isEmpty() ? "**none**" : String.join(", ", words);
  }

  private void unreported() {
    line("Single faults of the campaign that were not reported while boost was controlled:");
    line("");
    line("| fault | not reported | amounts not reported | highest pressure over the limit |");
    line("|---|---|---|---|");
    for (KindSummary kind : summary.kinds()) {
      int silent = kind.underBoost() - kind.reported();
      if (silent > 0 && kind.kind().controllable()) {
        line(
            "| `%s` %s | %d of %d | %s | %.1f kPa |",
            kind.kind().id(),
            kind.kind().words(),
            silent,
            kind.underBoost(),
            kind.kind().amount().isNone()
                ? "-"
                : String.format(
                    Locale.ROOT,
                    "%.3g to %.3g %s",
                    kind.unreportedFrom(),
                    kind.unreportedTo(),
                    kind.kind().amount().unit()),
            kind.peakOverKpa());
      }
    }
  }

  private void drift() {
    for (DriftSweep.Line each : drift) {
      line(
          "| %s %.4g %s | %s | %d of %d | %d | %.1f kPa | %.0f ms |",
          each.drift().kind().amount().words(),
          each.drift().amount(),
          each.drift().kind().amount().unit(),
          each.since().words(),
          each.reported(),
          each.runs(),
          each.unsafe(),
          each.peakOverKpa(),
          1e3 * each.aboveSeconds());
    }
  }

  private void apart() {
    line("| fault | runs | reported of those under boost | highest pressure over the limit |");
    line("|---|---|---|---|");
    for (KindSummary kind : summary.kinds()) {
      if (!kind.kind().controllable() && kind.runs() > 0) {
        line(
            "| `%s` %s | %d | %d of %d | %.1f kPa |",
            kind.kind().id(),
            kind.kind().words(),
            kind.runs(),
            kind.reported(),
            kind.underBoost(),
            kind.peakOverKpa());
      }
    }
  }
}
