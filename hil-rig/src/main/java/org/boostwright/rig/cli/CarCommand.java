package org.boostwright.rig.cli;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.boostwright.rig.plant.Atmosphere;
import org.boostwright.rig.plant.EngineBench;
import org.boostwright.rig.plant.EngineParams;
import org.boostwright.rig.plant.RecirculationParams;
import org.boostwright.rig.result.Plot;
import org.boostwright.rig.result.Plot.Stroke;
import org.boostwright.rig.result.Result;
import org.boostwright.rig.result.ResultBuilder;
import org.boostwright.rig.result.Severity;
import org.boostwright.rig.result.Units;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;

/**
 * The virtual car's engine alone, with engine speed, throttle and wastegate held: for comparison
 * with other models.
 */
@Command(
    name = "car",
    header = "The virtual car's engine alone, for comparison with other models.",
    description = {
      "A settled point, or the trace of a throttle step, with engine speed and wastegate held. Air",
      "101.3 kPa absolute and 293 K, recirculation valve shut."
    },
    footer = {
      "",
      "Examples:",
      "  boostwright car --rpm 4500 --throttle 100 --wastegate-open 0.2",
      "  boostwright car --engine published --rpm 3000 --throttle 100 --step-from 15 --csv",
      "",
      "Columns of the trace: time_s, intake_kpa, boost_kpa, exhaust_kpa (absolute), turbo_krpm."
    })
final class CarCommand extends Subcommand {
  private static final int ROWS_PER_SECOND = 50;

  /** Parameter sets of the engine. */
  enum EngineChoice {
    PUBLISHED("published", EngineParams.PUBLISHED),
    PROJECT_CAR("project-car", EngineParams.PROJECT_CAR);

    private final String word;
    private final EngineParams params;

    EngineChoice(String word, EngineParams params) {
      this.word = word;
      this.params = params;
    }

    @Override
    public String toString() {
      return word;
    }
  }

  @Option(
      names = "--engine",
      paramLabel = "NAME",
      defaultValue = "project-car",
      description = "Parameter set: published or project-car. Default: ${DEFAULT-VALUE}.")
  EngineChoice engine = EngineChoice.PROJECT_CAR;

  @Option(
      names = "--rpm",
      paramLabel = "R",
      required = true,
      description = "Engine speed, 1/min, 1000 to 7000.")
  double rpm;

  @Option(
      names = "--throttle",
      paramLabel = "PCT",
      defaultValue = "100",
      description = "Throttle, percent, 0 to 100. Default: ${DEFAULT-VALUE}.")
  double throttlePct;

  @Option(
      names = "--wastegate-open",
      paramLabel = "X",
      defaultValue = "0",
      description = "Wastegate lift, 0 shut to 1 open. Default: ${DEFAULT-VALUE}.")
  double lift;

  @Option(
      names = "--step-from",
      paramLabel = "PCT",
      description =
          "Settle at this throttle, then step to --throttle at time 0 and print the trace.")
  Optional<Double> stepFromPct = Optional.empty();

  @Option(
      names = "--seconds",
      paramLabel = "S",
      defaultValue = "6",
      description = "Length of the trace, s, up to 60. Default: ${DEFAULT-VALUE}.")
  double seconds;

  @Option(names = "--csv", description = "Print CSV instead of text.")
  boolean csv;

  CarCommand(Terminal terminal) {
    super(terminal);
  }

  @Override
  Outcome work(Progress progress) throws WrongUseException {
    Range.check("--rpm", rpm, 1000, 7000);
    Range.check("--throttle", throttlePct, 0, 100);
    Range.check("--wastegate-open", lift, 0, 1);
    Range.check("--seconds", seconds, 0, 60);
    if (stepFromPct.isPresent()) {
      Range.check("--step-from", stepFromPct.get(), 0, 100);
    }
    if (csv && output.json) {
      throw new WrongUseException("--csv and --json exclude each other", "leave one of them out");
    }
    EngineBench bench =
        new EngineBench(
            engine.params.withRecirculation(RecirculationParams.ABSENT), Atmosphere.REFERENCE);
    bench.setRpm(rpm);
    bench.setLift(lift);
    bench.setThrottlePct(stepFromPct.orElse(throttlePct));
    boolean settled = bench.settle();
    List<double[]> rows = new ArrayList<>();
    rows.add(row(0.0, bench));
    if (stepFromPct.isPresent()) {
      bench.setThrottlePct(throttlePct);
      int count = (int) Math.round(seconds * ROWS_PER_SECOND);
      for (int i = 1; i <= count; i++) {
        bench.advance(1.0 / ROWS_PER_SECOND);
        rows.add(row((double) i / ROWS_PER_SECOND, bench));
      }
    }
    return Outcome.printed(result(rows, settled));
  }

  private static double[] row(double time, EngineBench bench) {
    return new double[] {
      time, bench.intakeKpaAbs(), bench.boostKpaAbs(), bench.exhaustKpaAbs(), bench.turboKrpm()
    };
  }

  private Result result(List<double[]> rows, boolean settled) {
    ResultBuilder result = new ResultBuilder("car");
    double[] last = rows.get(rows.size() - 1);
    result.measure("car.intake_kpa", "intake manifold pressure", last[1], Units.KPA_ABS);
    result.measure("car.boost_kpa", "pressure before the throttle", last[2], Units.KPA_ABS);
    result.measure("car.exhaust_kpa", "exhaust manifold pressure", last[3], Units.KPA_ABS);
    result.measure("car.turbo_krpm", "turbo speed", last[4], Units.THOUSAND_RPM);
    if (!settled) {
      result.find(
          "not_settled",
          Severity.PROBLEM,
          "The engine did not settle within a minute of its time.",
          "choose a point with more engine speed or less throttle");
    }
    if (rows.size() > 1) {
      result.add(
          new Plot(
              "car",
              "Throttle step",
              "time",
              Units.SECONDS,
              column(rows, 0),
              List.of(
                  line(rows, 1, "car.intake_kpa", "intake manifold", Units.KPA_ABS, Stroke.SOLID),
                  line(rows, 2, "car.boost_kpa", "before throttle", Units.KPA_ABS, Stroke.DASHED),
                  line(
                      rows, 3, "car.exhaust_kpa", "exhaust manifold", Units.KPA_ABS, Stroke.DOTTED),
                  line(rows, 4, "car.turbo_krpm", "turbo", Units.THOUSAND_RPM, Stroke.SOLID)),
              List.of(),
              List.of()));
    }
    result.provenance("engine", engine.toString());
    result.provenance("engine speed", rpm + " 1/min");
    result.provenance("throttle", throttlePct + " %");
    result.provenance("wastegate lift", Double.toString(lift));
    stepFromPct.ifPresent(from -> result.provenance("stepped from", from + " %"));
    result.headline(
        stepFromPct.isPresent()
            ? String.format(Locale.ROOT, "%s s after the throttle step:", last[0])
            : settled ? "Settled." : "Not settled.");
    return result.build();
  }

  private static double[] column(List<double[]> rows, int column) {
    return rows.stream().mapToDouble(row -> row[column]).toArray();
  }

  private static Plot.Line line(
      List<double[]> rows, int column, String id, String label, String unit, Stroke stroke) {
    return new Plot.Line(id, label, unit, stroke, column(rows, column));
  }

  @Override
  void print(Result result) {
    if (!csv) {
      super.print(result);
      return;
    }
    StringBuilder text = new StringBuilder("time_s,intake_kpa,boost_kpa,exhaust_kpa,turbo_krpm\n");
    if (result.series().isEmpty()) {
      text.append(0);
      result
          .measurements()
          .forEach(m -> text.append(String.format(Locale.ROOT, ",%.4f", m.value())));
      text.append('\n');
    } else {
      Plot plot = result.series().get(0);
      for (int i = 0; i < plot.x().length; i++) {
        text.append(String.format(Locale.ROOT, "%.2f", plot.x()[i]));
        for (Plot.Line line : plot.lines()) {
          text.append(String.format(Locale.ROOT, ",%.4f", line.y()[i]));
        }
        text.append('\n');
      }
    }
    terminal.out().print(text);
    terminal.out().flush();
  }
}
