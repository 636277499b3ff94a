package org.boostwright.rig.report;

import java.util.List;
import org.boostwright.core.settings.UnitSettings;
import org.boostwright.rig.result.HeatTable;
import org.boostwright.rig.result.Plot;
import org.boostwright.rig.result.Plot.Stroke;
import org.boostwright.rig.result.Result;
import org.boostwright.rig.result.ResultBuilder;
import org.boostwright.rig.result.Severity;
import org.boostwright.rig.result.TimeLine;
import org.boostwright.rig.result.Units;

/** Made-up results with everything a page can hold, for tests of the page alone. */
final class SampleResults {
  private SampleResults() {}

  /** A pull that goes well until its sensor wire opens. */
  static Result pull(UnitSettings units) {
    int n = 2400;
    double[] t = new double[n];
    double[] map = new double[n];
    double[] target = new double[n];
    double[] duty = new double[n];
    for (int i = 0; i < n; i++) {
      t[i] = i * 0.005;
      boolean held = t[i] > 9.0;
      target[i] = t[i] < 1.0 ? Double.NaN : 180.0;
      map[i] =
          held
              ? 152.0 + 28.0 * Math.exp(-(t[i] - 9.0) / 0.15)
              : 180.0 - 80.0 * Math.exp(-Math.max(0.0, t[i] - 1.0) / 0.7);
      map[i] += 0.8 * Math.sin(40.0 * t[i]);
      duty[i] = held || t[i] < 1.0 ? 0.0 : t[i] < 2.4 ? 80.0 : 41.0 + 4.0 * Math.sin(t[i]);
    }
    return new ResultBuilder("pull")
        .headline("The pull held 180 kPa absolute until the sensor wire opened, then rested.")
        .settingsDigest("6f0c1a77e2")
        .seed(7)
        .units(units)
        .measure(
            "pull.peak_map_kpa",
            "highest manifold pressure",
            182.44,
            Units.KPA_ABS,
            Double.NaN,
            195.0)
        .measure("pull.overshoot_kpa", "overshoot over target", 7.9, Units.KPA, Double.NaN, 5.0)
        .measure("pull.settled_error_kpa", "settled error", -0.6, Units.KPA, -3.0, 3.0)
        .measure("pull.spool_s", "time to target", Double.NaN, Units.SECONDS, Double.NaN, 3.0)
        .measure("pull.turbo_peak_krpm", "highest turbo speed", 171.2, Units.THOUSAND_RPM)
        .find(
            "overshoot",
            Severity.PROBLEM,
            "Pressure went 7.9 kPa over target at 3850 rpm; 5.0 kPa is allowed.",
            "Lower base duty by 3 % from 3500 to 4000 rpm and repeat the pull.")
        .find("outside_table", Severity.NOTE, "12 lookups fell outside the target table.", "")
        .find(
            "hot_air",
            Severity.CAUTION,
            "Intake air reached 54 °C.",
            "Let it cool for three minutes before the next pull.")
        .add(
            new Plot(
                "pull",
                "Pressure, target and duty over the pull",
                "time",
                Units.SECONDS,
                t,
                List.of(
                    new Plot.Line("map", "manifold pressure", Units.KPA_ABS, Stroke.SOLID, map),
                    new Plot.Line("target", "target", Units.KPA_ABS, Stroke.DASHED, target),
                    new Plot.Line("duty", "duty", Units.PERCENT, Stroke.SOLID, duty)),
                List.of(new Plot.Limit("overboost limit", Units.KPA_ABS, 195.0)),
                List.of(
                    new Plot.Band("ready", 0.0, 1.0),
                    new Plot.Band("controlling", 1.0, 9.0),
                    new Plot.Band("held at spring", 9.0, 12.0))))
        .add(
            new HeatTable(
                "base_duty",
                "Base duty",
                "throttle",
                Units.PERCENT,
                new double[] {50, 75, 100},
                "engine speed",
                Units.RPM,
                new double[] {2000, 3000, 4000, 5000, 6000},
                Units.PERCENT,
                new double[][] {
                  {10, 15.5, 20, 22, 24}, {20, 28, 34, 37, 40}, {30, 41, 44, 46, Double.NaN}
                }))
        .add(
            new TimeLine(
                "sensor",
                "From the open sensor wire to rest",
                Units.MILLISECONDS,
                List.of(
                    new TimeLine.Row(
                        "wire open at 4000 rpm",
                        List.of(
                            new TimeLine.Mark("takes effect", 4.0),
                            new TimeLine.Mark("confirmed", 18.5),
                            new TimeLine.Mark("at rest", 18.5)),
                        40.0),
                    new TimeLine.Row(
                        "wire open at 6000 rpm",
                        List.of(
                            new TimeLine.Mark("takes effect", 5.0),
                            new TimeLine.Mark("confirmed", Double.NaN),
                            new TimeLine.Mark("at rest", 47.0)),
                        40.0))))
        .file("log", "runs/pull-1/log.csv")
        .provenance("settings", "car.toml")
        .provenance("car", "built-in project car")
        .caution(
            "This is the virtual car. It proves nothing about your hoses, your gate, your fuel.")
        .build();
  }

  /** Everything that could break out of the page, in every text field. */
  static Result hostile() {
    String bad = "</script><script>document.title='owned'</script>\"'><img src=x onerror=1>&\u2028\u202Egnp.exe\u2066\u0007\u001B[31m\uD800" + "W".repeat(1_000_000);
    return new ResultBuilder(bad)
        .headline(bad)
        .settingsDigest(bad)
        .measure(bad, bad, 1, bad, 0, 2)
        .find(bad, Severity.PROBLEM, bad, bad)
        .add(
            new Plot(
                bad,
                bad,
                bad,
                bad,
                new double[] {0, 1},
                List.of(new Plot.Line(bad, bad, bad, Stroke.SOLID, new double[] {0, 1})),
                List.of(new Plot.Limit(bad, bad, 0.5)),
                List.of(new Plot.Band(bad, 0, 1))))
        .add(
            new HeatTable(
                bad,
                bad,
                bad,
                bad,
                new double[] {1},
                bad,
                bad,
                new double[] {1},
                bad,
                new double[][] {{1}}))
        .add(
            new TimeLine(
                bad,
                bad,
                bad,
                List.of(new TimeLine.Row(bad, List.of(new TimeLine.Mark(bad, 1)), 2))))
        .file(bad, bad)
        .provenance(bad, bad)
        .caution(bad)
        .build();
  }
}
