package org.boostwright.rig.cli;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.time.Instant;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Random;
import java.util.Set;
import org.boostwright.core.bench.BenchPlan;
import org.boostwright.core.bench.BenchRecord;
import org.boostwright.core.bench.BenchStep;
import org.boostwright.core.bench.BenchVerdict;
import org.boostwright.core.bench.VerdictCode;
import org.boostwright.core.bench.Verdicts;
import org.boostwright.core.bench.model.Coil;
import org.boostwright.core.bench.model.ValveFitResult;
import org.boostwright.core.bench.proof.ProofSource;
import org.boostwright.core.settings.PressureUnit;
import org.boostwright.core.settings.Settings;
import org.boostwright.core.settings.UnitSettings;
import org.boostwright.core.settings.file.ProofFile;
import org.boostwright.core.settings.file.SettingsDigest;
import org.boostwright.rig.bench.BenchMistake;
import org.boostwright.rig.bench.BenchPlots;
import org.boostwright.rig.bench.BenchProofs;
import org.boostwright.rig.bench.BenchResult;
import org.boostwright.rig.bench.BenchSetup;
import org.boostwright.rig.bench.ReadingsBench;
import org.boostwright.rig.bench.ReadingsFile;
import org.boostwright.rig.bench.SweepChart;
import org.boostwright.rig.bench.VirtualGauge;
import org.boostwright.rig.bench.VirtualTrial;
import org.boostwright.rig.plant.PlantParams;
import org.boostwright.rig.result.Plot;
import org.boostwright.rig.result.Result;
import org.boostwright.rig.result.ResultBuilder;
import org.boostwright.rig.result.Verdict;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** The valve bench: polarity, frequency and the usable duty window before the engine ever runs. */
@Command(
    name = "bench",
    header = "Prove the boost valve on the bench before the engine ever runs.",
    description = {
      "Prove the boost valve before the engine ever runs: does it click, does the actuator see",
      "pressure at rest, does more duty mean less of it, which PWM frequency suits, where does the",
      "usable duty window begin and end.",
      "",
      "CAUTION: compressed air. Regulate to 80 to 100 kPa (12 to 14 psi) gauge, relief valve at",
      "150 kPa (22 psi), eye protection, hoses secured. The coil gets hot. See docs/bench.md."
    },
    footer = {
      "",
      "Examples:",
      "  boostwright bench                               on the virtual valve",
      "  boostwright bench --set virtual.mistake=driver_inverted",
      "  boostwright bench --manual                      you set the valve and type the gauge",
      "  boostwright bench --readings gauge.csv          columns frequency_hz, duty_pct, pressure,",
      "                                                  unit; rows at 0 %% duty give the supply",
      "",
      "Keys that begin with virtual. change the virtual bench; a wrong one lists what there is.",
      "Steps: ambient, click, rest, polarity, leak, response, edges, sweep, frequency, actuator."
    })
final class BenchCommand extends Subcommand {
  private static final String VIRTUAL = "virtual";

  @Mixin SettingsOption settings = new SettingsOption();
  @Mixin SetOption set = new SetOption();
  @Mixin OutOption out = new OutOption();

  @Option(
      names = "--valve",
      paramLabel = "WHERE",
      description = "virtual, link:PORT or pi. Default: virtual.")
  Optional<String> valve = Optional.empty();

  @Option(
      names = "--manual",
      description = "Guided dialogue with gauge readings typed in, at most twelve.")
  boolean manual;

  @Option(
      names = "--readings",
      paramLabel = "FILE",
      description = "Gauge readings from a CSV file, as if typed in. Needs no settings file.")
  Optional<Path> readings = Optional.empty();

  @Option(
      names = "--steps",
      paramLabel = "NAMES",
      split = ",",
      description = "Only these steps, separated by commas; ambient and rest are needed by most.")
  List<String> steps = new ArrayList<>();

  @Option(
      names = "--ripple-limit-kpa",
      paramLabel = "KPA",
      defaultValue = "30",
      description =
          "Largest peak-to-peak ripple the recommended frequency may have, kPa."
              + " Default: ${DEFAULT-VALUE}.")
  double rippleLimitKpa;

  @Option(
      names = "--seed",
      paramLabel = "N",
      defaultValue = "1",
      description = "Seed of the virtual sensor and person. Default: ${DEFAULT-VALUE}.")
  long seed;

  private String chart = "";

  BenchCommand(Terminal terminal) {
    super(terminal);
  }

  @Override
  Outcome work(Progress progress) throws IOException, WrongUseException {
    Range.check("--ripple-limit-kpa", rippleLimitKpa, 1.0, 200.0);
    String where = valve.orElse(VIRTUAL);
    if (where.equals("pi") || where.startsWith("link:")) {
      throw new WrongUseException(
          "--valve " + where + " needs the Pi's controller program, which is not installed here",
          "start ./boostwright on the Pi, or use --valve virtual, --manual or --readings FILE.csv");
    }
    if (!where.equals(VIRTUAL)) {
      throw new WrongUseException(
          "--valve " + where + " is unknown", "use virtual, link:PORT or pi");
    }
    if (readings.isPresent()) {
      return fromFile(readings.get());
    }
    VirtualBenchKeys keys = VirtualBenchKeys.of(set.sets);
    SetOption others = new SetOption();
    others.sets = keys.rest();
    BenchSetup setup = keys.setup(others.change(PlantParams.PROJECT_CAR));
    SettingsOption.Loaded loaded = SettingsOption.parse(others.change(settings.find()));
    return manual ? dialogue(loaded, setup) : virtual(progress, loaded, setup, keys.mistake());
  }

  private Set<BenchStep> chosen() throws WrongUseException {
    if (steps.isEmpty()) {
      return BenchPlan.standard().steps();
    }
    Set<BenchStep> chosen = EnumSet.noneOf(BenchStep.class);
    for (String name : steps) {
      try {
        chosen.add(BenchStep.valueOf(name.strip().toUpperCase(Locale.ROOT)));
      } catch (IllegalArgumentException e) {
        throw new WrongUseException(
            "--steps: '" + name + "' is no step", "see 'boostwright bench --help'");
      }
    }
    return chosen;
  }

  private Outcome virtual(
      Progress progress,
      SettingsOption.Loaded loaded,
      BenchSetup setup,
      Optional<BenchMistake> mistake)
      throws WrongUseException {
    Settings car = loaded.settings();
    BenchPlan plan =
        BenchPlan.standard()
            .withSteps(chosen())
            .withFrequencyHz(car.valve().frequencyHz())
            .withRippleLimitKpa(rippleLimitKpa)
            .withCoil(new Coil(car.valve().coilOhms(), 0.1, 14.0))
            .withSettingsWindow(car.valve().windowLowDuty(), car.valve().windowHighDuty());
    VirtualTrial trial =
        VirtualTrial.run(
            setup, plan, mistake, seed, step -> progress.begin(step.id() + ": " + step.words(), 1));
    String hardware = SettingsDigest.ofHardware(car);
    ResultBuilder result =
        start(trial.record(), trial.plan(), trial.verdicts(), car.units())
            .seed(seed)
            .settingsDigest(SettingsDigest.of(car))
            .provenance("settings", loaded.source().where())
            .provenance("fingerprint of the hardware", hardware)
            .provenance("valve", "virtual")
            .caution("A proof made on the virtual valve never lets the car be driven.");
    set.record(result);
    chart = SweepChart.draw(trial.record(), trial.plan(), car.units().pressure());
    var proof =
        BenchProofs.of(
            ProofSource.VIRTUAL,
            hardware,
            Instant.now().toString(),
            trial.record(),
            trial.plan(),
            trial.verdicts());
    return Outcome.kept(
        result.build(),
        out.folder,
        new Outcome.Extra("proof", "bench-proof.txt", file -> ProofFile.write(file, proof)));
  }

  private Outcome dialogue(SettingsOption.Loaded loaded, BenchSetup setup)
      throws IOException, WrongUseException {
    UnitSettings units = loaded.settings().units();
    BufferedReader in =
        new BufferedReader(new InputStreamReader(System.in, StandardCharsets.UTF_8));
    Optional<VirtualGauge> gauge =
        valve.isPresent()
            ? Optional.of(new VirtualGauge(setup, new Random(seed).nextLong()))
            : Optional.empty();
    PressureUnit unit = units.pressure();
    BenchRecord record = new ManualDialogue(terminal, in, unit, gauge).run().record();
    BenchPlan plan =
        BenchPlan.standard()
            .withFrequencyHz(loaded.settings().valve().frequencyHz())
            .withRippleLimitKpa(rippleLimitKpa);
    ResultBuilder result =
        start(record, plan, Verdicts.of(record, plan), units)
            .provenance("settings", loaded.source().where())
            .provenance("valve", gauge.isPresent() ? "virtual, gauge typed" : "gauge typed")
            .caution("Typed readings prove the valve, not the car's driver and wiring.");
    return Outcome.kept(result.build(), out.folder);
  }

  private Outcome fromFile(Path file) throws IOException, WrongUseException {
    List<ReadingsFile.Row> rows;
    try {
      rows = ReadingsFile.read(file);
    } catch (ReadingsFile.UnreadableException e) {
      throw new WrongUseException(
          String.valueOf(e.getMessage()), "correct the file; see docs/bench.md");
    }
    if (Double.isNaN(ReadingsBench.supplyKpaGauge(rows))) {
      throw new WrongUseException(
          file + " has no row at 0 % duty, which gives the supply", "add a reading with coil off");
    }
    BenchRecord record = ReadingsBench.record(rows);
    BenchPlan plan =
        BenchPlan.standard()
            .withFrequencyHz(usable(ReadingsBench.mainHz(rows)))
            .withRippleLimitKpa(rippleLimitKpa);
    ResultBuilder result =
        start(record, plan, Verdicts.of(record, plan), UnitSettings.KPA_ABSOLUTE)
            .provenance("readings", file + ", " + rows.size() + " rows")
            .caution("Typed readings prove the valve, not the car's driver and wiring.");
    return Outcome.printed(result.build());
  }

  private static double usable(double hz) {
    return hz >= 10.0 && hz <= 100.0 ? hz : Double.NaN;
  }

  private static ResultBuilder start(
      BenchRecord record, BenchPlan plan, List<BenchVerdict> verdicts, UnitSettings units) {
    ResultBuilder result = new ResultBuilder("bench").units(units);
    BenchResult.add(result, record, plan, verdicts);
    for (Plot plot : BenchPlots.of(record, plan)) {
      result.add(plot);
    }
    return result.headline(
        result.verdict() == Verdict.PASSED ? found(record, plan) : stands(verdicts.get(0).code()));
  }

  private static String found(BenchRecord record, BenchPlan plan) {
    ValveFitResult fit = record.fit;
    double hz = plan.frequencyHz();
    return fit == null || Double.isNaN(hz)
        ? "nothing stands against this valve."
        : String.format(
            Locale.ROOT,
            "nothing stands against this valve; usable duty %.1f to %.1f %% at %.0f Hz.",
            100.0 * fit.windowLowDuty(hz).value(),
            100.0 * fit.windowHighDuty(hz).value(),
            hz);
  }

  private static String stands(VerdictCode code) {
    return code.id().replace('_', ' ')
        + (code.grade() == VerdictCode.Grade.DANGEROUS
            ? ". DANGEROUS: nothing may be driven like this."
            : ".");
  }

  @Override
  void print(Result result) {
    super.print(result);
    if (!output.json && !output.quiet && !chart.isEmpty()) {
      terminal.out().println();
      terminal.out().print(chart);
      terminal.out().flush();
    }
  }
}
