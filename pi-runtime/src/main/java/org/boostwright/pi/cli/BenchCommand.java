package org.boostwright.pi.cli;

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
import java.util.Set;
import java.util.concurrent.Callable;
import org.boostwright.core.bench.BenchFigures;
import org.boostwright.core.bench.BenchPlan;
import org.boostwright.core.bench.BenchRecord;
import org.boostwright.core.bench.BenchStep;
import org.boostwright.core.bench.BenchVerdict;
import org.boostwright.core.bench.VerdictCode.Grade;
import org.boostwright.core.bench.Verdicts;
import org.boostwright.core.bench.model.Coil;
import org.boostwright.core.bench.proof.ProofMaker;
import org.boostwright.core.bench.proof.ProofSource;
import org.boostwright.core.settings.Settings;
import org.boostwright.core.settings.file.ProofFile;
import org.boostwright.core.settings.file.SettingsDigest;
import org.boostwright.core.state.Permission;
import org.boostwright.pi.bench.BenchGuest;
import org.boostwright.pi.loop.DriveSession;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Spec;

/** The valve bench through the controller itself. */
@Command(
    name = "bench",
    mixinStandardHelpOptions = true,
    description = {
      "Prove the boost valve with the controller that will drive it: its own driver, wiring and",
      "pressure sensor, the sensor teed into the line between valve and actuator. Engine off, key on.",
      "",
      "CAUTION: compressed air. Regulate to 80 to 100 kPa (12 to 14 psi) gauge, relief valve at",
      "150 kPa (22 psi), eye protection, hoses secured. The coil gets hot. See docs/bench.md.",
      "Ctrl-C at any moment: coil off."
    },
    footer = {
      "",
      "Examples:",
      "  boostwright bench --valve pi --settings car.toml",
      "  boostwright bench --valve link:/dev/ttyUSB0       with 'rig --bench' at the other end",
      "",
      "On the Pi the proof is written beside the settings, as 'drive' looks for it there. Over a",
      "link there is a virtual valve at the far end: its proof lets no car be driven.",
      "Steps: ambient, click, rest, polarity, leak, response, edges, sweep, frequency, actuator."
    })
final class BenchCommand implements Callable<Integer> {
  @Mixin RunOptions options = new RunOptions();

  @Spec picocli.CommandLine.Model.CommandSpec spec;

  @Option(
      names = "--valve",
      paramLabel = "pi|link:PORT",
      required = true,
      converter = IoChoice.Converter.class,
      description = "Where the valve is.")
  IoChoice where = IoChoice.PI;

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
  double rippleLimitKpa = BenchPlan.DEFAULT_RIPPLE_LIMIT_KPA;

  @Option(names = "--quiet", description = "Only questions, and the verdict in one line.")
  boolean quiet;

  @Override
  public Integer call() throws IOException {
    BenchPlan wanted = plan();
    Settings settings = options.load("bench");
    if (settings == null) {
      return PiExit.WRONG_USE;
    }
    BenchPlan plan =
        wanted
            .withFrequencyHz(settings.valve().frequencyHz())
            .withCoil(new Coil(settings.valve().coilOhms(), 0.1, 14.0))
            .withSettingsWindow(
                settings.valve().windowLowDuty(), settings.valve().windowHighDuty());
    BenchGuest guest = new BenchGuest(plan, settings);
    // No proof is needed and none helps: the bench never drives a car.
    ControllerRun run =
        new ControllerRun(
            settings,
            Permission.NONE,
            where,
            options.baud,
            options.data,
            true,
            Optional.empty(),
            guest);
    DriveSession.End end = run(run, guest, settings);
    BenchRecord record = guest.record();
    List<BenchVerdict> verdicts = Verdicts.of(record, plan);
    ResultText result = result(run, end, record, plan, verdicts);
    if (!guest.finished()) {
      result.problem("ended_early", "The session was ended before its last step.", "start again");
    } else if (record.aborted == null && end == DriveSession.End.ASKED) {
      // A session that broke off proves nothing and takes no earlier proof away.
      Path file =
          where.isLink()
              ? options.data.resolve("bench-proof.txt")
              : ProofFile.beside(options.settingsFile);
      ProofFile.write(
          file,
          ProofMaker.of(
              where.isLink() ? ProofSource.VIRTUAL : ProofSource.PI,
              SettingsDigest.ofHardware(settings),
              Instant.now().toString(),
              PiMain.Version.get(),
              record,
              plan,
              verdicts));
      result.file("proof", file.toString());
    }
    run.report(result, options.json, quiet);
    if (end == DriveSession.End.FAILED) {
      return PiExit.INTERNAL;
    }
    return result.verdict().equals("passed") ? PiExit.PASSED : PiExit.FAILED;
  }

  private BenchPlan plan() {
    BenchPlan standard = BenchPlan.standard();
    if (!(rippleLimitKpa >= 1.0 && rippleLimitKpa <= 200.0)) {
      throw new ParameterException(
          spec.commandLine(), "--ripple-limit-kpa " + rippleLimitKpa + " is outside 1 to 200");
    }
    Set<BenchStep> chosen = EnumSet.noneOf(BenchStep.class);
    for (String name : steps) {
      try {
        chosen.add(BenchStep.valueOf(name.strip().toUpperCase(Locale.ROOT)));
      } catch (IllegalArgumentException e) {
        throw new ParameterException(spec.commandLine(), "--steps: '" + name + "' is no step");
      }
    }
    return standard
        .withSteps(chosen.isEmpty() ? standard.steps() : chosen)
        .withRippleLimitKpa(rippleLimitKpa);
  }

  private DriveSession.End run(ControllerRun run, BenchGuest guest, Settings settings) {
    BufferedReader in =
        new BufferedReader(new InputStreamReader(System.in, StandardCharsets.UTF_8));
    BenchDialogue dialogue =
        new BenchDialogue(guest, in, System.err, settings.units().pressure(), quiet);
    Thread talker =
        new Thread(
            () -> {
              dialogue.run();
              run.session().ask();
            },
            "dialogue");
    talker.setDaemon(true);
    run.start();
    talker.start();
    DriveSession.End end = run.session().await(0L, loop -> {});
    run.session().close();
    return end;
  }

  private ResultText result(
      ControllerRun run,
      DriveSession.End end,
      BenchRecord record,
      BenchPlan plan,
      List<BenchVerdict> verdicts) {
    ResultText result = new ResultText("bench", run.digest());
    boolean sound = Verdicts.sound(verdicts);
    result.headline(
        end == DriveSession.End.ASKED
            ? sound ? "nothing stands against this valve; the coil is off." : words(verdicts)
            : RunReport.words(end));
    for (BenchFigures.Figure f : BenchFigures.of(record, plan)) {
      result.measure(f.id(), f.text(), f.value(), f.unit());
    }
    for (BenchVerdict verdict : verdicts) {
      Grade grade = verdict.code().grade();
      String text = (grade == Grade.DANGEROUS ? "DANGEROUS. " : "") + verdict.text();
      if (grade == Grade.ADVICE) {
        result.caution(verdict.code().id(), text, verdict.code().next());
      } else {
        result.problem(verdict.code().id(), text, verdict.code().next());
      }
    }
    RunReport.add(result, run, where);
    return result;
  }

  private static String words(List<BenchVerdict> verdicts) {
    return verdicts.get(0).code().id().replace('_', ' ') + "; the coil is off.";
  }
}
