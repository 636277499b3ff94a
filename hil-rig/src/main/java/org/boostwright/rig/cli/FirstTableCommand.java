package org.boostwright.rig.cli;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.Locale;
import java.util.Optional;
import org.boostwright.core.bench.proof.DamagedProofException;
import org.boostwright.core.bench.proof.Proof;
import org.boostwright.core.settings.ProjectSettings;
import org.boostwright.core.settings.Settings;
import org.boostwright.core.settings.file.AtomicFile;
import org.boostwright.core.settings.file.ProofFile;
import org.boostwright.core.settings.file.SettingsDigest;
import org.boostwright.core.settings.file.SettingsEdit;
import org.boostwright.core.table.Table2d;
import org.boostwright.rig.plan.BenchedValve;
import org.boostwright.rig.plan.FirstTable;
import org.boostwright.rig.plan.PlannedCar;
import org.boostwright.rig.plant.PlantParams;
import org.boostwright.rig.report.DisplayUnits;
import org.boostwright.rig.result.ResultBuilder;
import org.boostwright.rig.result.Result;
import org.boostwright.rig.result.SettingsTables;
import org.boostwright.rig.result.Severity;
import org.boostwright.rig.result.Units;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** The first base-duty table. */
@Command(
    name = "first-table",
    header = "A first base-duty table that errs low, with the boost to expect.",
    description = {
      "Build base duty for the target from the bench, the actuator's spring and the virtual car,",
      "cut back until in pulls of 40 cars within tolerances at most one passes the target by 3 kPa.",
      "Leaves a settings file with the new table in the run folder; your own file stays as it is."
    },
    footer = {
      "",
      "Examples:",
      "  boostwright first-table",
      "  boostwright first-table --settings car.toml --write car.toml --overwrite",
      "",
      "The first drive is on the spring whatever stands in the table: see 'boostwright stage'."
    })
final class FirstTableCommand extends Subcommand {
  @Mixin SettingsOption settings = new SettingsOption();
  @Mixin SetOption set = new SetOption();
  @Mixin OutOption out = new OutOption();

  @Option(
      names = "--write",
      paramLabel = "FILE",
      description = "Also write the settings with the new tables here.")
  Optional<Path> write = Optional.empty();

  @Option(
      names = "--overwrite",
      description = "Let --write replace a file that is there, such as the settings themselves.")
  boolean overwrite;

  private String grid = "";

  FirstTableCommand(Terminal terminal) {
    super(terminal);
  }

  @Override
  Outcome work(Progress progress) throws IOException, WrongUseException {
    set.virtualCarOnly();
    if (write.isPresent() && Files.exists(write.get()) && !overwrite) {
      throw new WrongUseException(
          write.get() + " is there already", "give another name, or --overwrite to replace it");
    }
    SettingsOption.Loaded loaded = settings.load();
    ProjectSettings project = loaded.result().project();
    if (project == null) {
      throw new WrongUseException(
          loaded.source().where() + " has no [project]",
          "copy that part from docs/project-car.toml and write your own numbers");
    }
    SettingsEdit edit =
        SettingsEdit.of(loaded.source().name(), SettingsOption.text(loaded.source()));
    Settings car = loaded.settings();
    if (!loaded.result().stated().containsKey("target.boost")) {
      if (Double.isNaN(project.boostKpaAbs())) {
        throw new WrongUseException(
            "neither a target table nor project.boost is stated",
            "write boost_kpa_abs = ... in [project]");
      }
      edit.setTarget(FirstTable.target(project.boostKpaAbs(), car.car().redlineRpm()));
      car = edit.load().orThrow();
    }
    ResultBuilder result = new ResultBuilder("first-table").units(car.units());
    PlantParams planned = planned(car, project, set.change(PlantParams.PROJECT_CAR), result);
    progress.begin("first table", 100);
    FirstTable.Built built =
        FirstTable.build(car, planned, share -> progress.at(Math.round(100 * share)));
    edit.setBaseDuty(built.duty());
    Settings fresh = edit.load().orThrow();
    report(result, fresh, built);
    result.settingsDigest(SettingsDigest.of(fresh));
    result.provenance("settings", loaded.source().where());
    set.record(result);
    byte[] text = edit.text().getBytes(StandardCharsets.UTF_8);
    if (write.isPresent()) {
      AtomicFile.write(write.get(), text);
      result.provenance("written to", write.get().toString());
    }
    return Outcome.kept(
        result.build(),
        out.folder,
        new Outcome.Extra("settings", "car.toml", file -> AtomicFile.write(file, text)));
  }

  /** The planned car with the valve of the bench proof, or of the settings' duty window. */
  private PlantParams planned(
      Settings car, ProjectSettings project, PlantParams base, ResultBuilder result)
      throws IOException {
    PlantParams planned = PlannedCar.of(car, project, base);
    Optional<Path> path = settings.path();
    if (path.isPresent()) {
      for (boolean practice : new boolean[] {false, true}) {
        Path file = ProofFile.beside(path.get(), practice);
        if (!Files.exists(file)) {
          continue;
        }
        try {
          Proof proof = ProofFile.read(file);
          if (proof.sound() && proof.hardwareDigest().equals(SettingsDigest.ofHardware(car))) {
            result.provenance("valve", "bench proof " + file);
            return BenchedValve.of(planned, proof.measurements());
          }
        } catch (DamagedProofException e) {
          result.provenance("valve", file + " is damaged and not used");
        }
      }
    }
    result.find(
        "no_bench_proof",
        Severity.CAUTION,
        "There is no bench proof for these settings: the valve's times come from the duty window.",
        "run the bench first; the table is only as good as the valve it was made for");
    return BenchedValve.of(planned, car.valve());
  }

  private void report(ResultBuilder result, Settings car, FirstTable.Built built) {
    DisplayUnits units = new DisplayUnits(car.units());
    double uncertainty = Arrays.stream(built.uncertaintyKpa()).max().orElse(Double.NaN);
    result.measure(
        "first_table.margin_kpa", "aims below the target by", built.marginKpa(), Units.KPA);
    result.measure(
        "first_table.uncertainty_kpa",
        "largest uncertainty of the prediction (two standard deviations)",
        uncertainty,
        Units.KPA);
    result.measure(
        "first_table.cars_over",
        "cars within tolerances, of " + FirstTable.cars() + ", more than 3 kPa over target",
        built.carsOver(),
        Units.COUNT,
        Double.NaN,
        0.05 * FirstTable.cars());
    result.measure(
        "first_table.peak_kpa",
        "highest pressure of all their pulls",
        built.peakKpaAbs(),
        Units.KPA_ABS,
        Double.NaN,
        car.limits().cutoffKpaAbs());
    SettingsTables.add(result, car);
    String rows = car.demand().id();
    result.add(
        SettingsTables.heat(
            "predicted", "Predicted boost", rows, built.predictedKpaAbs(), Units.KPA_ABS, 1.0));
    result.caution("The model is the virtual car's with your spring and valve. Start on the spring.");
    result.caution("One change at a time from here: three pulls, then 'boostwright correct'.");
    result.headline(
        String.format(
            Locale.ROOT,
            "Aims %s below the target; expect that within %s.",
            units.text(built.marginKpa(), Units.KPA),
            units.text(uncertainty, Units.KPA)));
    grid =
        grid("base duty, %", built.duty(), 100.0, "%6.1f", rows)
            + "\n"
            + shown(units, car, built, rows);
  }

  private static String shown(
      DisplayUnits units, Settings car, FirstTable.Built built, String rows) {
    Table2d predicted = built.predictedKpaAbs();
    double[] cells = predicted.values();
    for (int i = 0; i < cells.length; i++) {
      cells[i] = units.value(cells[i], Units.KPA_ABS);
    }
    String label = "predicted boost once settled, " + units.label(Units.KPA_ABS);
    StringBuilder text =
        new StringBuilder(
            grid(
                label,
                new Table2d(predicted.rows(), predicted.columns(), cells),
                1.0,
                car.units().pressure().label().equals("bar") ? "%6.2f" : "%6.1f",
                rows));
    text.append(String.format(Locale.ROOT, "  %12s", "+-"));
    for (double two : built.uncertaintyKpa()) {
      text.append(String.format(Locale.ROOT, "%6.1f", units.value(two, Units.KPA)));
    }
    return text.append('\n').toString();
  }

  private static String grid(
      String title, Table2d table, double factor, String format, String rows) {
    StringBuilder text = new StringBuilder("  ").append(title).append('\n');
    text.append(String.format(Locale.ROOT, "  %12s", rows + " % | rpm"));
    for (double rpm : table.columns().points()) {
      text.append(String.format(Locale.ROOT, "%6.0f", rpm));
    }
    text.append('\n');
    for (int r = 0; r < table.rows().size(); r++) {
      text.append(String.format(Locale.ROOT, "  %12.0f", table.rows().point(r)));
      for (int c = 0; c < table.columns().size(); c++) {
        text.append(String.format(Locale.ROOT, format, factor * table.cell(r, c)));
      }
      text.append('\n');
    }
    return text.toString();
  }

  @Override
  void print(Result result) {
    super.print(result);
    if (!output.json && !output.quiet && !grid.isEmpty()) {
      terminal.out().println();
      terminal.out().print(grid);
      terminal.out().flush();
    }
  }
}
