package org.boostwright.rig.scenario.campaign;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import org.boostwright.rig.inject.FaultKind;

/**
 * What a campaign says of one kind of fault, from the valid runs in which it was the only one and
 * nothing else (a stuck recirculation valve) took the pressure out of the hands of the coil.
 *
 * @param kind the kind
 * @param runs how many runs
 * @param underBoost in how many of them boost was controlled in the moment of the fault
 * @param reported in how many of those it was reported
 * @param unsafe unsafe or broken runs
 * @param detectionMs median, 95 % and longest time to the report under boost, ms; NaN
 * @param reactionMs the same to the coil without current, ms; NaN
 * @param peakOverKpa highest true pressure over the limit of all runs, kPa
 * @param unreportedFrom smallest amount that was not reported under boost; NaN
 * @param unreportedTo largest amount that was not reported under boost; NaN
 */
public record KindSummary(
    FaultKind kind,
    int runs,
    int underBoost,
    int reported,
    int unsafe,
    Times detectionMs,
    Times reactionMs,
    double peakOverKpa,
    double unreportedFrom,
    double unreportedTo) {

  /** Median, 95 % and longest, ms; NaN where there was none. */
  public record Times(double median, double p95, double longest) {
    static Times of(List<Double> seconds) {
      double[] sorted = seconds.stream().mapToDouble(s -> 1e3 * s).sorted().toArray();
      if (sorted.length == 0) {
        return new Times(Double.NaN, Double.NaN, Double.NaN);
      }
      return new Times(
          at(sorted, 0.5), at(sorted, 0.95), sorted[sorted.length - 1]);
    }

    private static double at(double[] sorted, double share) {
      return sorted[Math.min(sorted.length - 1, (int) (share * sorted.length))];
    }

    /** As text, empty where there was none. */
    public String words() {
      return Double.isNaN(median)
          ? ""
          : String.format(Locale.ROOT, "%.0f / %.0f / %.0f", median, p95, longest);
    }
  }

  /** First line of {@code kinds.csv}. */
  public static final String HEADER =
      "fault,row,runs,under_boost,reported,unsafe,detection_median_ms,detection_p95_ms,"
          + "detection_longest_ms,reaction_median_ms,reaction_p95_ms,reaction_longest_ms,"
          + "peak_over_limit_kpa,unreported_from,unreported_to";

  /** Sums up the rows of one kind. */
  static KindSummary of(FaultKind kind, List<CaseRow> rows) {
    List<Double> detection = new ArrayList<>();
    List<Double> reaction = new ArrayList<>();
    double peak = Double.NEGATIVE_INFINITY;
    double from = Double.NaN;
    double to = Double.NaN;
    int runs = 0;
    int underBoost = 0;
    int unsafe = 0;
    for (CaseRow row : rows) {
      boolean alone = row.faults().size() == 1 && row.faults().get(0).id().equals(kind.id());
      boolean otherCause = kind.controllable() && row.verdict() == CaseVerdict.APART;
      if (!alone || otherCause || row.verdict() == CaseVerdict.INVALID) {
        continue;
      }
      CaseRow.Fault fault = row.faults().get(0);
      runs++;
      peak = Math.max(peak, row.peakOverKpa());
      unsafe +=
          row.verdict() == CaseVerdict.UNSAFE || row.verdict() == CaseVerdict.BROKEN ? 1 : 0;
      if (!fault.boost()) {
        continue;
      }
      underBoost++;
      if (Double.isNaN(fault.detectionSeconds())) {
        from = Double.isNaN(from) ? fault.amount() : Math.min(from, fault.amount());
        to = Double.isNaN(to) ? fault.amount() : Math.max(to, fault.amount());
      } else {
        detection.add(fault.detectionSeconds());
      }
      if (!Double.isNaN(fault.reactionSeconds())) {
        reaction.add(fault.reactionSeconds());
      }
    }
    return new KindSummary(
        kind,
        runs,
        underBoost,
        detection.size(),
        unsafe,
        Times.of(detection),
        Times.of(reaction),
        runs == 0 ? Double.NaN : peak,
        from,
        to);
  }

  /** As a line of {@code kinds.csv}. */
  public String line() {
    StringBuilder line = new StringBuilder(kind.id()).append(',').append(kind.row());
    for (int count : new int[] {runs, underBoost, reported, unsafe}) {
      line.append(',').append(count);
    }
    double[] numbers = {
      detectionMs.median(), detectionMs.p95(), detectionMs.longest(),
      reactionMs.median(), reactionMs.p95(), reactionMs.longest(),
      peakOverKpa, unreportedFrom, unreportedTo
    };
    Arrays.stream(numbers)
        .forEach(
            n -> line.append(',').append(Double.isNaN(n) ? "" : Math.rint(n * 1e4) / 1e4));
    return line.toString();
  }
}
