package org.boostwright.rig.bench;

import java.util.List;
import java.util.Locale;
import org.boostwright.core.bench.BenchPlan;
import org.boostwright.core.bench.BenchRecord;
import org.boostwright.core.bench.BenchStep;
import org.boostwright.core.bench.BenchVerdict;
import org.boostwright.core.bench.Reading;
import org.boostwright.core.bench.VerdictCode.Grade;
import org.boostwright.core.bench.model.Estimate;
import org.boostwright.core.bench.model.ValveAdvice;
import org.boostwright.core.bench.model.ValveFitResult;
import org.boostwright.rig.result.ResultBuilder;
import org.boostwright.rig.result.Severity;
import org.boostwright.rig.result.Units;
import org.jspecify.annotations.Nullable;

/** Puts a bench session's measurements and verdicts into a result. */
public final class BenchResult {
  private BenchResult() {}

  /** Adds everything that was measured and concluded. */
  public static void add(
      ResultBuilder result, BenchRecord record, BenchPlan plan, List<BenchVerdict> verdicts) {
    if (record.completed.contains(BenchStep.AMBIENT)) {
      plain(result, "bench.ambient_kpa", "ambient", record.ambientKpaAbs, Units.KPA_ABS);
    }
    plain(result, "bench.rest_kpa", "line at rest", record.restKpaGauge(), Units.KPA_GAUGE);
    plain(
        result,
        "bench.energised_kpa",
        "line fully energised",
        gauge(record, record.energised),
        Units.KPA_GAUGE);
    plain(
        result,
        "bench.leak_kpa_per_s",
        "leak, supply shut",
        record.leakKpaPerSecond,
        Units.KPA_PER_SECOND);
    plain(result, "valve.vent_ms", "time to vent 90 %", 1e3 * record.ventSeconds, "ms");
    plain(result, "valve.fill_ms", "time to fill 90 %", 1e3 * record.fillSeconds, "ms");
    ValveFitResult fit = record.fit;
    if (fit != null) {
      add(result, fit, plan);
    }
    actuator(result, record);
    plain(result, "coil.hottest_c", "hottest the coil got", record.hottestCoilC, Units.CELSIUS);
    for (BenchVerdict verdict : verdicts) {
      boolean dangerous = verdict.code().grade() == Grade.DANGEROUS;
      result.find(
          verdict.code().id(),
          verdict.code().grade() == Grade.ADVICE ? Severity.CAUTION : Severity.PROBLEM,
          (dangerous ? "DANGEROUS. " : "") + verdict.text(),
          verdict.code().next());
    }
  }

  private static void actuator(ResultBuilder result, BenchRecord record) {
    if (record.completed.contains(BenchStep.ACTUATOR)) {
      plain(
          result,
          "actuator.crack_kpa",
          "rod begins to move",
          record.crackKpaGauge,
          Units.KPA_GAUGE);
      plain(
          result,
          "actuator.full_kpa",
          "rod at full stroke",
          record.fullStrokeKpaGauge,
          Units.KPA_GAUGE);
      plain(result, "actuator.held_kpa", "held for 60 s", record.heldKpaGauge, Units.KPA_GAUGE);
      plain(result, "actuator.preload_mm", "rod preload", record.preloadMm, "mm");
    }
  }

  private static void add(ResultBuilder result, ValveFitResult fit, BenchPlan plan) {
    estimate(result, "valve.t_on", "ms", "t_on", fit.onDelaySeconds().times(1e3));
    estimate(result, "valve.t_off", "ms", "t_off", fit.offDelaySeconds().times(1e3));
    estimate(result, "valve.vent_over_fill", "", "venting over filling", fit.ventOverFill());
    estimate(
        result,
        "valve.line",
        "ms",
        "time constant of the line",
        fit.timeConstantSeconds().times(1e3));
    plain(result, "valve.fit_rms_kpa", "fit against readings", fit.rmsKpa(), Units.KPA);
    ValveAdvice.Frequency advice = advice(fit, plan);
    double hz = Double.isNaN(plan.frequencyHz()) ? advice.frequencyHz() : plan.frequencyHz();
    plain(result, "valve.window_hz", "PWM frequency of this window", hz, Units.HERTZ);
    Estimate low = fit.windowLowDuty(hz);
    Estimate high = fit.windowHighDuty(hz);
    plain(result, "valve.window_low_duty", "window begins at duty", low.value(), Units.FRACTION);
    plain(result, "valve.window_high_duty", "window ends at duty", high.value(), Units.FRACTION);
    plain(result, "valve.recommended_hz", "recommended PWM frequency", advice.frequencyHz(), "Hz");
    plain(
        result,
        "valve.recommended_window_low_duty",
        "  its window begins at duty",
        fit.windowLowDuty(advice.frequencyHz()).value(),
        Units.FRACTION);
    plain(
        result,
        "valve.recommended_window_high_duty",
        "  its window ends at duty",
        fit.windowHighDuty(advice.frequencyHz()).value(),
        Units.FRACTION);
    plain(
        result,
        "valve.recommended_ripple_kpa",
        "  its largest ripple, peak to peak",
        advice.rippleKpa(),
        "kPa");
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

  private static double gauge(BenchRecord record, @Nullable Reading r) {
    return r == null ? Double.NaN : record.gauge(r);
  }

  private static void estimate(
      ResultBuilder result, String id, String unit, String text, Estimate e) {
    String ending = unit.isEmpty() ? "" : "_" + unit;
    result.measure(id + ending, text, e.value(), unit);
    result.measure(id + "_low95" + ending, "  95 % from", e.low(), unit);
    result.measure(id + "_high95" + ending, "  95 % to", e.high(), unit);
  }

  private static void plain(
      ResultBuilder result, String id, String text, double value, String unit) {
    if (!Double.isNaN(value)) {
      result.measure(id, text, value, unit);
    }
  }
}
