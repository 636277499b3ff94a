package org.boostwright.rig.logs.pulls;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;
import org.boostwright.rig.result.Plot;
import org.boostwright.rig.result.Plot.Stroke;
import org.boostwright.rig.result.ResultBuilder;
import org.boostwright.rig.result.Severity;
import org.boostwright.rig.result.Units;

/** The pulls of a log as a result: counted, listed, laid over each other. */
public final class PullsResult {
  private static final double STEP_SECONDS = 0.05;
  private static final int MOST_LINES = 12;
  private static final int MOST_LISTED = 40;

  private PullsResult() {}

  /** Adds the pulls of one log. */
  public static void add(ResultBuilder result, List<Pull> pulls, PullRules rules) {
    result.measure(
        "replay.pulls",
        String.format(Locale.ROOT, "pulls, demand %.0f %% and more", rules.openPct()),
        pulls.size(),
        Units.COUNT);
    result.measure(
        "replay.pulls_usable",
        "pulls that can be learnt from",
        (double) pulls.stream().filter(Pull::usable).count(),
        Units.COUNT);
    for (int i = 0; i < Math.min(MOST_LISTED, pulls.size()); i++) {
      result.find(
          pulls.get(i).usable() ? "pull" : "pull_not_usable",
          Severity.NOTE,
          text(i + 1, pulls.get(i)),
          "");
    }
    if (pulls.size() > MOST_LISTED) {
      result.find(
          "more_pulls",
          Severity.NOTE,
          (pulls.size() - MOST_LISTED) + " further pulls are counted and not listed.",
          "");
    }
    if (!pulls.isEmpty()) {
      result.add(overlay(pulls));
    }
  }

  private static String text(int number, Pull pull) {
    StringBuilder text = new StringBuilder();
    text.append(
        String.format(
            Locale.ROOT,
            "Pull %d at %.1f s: %.1f s from %.0f to %.0f rpm",
            number,
            pull.log().seconds(pull.from()),
            pull.seconds(),
            pull.fromRpm(),
            pull.toRpm()));
    if (pull.gear() > 0) {
      text.append(", gear ").append(pull.gear());
    }
    text.append(String.format(Locale.ROOT, ", peak %.0f kPa absolute", pull.peakKpaAbs()));
    if (!Double.isNaN(pull.onset().seconds())) {
      text.append(
          String.format(Locale.ROOT, ", boost begins after %.1f s", pull.onset().seconds()));
    }
    if (!Double.isNaN(pull.half().seconds())) {
      text.append(
          String.format(
              Locale.ROOT,
              ", half of %.0f kPa absolute after %.1f s at %.0f rpm",
              pull.goalKpaAbs(),
              pull.half().seconds(),
              pull.half().rpm()));
    }
    if (!Double.isNaN(pull.most().seconds())) {
      text.append(
          String.format(
              Locale.ROOT,
              ", 90 %% after %.1f s at %.0f rpm",
              pull.most().seconds(),
              pull.most().rpm()));
    }
    if (!Double.isNaN(pull.overshootKpa())) {
      text.append(String.format(Locale.ROOT, ", overshoot %.1f kPa", pull.overshootKpa()));
    }
    if (!Double.isNaN(pull.settledErrorKpa())) {
      text.append(String.format(Locale.ROOT, ", settled %+.1f kPa off", pull.settledErrorKpa()));
    }
    text.append(String.format(Locale.ROOT, ", drops %.1f kPa to its end", pull.dropKpa()));
    if (!Double.isNaN(pull.meanDuty())) {
      text.append(
          String.format(
              Locale.ROOT,
              ", duty %.0f %% (top %.0f %%)",
              100.0 * pull.meanDuty(),
              100.0 * pull.highestDuty()));
    }
    if (!pull.usable()) {
      text.append("; not for learning: ")
          .append(pull.flaws().stream().map(PullFlaw::words).collect(Collectors.joining(", ")));
    }
    return text.append('.').toString();
  }

  /** Pressure over the time since each throttle opening, the longest pulls first. */
  public static Plot overlay(List<Pull> pulls) {
    List<Pull> shown =
        pulls.stream()
            .sorted((a, b) -> Double.compare(b.seconds(), a.seconds()))
            .limit(MOST_LINES)
            .sorted((a, b) -> Integer.compare(a.from(), b.from()))
            .toList();
    double longest = shown.stream().mapToDouble(Pull::seconds).max().orElse(0.0);
    double[] x = new double[(int) (longest / STEP_SECONDS) + 1];
    for (int i = 0; i < x.length; i++) {
      x[i] = i * STEP_SECONDS;
    }
    List<Plot.Line> lines = new ArrayList<>();
    for (Pull pull : shown) {
      double[] y = new double[x.length];
      Arrays.fill(y, Double.NaN);
      int row = pull.from();
      for (int i = 0; i < x.length; i++) {
        while (row < pull.to() - 1 && pull.since(row) < x[i]) {
          row++;
        }
        if (x[i] <= pull.seconds()) {
          y[i] = pull.log().meanKpaAbs(row);
        }
      }
      int number = pulls.indexOf(pull) + 1;
      lines.add(
          new Plot.Line(
              "pull_" + number,
              "pull " + number,
              Units.KPA_ABS,
              pull.usable() ? Stroke.SOLID : Stroke.DOTTED,
              y));
    }
    return new Plot(
        "pulls_overlay",
        "Pulls laid over each other"
            + (pulls.size() > MOST_LINES ? ", the " + MOST_LINES + " longest" : ""),
        "time since the throttle opened",
        Units.SECONDS,
        x,
        lines,
        List.of(),
        List.of());
  }
}
