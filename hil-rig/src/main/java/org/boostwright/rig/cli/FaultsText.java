package org.boostwright.rig.cli;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import org.boostwright.core.settings.file.AtomicFile;
import org.boostwright.core.settings.file.SettingsDigest;
import org.boostwright.rig.inject.Amount;
import org.boostwright.rig.inject.FaultKind;
import org.boostwright.rig.inject.FaultKinds;
import org.boostwright.rig.result.Result;
import org.boostwright.rig.result.ResultBuilder;
import org.boostwright.rig.result.Severity;
import org.boostwright.rig.result.Units;
import org.boostwright.rig.scenario.campaign.CampaignPlan;
import org.boostwright.rig.scenario.campaign.CampaignSummary;
import org.boostwright.rig.scenario.campaign.CaseRow;
import org.boostwright.rig.scenario.campaign.KindSummary;
import org.boostwright.rig.scenario.campaign.WorstSearch;
import org.boostwright.rig.scenario.file.ScenarioRunner;
import org.boostwright.rig.scenario.file.ScenarioVerdict;

/** What the faults command says: results for programs, tables for people. */
final class FaultsText {
  private static final int SHOWN = 20;

  private FaultsText() {}

  /** Every kind of fault with its amount. */
  static String kinds() {
    StringBuilder text = new StringBuilder();
    for (FaultKind kind : FaultKinds.all()) {
      line(text, "%-26s %s", kind.id(), kind.words());
      Amount amount = kind.amount();
      if (!amount.isNone()) {
        line(
            text,
            "%-26s   amount: %s, %s to %s %s, usually %s",
            "",
            amount.words(),
            plain(amount.low()),
            plain(amount.high()),
            amount.unit(),
            plain(amount.usual()));
      }
    }
    return text.toString();
  }

  private static void line(StringBuilder text, String format, Object... values) {
    text.append(String.format(Locale.ROOT, format, values).stripTrailing()).append('\n');
  }

  private static String plain(double value) {
    return value == Math.rint(value) ? Long.toString((long) value) : Double.toString(value);
  }

  /** What a campaign comes to. */
  static ResultBuilder result(CampaignSummary summary) {
    ResultBuilder result = new ResultBuilder("faults");
    result.measure("faults.runs", "runs judged", summary.runs(), Units.COUNT, 1, Double.NaN);
    result.measure("faults.unsafe", "unsafe runs", summary.unsafe(), Units.COUNT, Double.NaN, 0);
    result.measure(
        "faults.unsafe_rate_upper95",
        "95 % upper bound of the rate of unsafe runs",
        summary.upper95(),
        Units.FRACTION);
    result.measure(
        "faults.peak_over_limit_kpa",
        "highest true pressure over the limit",
        summary.peakOverKpa(),
        Units.KPA);
    result.measure(
        "faults.false_alarms",
        "runs without the fault that raised something",
        summary.falseAlarms(),
        Units.COUNT,
        Double.NaN,
        0);
    result.measure(
        "faults.apart", "runs only an engine cut could stop", summary.apart(), Units.COUNT);
    result.measure(
        "faults.apart_peak_over_limit_kpa",
        "highest true pressure over the limit in those",
        summary.apartPeakOverKpa(),
        Units.KPA);
    result.measure(
        "faults.invalid", "runs whose fault never took effect", summary.invalid(), Units.COUNT);
    FaultTimeLines.add(result, summary);
    rows(result, "unsafe_run", Severity.PROBLEM, summary.bad());
    rows(result, "false_alarm", Severity.PROBLEM, summary.alarms());
    result.caution(
        "Runs that only an engine cut could stop (hose off the actuator, wastegate or valve stuck)"
            + " are not in the bound.");
    result.caution("A result from the virtual car proves the program, not your car.");
    if (summary.unsafe() == 0 && summary.falseAlarms() > 0) {
      return result.headline(
          "nothing unsafe, but " + summary.falseAlarms() + " runs without a fault raised one.");
    }
    return result.headline(
        summary.unsafe() == 0
            ? String.format(
                Locale.ROOT,
                "none of %d runs unsafe, so at most %.2g %% of such runs are (95 %% confidence).",
                summary.runs(),
                100.0 * summary.upper95())
            : summary.unsafe() + " of " + summary.runs() + " runs are unsafe.");
  }

  private static void rows(
      ResultBuilder result, String code, Severity severity, List<CaseRow> rows) {
    for (CaseRow row : rows.subList(0, Math.min(SHOWN, rows.size()))) {
      result.find(code, severity, words(row), "the run's number and the seed bring it back");
    }
  }

  /** One run in words. */
  static String words(CaseRow row) {
    StringBuilder words = new StringBuilder();
    words.append(String.format(Locale.ROOT, "run %d (%s): ", row.index(), row.drive()));
    for (CaseRow.Fault fault : row.faults()) {
      words.append(
          String.format(
              Locale.ROOT,
              "%s %.4g at %.3f s until %.3f s; ",
              fault.id(),
              fault.amount(),
              fault.fromSeconds(),
              fault.untilSeconds()));
    }
    words.append(
        String.format(
            Locale.ROOT,
            "%.1f kPa over the limit, %.0f ms above it",
            row.peakOverKpa(),
            row.aboveSeconds() * 1e3));
    if (!row.why().isEmpty()) {
      words.append("; ").append(row.why());
    }
    if (row.falseAlarms() != 0L) {
      words.append("; without the fault: ").append(ScenarioRunner.names(row.falseAlarms()));
    }
    return words.toString();
  }

  /** One line for each kind of fault. */
  static String kinds(CampaignSummary summary) {
    StringBuilder text = new StringBuilder();
    line(
        text,
        "%-26s %5s %6s %-9s %-16s %-16s %7s",
        "single faults",
        "runs",
        "unsafe",
        "reported",
        "report ms",
        "coil off ms",
        "peak");
    line(
        text,
        "%-26s %5s %6s %-9s %-16s %-16s %7s",
        "",
        "",
        "",
        "of boost",
        "50/95/100 %",
        "50/95/100 %",
        "kPa");
    for (KindSummary kind : summary.kinds()) {
      if (kind.runs() > 0) {
        line(
            text,
            "%-26s %5d %6d %-9s %-16s %-16s %7.1f",
            kind.kind().id() + (kind.kind().controllable() ? "" : " *"),
            kind.runs(),
            kind.unsafe(),
            kind.reported() + "/" + kind.underBoost(),
            kind.detectionMs().words(),
            kind.reactionMs().words(),
            kind.peakOverKpa());
      }
    }
    line(text, "* only an engine cut could stop it; peak: over the overboost limit");
    return text.toString();
  }

  /** Writes the table for programs. */
  static void writeKinds(Path file, CampaignSummary summary) throws IOException {
    StringBuilder text = new StringBuilder(KindSummary.HEADER).append('\n');
    for (KindSummary kind : summary.kinds()) {
      text.append(kind.line()).append('\n');
    }
    AtomicFile.write(file, text.toString().getBytes(StandardCharsets.UTF_8));
  }

  /** What scenarios come to: one measurement each, the number of its runs that failed. */
  static ResultBuilder result(List<ScenarioVerdict> verdicts) {
    ResultBuilder result = new ResultBuilder("faults");
    Map<String, List<ScenarioVerdict>> byId = new LinkedHashMap<>();
    for (ScenarioVerdict verdict : verdicts) {
      byId.computeIfAbsent(verdict.scenario().id(), id -> new ArrayList<>()).add(verdict);
    }
    byId.forEach((id, runs) -> scenario(result, id, runs));
    FaultTimeLines.add(result, verdicts);
    long failed =
        verdicts.stream().filter(v -> v.status() != ScenarioVerdict.Status.PASSED).count();
    result.caution("A result from the virtual car proves the program, not your car.");
    return result.headline(
        failed == 0
            ? byId.size()
                + (byId.size() == 1 ? " scenario, " : " scenarios, ")
                + verdicts.size()
                + " runs, all as they must be."
            : failed + " of " + verdicts.size() + " runs not as they must be.");
  }

  private static void scenario(ResultBuilder result, String id, List<ScenarioVerdict> runs) {
    double failed = 0.0;
    for (ScenarioVerdict run : runs) {
      switch (run.status()) {
        case PASSED -> {}
        case FAILED -> {
          failed++;
          result.find(
              "scenario_failed",
              Severity.CAUTION,
              run.name() + ": " + String.join("; ", run.failures()),
              "");
        }
        case INVALID -> {
          failed = Double.NaN;
          result.find(
              "scenario_invalid",
              Severity.CAUTION,
              run.name() + ": the fault was never seen to take effect",
              "check when it begins and what the car does then");
        }
      }
    }
    result.measure(
        "faults.scenario." + id,
        runs.get(0).scenario().row() + " " + runs.get(0).scenario().text(),
        failed,
        Units.COUNT,
        Double.NaN,
        0);
  }

  /** One line for each scenario run. */
  static String scenarios(List<ScenarioVerdict> verdicts) {
    StringBuilder text = new StringBuilder();
    for (ScenarioVerdict v : verdicts) {
      line(
          text,
          "%-8s %-62s report %5s ms  coil off %5s ms  peak %6.1f kPa",
          v.status().name().toLowerCase(Locale.ROOT),
          v.name(),
          millis(v.detectionSeconds()),
          millis(v.reactionSeconds()),
          v.peakOverLimitKpa());
    }
    return text.toString();
  }

  private static String millis(double seconds) {
    return Double.isNaN(seconds) ? "-" : String.format(Locale.ROOT, "%.0f", seconds * 1e3);
  }

  /** What a search comes to. */
  static Result result(WorstSearch.Outcome worst, CampaignPlan plan) {
    ResultBuilder result = new ResultBuilder("faults").seed(plan.seed());
    result.settingsDigest(SettingsDigest.of(plan.settings()));
    long unsafe = 0;
    for (List<WorstSearch.Found> group : List.of(worst.singles(), worst.pairs())) {
      for (WorstSearch.Found found : group) {
        if (found.measure() > 1.0) {
          unsafe++;
          result.find("unsafe_run", Severity.PROBLEM, words(found.row()), "");
        }
      }
    }
    result.measure("faults.runs", "runs searched", worst.runs(), Units.COUNT);
    result.measure("faults.unsafe", "unsafe kinds or pairs", unsafe, Units.COUNT, Double.NaN, 0);
    return result
        .headline(
            unsafe == 0
                ? "the search made nothing unsafe."
                : "the search made " + unsafe + " kinds or pairs of faults unsafe.")
        .build();
  }

  /** The worst of each kind and pair. */
  static String worst(WorstSearch.Outcome worst) {
    StringBuilder text = new StringBuilder();
    line(text, "share of what an unsafe run is allowed; worst first");
    for (List<WorstSearch.Found> group : List.of(worst.singles(), worst.pairs())) {
      for (WorstSearch.Found found : group) {
        line(text, "%6.2f  %s", found.measure(), words(found.row()));
      }
    }
    return text.toString();
  }

  /** Fingerprint of the settings in the words of a campaign. */
  static String digestOf(String campaign) {
    return word(campaign, "settings=");
  }

  /** Seed in the words of a campaign. */
  static long seedOf(String campaign) {
    return number(campaign, "seed=");
  }

  /** Number of runs in the words of a campaign. */
  static long runsOf(String campaign) {
    return number(campaign, "runs=");
  }

  private static long number(String campaign, String key) {
    String word = word(campaign, key);
    return word.isEmpty() ? 0L : Long.parseLong(word);
  }

  private static String word(String campaign, String key) {
    for (String word : campaign.split(" ")) {
      if (word.startsWith(key)) {
        return word.substring(key.length());
      }
    }
    return "";
  }
}
