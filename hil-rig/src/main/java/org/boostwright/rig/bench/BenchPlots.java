package org.boostwright.rig.bench;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.boostwright.core.bench.BenchPlan;
import org.boostwright.core.bench.BenchRecord;
import org.boostwright.core.bench.Reading;
import org.boostwright.core.bench.model.SteadyLine;
import org.boostwright.core.bench.model.ValveAdvice;
import org.boostwright.core.bench.model.ValveFitResult;
import org.boostwright.rig.result.Plot;
import org.boostwright.rig.result.Plot.Stroke;
import org.boostwright.rig.result.Units;
import org.jspecify.annotations.Nullable;

/** The duty sweep and the choice of frequency as plots. */
public final class BenchPlots {
  private static final int LOWEST_HZ = ValveAdvice.LOWEST_HZ;

  private BenchPlots() {}

  /** Plots of a session; none when nothing was swept. */
  public static List<Plot> of(BenchRecord record, BenchPlan plan) {
    List<Plot> plots = new ArrayList<>();
    if (record.sweepUp.size() > 2 && !record.sweepDown.isEmpty()) {
      plots.add(sweep(record, plan));
    }
    if (record.fit != null) {
      plots.add(frequencies(record.fit, plan));
    }
    return plots;
  }

  private static Plot sweep(BenchRecord record, BenchPlan plan) {
    List<Reading> up = record.sweepUp;
    int n = up.size();
    double[] duty = new double[n];
    double[] mean = new double[n];
    double[] low = new double[n];
    double[] high = new double[n];
    double[] down = new double[n];
    double[] advised = new double[n];
    ValveFitResult fit = record.fit;
    double hz = up.get(0).frequencyHz();
    double best = fit == null ? Double.NaN : BenchResult.advice(fit, plan).frequencyHz();
    for (int i = 0; i < n; i++) {
      Reading r = up.get(i);
      duty[i] = 100.0 * r.dutyFraction();
      mean[i] = record.gauge(r);
      low[i] = r.lowKpaAbs() - record.ambientKpaAbs;
      high[i] = r.highKpaAbs() - record.ambientKpaAbs;
      down[i] = down(record, r.dutyFraction());
      advised[i] = model(fit, best, r.dutyFraction());
    }
    List<Plot.Line> lines = new ArrayList<>();
    lines.add(line("mean", at("mean, duty rising", hz), Stroke.SOLID, mean));
    lines.add(line("mean_falling", at("mean, duty falling", hz), Stroke.POINTS, down));
    lines.add(line("lowest", "lowest of the ripple", Stroke.DOTTED, low));
    lines.add(line("highest", "highest of the ripple", Stroke.DOTTED, high));
    List<Plot.Band> bands = new ArrayList<>();
    if (fit != null) {
      lines.add(line("advised", at("model at the recommended", best), Stroke.DASHED, advised));
      bands.add(
          new Plot.Band(
              at("window", hz),
              100.0 * fit.windowLowDuty(hz).value(),
              100.0 * fit.windowHighDuty(hz).value()));
    }
    return new Plot(
        "sweep", "Actuator line over duty", "duty", Units.PERCENT, duty, lines, List.of(), bands);
  }

  private static double down(BenchRecord record, double duty) {
    for (Reading r : record.sweepDown) {
      if (Math.abs(r.dutyFraction() - duty) < 1e-6) {
        return record.gauge(r);
      }
    }
    return Double.NaN;
  }

  private static double model(@Nullable ValveFitResult fit, double hz, double duty) {
    if (fit == null) {
      return Double.NaN;
    }
    SteadyLine line = fit.steady(hz, duty);
    return line.meanKpaAbs() - fit.ambientKpaAbs();
  }

  private static Plot frequencies(ValveFitResult fit, BenchPlan plan) {
    int n = ValveAdvice.HIGHEST_HZ - LOWEST_HZ + 1;
    double[] hz = new double[n];
    double[] low = new double[n];
    double[] high = new double[n];
    double[] ripple = new double[n];
    for (int i = 0; i < n; i++) {
      hz[i] = LOWEST_HZ + i;
      low[i] = 100.0 * fit.windowLowDuty(hz[i]).value();
      high[i] = 100.0 * fit.windowHighDuty(hz[i]).value();
      ripple[i] =
          ValveAdvice.largestRippleKpa(fit.valve(), hz[i], fit.supplyKpaAbs(), fit.ambientKpaAbs());
    }
    double best = BenchResult.advice(fit, plan).frequencyHz();
    return new Plot(
        "frequency",
        "Window and ripple over PWM frequency",
        "PWM frequency",
        Units.HERTZ,
        hz,
        List.of(
            new Plot.Line("low", "window begins", Units.PERCENT, Stroke.SOLID, low),
            new Plot.Line("high", "window ends", Units.PERCENT, Stroke.SOLID, high),
            new Plot.Line("ripple", "largest ripple", Units.KPA, Stroke.DASHED, ripple)),
        List.of(new Plot.Limit("ripple limit", Units.KPA, plan.rippleLimitKpa())),
        List.of(new Plot.Band(at("recommended", best), best - 0.5, best + 0.5)));
  }

  private static Plot.Line line(String id, String label, Stroke stroke, double[] y) {
    return new Plot.Line(id, label, Units.KPA_GAUGE, stroke, y);
  }

  private static String at(String what, double hz) {
    return String.format(Locale.ROOT, "%s (%.0f Hz)", what, hz);
  }
}
