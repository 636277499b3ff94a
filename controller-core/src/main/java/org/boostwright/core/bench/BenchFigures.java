package org.boostwright.core.bench;

import java.util.ArrayList;
import java.util.List;
import org.boostwright.core.bench.model.Estimate;
import org.boostwright.core.bench.model.ValveAdvice;
import org.boostwright.core.bench.model.ValveFitResult;
import org.jspecify.annotations.Nullable;

/** What a session measured, as the list that results and proofs show; nothing unmeasured in it. */
public final class BenchFigures {
  private static final String KPA_GAUGE = "kPa gauge";
  private static final String FRACTION = "0..1";

  /**
   * One number.
   *
   * @param id stable name (docs/json.md)
   * @param text for people
   * @param unit as results name it
   */
  public record Figure(String id, String text, double value, String unit) {}

  private final List<Figure> figures = new ArrayList<>();

  private BenchFigures() {}

  /** The numbers of a session. */
  public static List<Figure> of(BenchRecord record, BenchPlan plan) {
    BenchFigures all = new BenchFigures();
    if (record.completed.contains(BenchStep.AMBIENT)) {
      all.add("bench.ambient_kpa", "ambient", record.ambientKpaAbs, "kPa absolute");
    }
    all.add("bench.rest_kpa", "line at rest", record.restKpaGauge(), KPA_GAUGE);
    all.add(
        "bench.energised_kpa",
        "line fully energised",
        gauge(record, record.energised),
        KPA_GAUGE);
    all.add("bench.leak_kpa_per_s", "leak, supply shut", record.leakKpaPerSecond, "kPa/s");
    all.add("valve.vent_ms", "time to vent 90 %", 1e3 * record.ventSeconds, "ms");
    all.add("valve.fill_ms", "time to fill 90 %", 1e3 * record.fillSeconds, "ms");
    ValveFitResult fit = record.fit;
    if (fit != null) {
      all.fit(fit, plan);
    }
    all.actuator(record);
    all.add("coil.hottest_c", "hottest the coil got", record.hottestCoilC, "degC");
    return all.figures;
  }

  private void fit(ValveFitResult fit, BenchPlan plan) {
    estimate("valve.t_on", "_ms", "t_on", fit.onDelaySeconds().times(1e3), "ms");
    estimate("valve.t_off", "_ms", "t_off", fit.offDelaySeconds().times(1e3), "ms");
    estimate("valve.vent_over_fill", "", "venting over filling", fit.ventOverFill(), "");
    estimate(
        "valve.line",
        "_ms",
        "time constant of the line",
        fit.timeConstantSeconds().times(1e3),
        "ms");
    add("valve.fit_rms_kpa", "fit against readings", fit.rmsKpa(), "kPa");
    ValveAdvice.Frequency advice = ValveAdvice.recommend(fit, plan.rippleLimitKpa());
    double best = advice.frequencyHz();
    double hz = Double.isNaN(plan.frequencyHz()) ? best : plan.frequencyHz();
    add("valve.window_hz", "PWM frequency of this window", hz, "Hz");
    window("valve.window", "window", fit, hz);
    add("valve.recommended_hz", "recommended PWM frequency", best, "Hz");
    window("valve.recommended_window", "  its window", fit, best);
    add(
        "valve.recommended_ripple_kpa",
        "  its largest ripple, peak to peak",
        advice.rippleKpa(),
        "kPa");
  }

  private void window(String id, String text, ValveFitResult fit, double hz) {
    add(id + "_low_duty", text + " begins at duty", fit.windowLowDuty(hz).value(), FRACTION);
    add(id + "_high_duty", text + " ends at duty", fit.windowHighDuty(hz).value(), FRACTION);
  }

  private void actuator(BenchRecord record) {
    if (record.completed.contains(BenchStep.ACTUATOR)) {
      add("actuator.crack_kpa", "rod begins to move", record.crackKpaGauge, KPA_GAUGE);
      add("actuator.full_kpa", "rod at full stroke", record.fullStrokeKpaGauge, KPA_GAUGE);
      add("actuator.held_kpa", "held for 60 s", record.heldKpaGauge, KPA_GAUGE);
      add("actuator.preload_mm", "rod preload", record.preloadMm, "mm");
    }
  }

  private static double gauge(BenchRecord record, @Nullable Reading reading) {
    return reading == null ? Double.NaN : record.gauge(reading);
  }

  private void estimate(String id, String ending, String text, Estimate e, String unit) {
    figures.add(new Figure(id + ending, text, e.value(), unit));
    figures.add(new Figure(id + "_low95" + ending, "  95 % from", e.low(), unit));
    figures.add(new Figure(id + "_high95" + ending, "  95 % to", e.high(), unit));
  }

  private void add(String id, String text, double value, String unit) {
    if (!Double.isNaN(value)) {
      figures.add(new Figure(id, text, value, unit));
    }
  }
}
