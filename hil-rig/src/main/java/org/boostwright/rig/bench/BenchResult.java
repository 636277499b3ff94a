package org.boostwright.rig.bench;

import java.util.List;
import java.util.Locale;
import org.boostwright.core.bench.BenchFigures;
import org.boostwright.core.bench.BenchPlan;
import org.boostwright.core.bench.BenchRecord;
import org.boostwright.core.bench.BenchVerdict;
import org.boostwright.core.bench.VerdictCode.Grade;
import org.boostwright.core.bench.model.ValveAdvice;
import org.boostwright.core.bench.model.ValveFitResult;
import org.boostwright.rig.result.ResultBuilder;
import org.boostwright.rig.result.Severity;

/** Puts a bench session's measurements and verdicts into a result. */
public final class BenchResult {
  private BenchResult() {}

  /** Adds everything that was measured and concluded. */
  public static void add(
      ResultBuilder result, BenchRecord record, BenchPlan plan, List<BenchVerdict> verdicts) {
    for (BenchFigures.Figure figure : BenchFigures.of(record, plan)) {
      result.measure(figure.id(), figure.text(), figure.value(), figure.unit());
    }
    ValveFitResult fit = record.fit;
    if (fit != null) {
      cautions(result, fit, plan);
    }
    for (BenchVerdict verdict : verdicts) {
      boolean dangerous = verdict.code().grade() == Grade.DANGEROUS;
      result.find(
          verdict.code().id(),
          verdict.code().grade() == Grade.ADVICE ? Severity.CAUTION : Severity.PROBLEM,
          (dangerous ? "DANGEROUS. " : "") + verdict.text(),
          verdict.code().next());
    }
  }

  private static void cautions(ResultBuilder result, ValveFitResult fit, BenchPlan plan) {
    ValveAdvice.Frequency advice = advice(fit, plan);
    if (!ValveAdvice.speedIsKnown(fit)) {
      result.find(
          "line_speed_unknown",
          Severity.CAUTION,
          String.format(
              Locale.ROOT,
              "These readings do not tell how fast the line fills and vents, on which the ripple"
                  + " hangs, so the advice keeps to the usual %d to %d Hz.",
              ValveAdvice.USUAL_LOW_HZ,
              ValveAdvice.USUAL_HIGH_HZ),
          "use --manual, which also asks for a pulse on the shut line, or a sensor on the line");
    }
    if (!advice.keepsRippleLimit()) {
      result.find(
          "ripple_above_limit",
          Severity.NOTE,
          String.format(
              Locale.ROOT,
              "No frequency with a usable window keeps the ripple below %.0f kPa; %d Hz ripples"
                  + " least, by %.0f kPa.",
              plan.rippleLimitKpa(),
              advice.frequencyHz(),
              advice.rippleKpa()),
          "");
    }
  }

  /** The recommended frequency for a fitted valve. */
  public static ValveAdvice.Frequency advice(ValveFitResult fit, BenchPlan plan) {
    return ValveAdvice.recommend(fit, plan.rippleLimitKpa());
  }
}
