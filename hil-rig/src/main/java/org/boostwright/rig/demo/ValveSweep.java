package org.boostwright.rig.demo;

import java.util.List;
import java.util.function.ToDoubleFunction;
import org.boostwright.core.bench.BenchPlan;
import org.boostwright.core.bench.BenchRecord;
import org.boostwright.core.bench.BenchVerdict;
import org.boostwright.core.bench.Reading;
import org.boostwright.core.bench.VerdictCode.Grade;
import org.boostwright.core.bench.Verdicts;
import org.boostwright.core.settings.ValveSettings;
import org.boostwright.rig.bench.BenchSetup;
import org.boostwright.rig.bench.Person;
import org.boostwright.rig.bench.VirtualBench;
import org.boostwright.rig.bench.VirtualSession;
import org.boostwright.rig.result.Plot;
import org.boostwright.rig.result.Plot.Stroke;
import org.boostwright.rig.result.ResultBuilder;
import org.boostwright.rig.result.Severity;
import org.boostwright.rig.result.Units;

/** The bench on the virtual valve, and the settings' duty window against its sweep. */
final class ValveSweep {
  /** A reading this far from rest has moved, kPa: three times a gauge's own error. */
  private static final double MOVED_KPA = 2.0;

  private ValveSweep() {}

  static void add(ResultBuilder result, ValveSettings valve, long seed, Steps steps) {
    VirtualBench bench = new VirtualBench(BenchSetup.standard(), seed);
    BenchPlan plan =
        BenchPlan.standard()
            .withFrequencyHz(valve.frequencyHz())
            .withSettingsWindow(valve.windowLowDuty(), valve.windowHighDuty());
    VirtualSession session = new VirtualSession(bench, new Person(bench), plan);
    BenchRecord record = session.session().record();
    while (session.step()) {
      steps.share((double) record.completed.size() / plan.steps().size());
    }
    steps.share(1.0);
    if (record.aborted != null || record.sweepUp.isEmpty()) {
      result.find(
          "sweep_incomplete",
          Severity.PROBLEM,
          "The duty sweep of the virtual valve did not come to its end.",
          "run it again; if it stays so, it is a defect");
      return;
    }
    List<BenchVerdict> verdicts = Verdicts.of(record, plan);
    result.measure(
        "demo.bench_findings",
        "bench verdicts that stand in the way",
        (double) verdicts.stream().filter(v -> v.code().grade() != Grade.ADVICE).count(),
        Units.COUNT,
        Double.NaN,
        0.0);
    judge(result, record, valve);
    result.add(plot(record, valve));
  }

  private static void judge(ResultBuilder result, BenchRecord record, ValveSettings valve) {
    List<Reading> up = record.sweepUp;
    double supply = BenchSetup.standard().supplyKpaGauge();
    double rest = record.gauge(up.get(0));
    result.measure(
        "demo.rest_passes_pct",
        "valve at rest passes of the supply",
        100.0 * rest / supply,
        Units.PERCENT,
        98.0,
        Double.NaN);
    double still = 0.0;
    double moved = Double.NaN;
    double working = Double.NaN;
    double vented = Double.NaN;
    for (Reading reading : up) {
      double gauge = record.gauge(reading);
      double duty = 100.0 * reading.dutyFraction();
      if (gauge > rest - MOVED_KPA) {
        still = duty;
      } else if (Double.isNaN(moved)) {
        moved = duty;
      }
      if (gauge > MOVED_KPA) {
        working = duty;
      } else if (Double.isNaN(vented)) {
        vented = duty;
      }
    }
    result.measure(
        "demo.window_low_pct",
        "lower edge of the duty window in the settings, against the sweep",
        100.0 * valve.windowLowDuty(),
        Units.PERCENT,
        still,
        moved);
    result.measure(
        "demo.window_high_pct",
        "upper edge of the duty window in the settings, against the sweep",
        100.0 * valve.windowHighDuty(),
        Units.PERCENT,
        working,
        vented);
  }

  private static Plot plot(BenchRecord record, ValveSettings valve) {
    List<Reading> up = record.sweepUp;
    double ambient = record.ambientKpaAbs;
    return new Plot(
        "sweep",
        "Duty sweep of the virtual valve at " + Math.round(valve.frequencyHz()) + " Hz",
        "duty",
        Units.PERCENT,
        up.stream().mapToDouble(r -> 100.0 * r.dutyFraction()).toArray(),
        List.of(
            line("mean", "actuator, mean", Stroke.SOLID, up, record::gauge),
            line(
                "high",
                "actuator, top of ripple",
                Stroke.DOTTED,
                up,
                r -> r.highKpaAbs() - ambient),
            line(
                "low",
                "actuator, foot of ripple",
                Stroke.DASHED,
                up,
                r -> r.lowKpaAbs() - ambient)),
        List.of(),
        List.of(
            new Plot.Band("never vents", 0.0, 100.0 * valve.windowLowDuty()),
            new Plot.Band(
                "duty window", 100.0 * valve.windowLowDuty(), 100.0 * valve.windowHighDuty()),
            new Plot.Band("never supplies", 100.0 * valve.windowHighDuty(), 100.0)));
  }

  private static Plot.Line line(
      String id, String label, Stroke stroke, List<Reading> readings, ToDoubleFunction<Reading> y) {
    return new Plot.Line(
        id, label, Units.KPA_GAUGE, stroke, readings.stream().mapToDouble(y).toArray());
  }
}
