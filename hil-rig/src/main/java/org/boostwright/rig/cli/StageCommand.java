package org.boostwright.rig.cli;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.Collectors;
import org.boostwright.core.bench.BenchPlan;
import org.boostwright.core.bench.model.Coil;
import org.boostwright.core.bench.proof.DamagedProofException;
import org.boostwright.core.bench.proof.ProofMeasurement;
import org.boostwright.core.bench.proof.ProofSource;
import org.boostwright.core.ladder.Change;
import org.boostwright.core.ladder.Entry;
import org.boostwright.core.ladder.Facts;
import org.boostwright.core.ladder.Ladder;
import org.boostwright.core.ladder.LadderRefusedException;
import org.boostwright.core.ladder.Rung;
import org.boostwright.core.ladder.RungState;
import org.boostwright.core.ladder.Standing;
import org.boostwright.core.settings.Settings;
import org.boostwright.core.settings.file.LadderFile;
import org.boostwright.core.settings.file.ProofFile;
import org.boostwright.core.settings.file.SettingsDigest;
import org.boostwright.rig.bench.BenchProofs;
import org.boostwright.rig.bench.BenchSetup;
import org.boostwright.rig.bench.VirtualTrial;
import org.boostwright.rig.ladder.Checks;
import org.boostwright.rig.ladder.Practice;
import org.boostwright.rig.ladder.Recording;
import org.boostwright.rig.ladder.RungProof;
import org.boostwright.rig.plant.PlantParams;
import org.boostwright.rig.replay.csv.LogRefusedException;
import org.boostwright.rig.result.ProgramVersion;
import org.boostwright.rig.result.ResultBuilder;
import org.boostwright.rig.result.Severity;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** Where the car stands on the commissioning ladder. */
@Command(
    name = "stage",
    header = "Where the car stands, why, and the next thing to do.",
    description = {
      "Show the commissioning ladder beside a settings file: bench, cut proven, first start,"
          + " spring",
      "drive, first boost, full table, pressure feedback. 'drive' goes as far as the next rung",
      "needs and no further. Recordings sign a rung; changes that matter to it void it."
    },
    footer = {
      "",
      "Examples:",
      "  boostwright stage",
      "  boostwright stage --sign bench",
      "  boostwright stage --log cut-test.csv --log after.csv",
      "  boostwright stage --changed valve --reason \"new valve of the same type\"",
      "  boostwright stage --skip first_start --reason \"runs for years, A. Owner answers for it\"",
      "  boostwright stage --practice --drive",
      "",
      "Fails when what was to be signed does not pass. See docs/commissioning.md."
    })
final class StageCommand extends Subcommand {
  @Mixin SettingsOption settings = new SettingsOption();
  @Mixin OutOption out = new OutOption();

  @Option(
      names = "--log",
      paramLabel = "FILE",
      description =
          "Recording of 'drive' that proves the next rung, or the one of --sign. May be given more"
              + " than once.")
  List<Path> logs = new ArrayList<>();

  @Option(
      names = "--sign",
      paramLabel = "RUNG",
      description = "Rung to sign; bench is signed by its proof. Default with --log: the next.")
  Optional<String> sign = Optional.empty();

  @Option(
      names = "--skip",
      paramLabel = "RUNG",
      description = "Skip a rung; needs --reason, stays in the record. Never bench or cut proven.")
  Optional<String> skip = Optional.empty();

  @Option(
      names = "--changed",
      paramLabel = "WORK",
      description =
          "Report work that no settings file shows: valve, hose, actuator, pressure_sensor,"
              + " other_sensor, wiring, engine_cut, turbo, engine, fuel.")
  Optional<String> changed = Optional.empty();

  @Option(names = "--reason", paramLabel = "WORDS", description = "Why, or what was done.")
  String reason = "";

  @Option(
      names = "--practice",
      description = "The ladder of the virtual car; proves nothing about yours.")
  boolean practice;

  @Option(
      names = "--drive",
      description = "With --practice: drive what the next rung asks for, and sign it.")
  boolean drive;

  private Path file = Path.of("car.toml");

  StageCommand(Terminal terminal) {
    super(terminal);
  }

  @Override
  Outcome work(Progress progress) throws IOException, WrongUseException {
    int asked =
        (sign.isPresent() || !logs.isEmpty() ? 1 : 0)
            + (skip.isPresent() ? 1 : 0)
            + (changed.isPresent() ? 1 : 0)
            + (drive ? 1 : 0);
    if (asked > 1) {
      throw new WrongUseException("one thing at a time", "sign, skip, report work or drive");
    }
    if (drive && !practice) {
      throw new WrongUseException(
          "--drive is for the virtual car", "add --practice; your own car is driven with 'drive'");
    }
    file =
        settings
            .path()
            .orElseThrow(
                () ->
                    new WrongUseException(
                        "the ladder stands beside your settings file, and there is none",
                        "copy docs/project-car.toml to car.toml, or give --settings FILE"));
    Settings car = settings.load().settings();
    ResultBuilder result = new ResultBuilder("stage").units(car.units());
    result.settingsDigest(SettingsDigest.of(car)).provenance("settings", file.toString());
    Optional<Outcome.Run> kept = Optional.empty();
    String done = "";
    try {
      if (drive) {
        progress.begin("practice", 1);
        Driven driven = practise(car, result);
        done = driven.words();
        kept = Optional.of(new Outcome.Run(out.folder, driven.files()));
      } else if (sign.isPresent() || !logs.isEmpty()) {
        done = sign(car, result);
      } else if (skip.isPresent()) {
        Rung rung = rung(skip.get());
        save(ladder().skip(rung, facts(car), now(), ProgramVersion.get(), reason));
        done = "'" + rung.words() + "' is skipped. ";
      } else if (changed.isPresent()) {
        done = report(car);
      }
    } catch (LadderRefusedException e) {
      result.refuse("ladder", String.valueOf(e.getMessage()), "");
    } catch (DamagedProofException e) {
      result.refuse(
          "ladder_damaged",
          "The record of the ladder, "
              + LadderFile.beside(file, practice)
              + ", is damaged: "
              + e.getMessage()
              + ". Nothing counts as proven.",
          "move it away and begin at the bench, or bring back an undamaged copy");
    } catch (LogRefusedException e) {
      throw new WrongUseException(String.valueOf(e.getMessage()), "");
    }
    show(car, result, done);
    return new Outcome(result.build(), kept);
  }

  private Ladder ladder() throws IOException, DamagedProofException {
    return LadderFile.read(LadderFile.beside(file, practice));
  }

  private Facts facts(Settings car) {
    return LadderFile.facts(file, car, practice);
  }

  private void save(Ladder ladder) throws IOException {
    LadderFile.write(LadderFile.beside(file, practice), ladder);
  }

  private static String now() {
    return Instant.now().toString();
  }

  private static Rung rung(String id) throws WrongUseException {
    for (Rung rung : Rung.values()) {
      if (rung.id().equals(id.toLowerCase(Locale.ROOT).replace('-', '_'))) {
        return rung;
      }
    }
    throw new WrongUseException("'" + id + "' is no rung", "write one of " + ids(Rung.values()));
  }

  private static String ids(Enum<?>[] values) {
    return Arrays.stream(values)
        .map(v -> v.name().toLowerCase(Locale.ROOT))
        .collect(Collectors.joining(", "));
  }

  private Rung toSign(Settings car) throws WrongUseException, IOException, DamagedProofException {
    if (sign.isPresent()) {
      return rung(sign.get());
    }
    Rung next = ladder().standing(facts(car)).next();
    if (next == null) {
      throw new WrongUseException("every rung is proven", "say which with --sign");
    }
    return next;
  }

  private String sign(Settings car, ResultBuilder result)
      throws WrongUseException,
          IOException,
          DamagedProofException,
          LadderRefusedException,
          LogRefusedException {
    Rung rung = toSign(car);
    if (rung == Rung.BENCH) {
      if (!logs.isEmpty()) {
        throw new WrongUseException(
            "the bench is signed by its own proof, not by recordings", "stage --sign bench");
      }
      signBench(car, reason);
      return "'bench' is signed. ";
    }
    if (logs.isEmpty()) {
      throw new WrongUseException("'" + rung.words() + "' is signed by recordings", rung.next());
    }
    List<Recording> recordings = new ArrayList<>();
    for (Path log : logs) {
      recordings.add(Recording.read(log, car));
    }
    return judge(rung, recordings, car, result);
  }

  /** With the proof's numbers, so that a later bench can be compared with this one. */
  private void signBench(Settings car, String words)
      throws IOException, DamagedProofException, LadderRefusedException {
    Facts facts = facts(car);
    List<ProofMeasurement> measured =
        facts.benchProven()
            ? ProofFile.read(ProofFile.beside(file, practice)).measurements()
            : List.of();
    save(ladder().pass(Rung.BENCH, facts, now(), ProgramVersion.get(), words, measured));
  }

  private String judge(Rung rung, List<Recording> recordings, Settings car, ResultBuilder result)
      throws IOException, DamagedProofException, LadderRefusedException {
    Facts facts = facts(car);
    Ladder ladder = ladder();
    Checks checks = RungProof.of(rung, recordings, car, ladder.standing(facts), facts);
    checks.measurements().forEach(result::add);
    checks.findings().forEach(result::add);
    if (!checks.passed()) {
      return "'" + rung.words() + "' is not proven by this. ";
    }
    String names =
        recordings.stream()
            .map(r -> String.valueOf(Path.of(r.name()).getFileName()))
            .collect(Collectors.joining(" "));
    String words = names.replaceAll("[^ -~]", "?");
    save(ladder.pass(rung, facts, now(), ProgramVersion.get(), words, checks.proofs()));
    return "'" + rung.words() + "' is signed. ";
  }

  private String report(Settings car) throws WrongUseException, IOException, DamagedProofException {
    Change change;
    try {
      change = Change.valueOf(changed.orElse("").toUpperCase(Locale.ROOT).replace('-', '_'));
    } catch (IllegalArgumentException e) {
      throw new WrongUseException(
          "'" + changed.orElse("") + "' is no work that proofs depend on",
          "write one of " + ids(Change.values()));
    }
    if (!Entry.plain(reason)) {
      throw new WrongUseException(
          "--reason holds a sign that cannot be kept", "plain letters, digits and signs only");
    }
    save(ladder().report(change, facts(car), now(), ProgramVersion.get(), reason));
    Path proof = ProofFile.beside(file, practice);
    if (change.voids(Rung.BENCH) && Files.exists(proof)) {
      // So that it cannot come back by a lost ladder.
      Files.move(
          proof,
          proof.resolveSibling(proof.getFileName() + ".void"),
          StandardCopyOption.REPLACE_EXISTING);
    }
    return "Noted: " + change.words() + ". ";
  }

  private record Driven(String words, List<Outcome.Extra> files) {}

  private Driven practise(Settings car, ResultBuilder result)
      throws WrongUseException,
          IOException,
          DamagedProofException,
          LadderRefusedException,
          LogRefusedException {
    Facts facts = facts(car);
    Standing standing = ladder().standing(facts);
    Rung next = standing.next();
    if (next == null) {
      throw new WrongUseException("every rung is climbed", "report some work with --changed");
    }
    if (next == Rung.BENCH) {
      benchProof(car);
      signBench(car, "");
      return new Driven("'bench' is signed. ", List.of());
    }
    Practice practised =
        new Practice(car, standing.permission(car.valve()), PlantParams.PROJECT_CAR, 1L);
    List<Outcome.Extra> files = new ArrayList<>();
    List<Recording> recordings = new ArrayList<>();
    for (Practice.Run run : practised.drive(next)) {
      Path spare = Files.createTempFile("boostwright", ".csv");
      try {
        run.write(spare);
        Recording read = Recording.read(spare, car);
        recordings.add(
            new Recording(
                run.name(), read.rows(), read.permission(), read.virtual(), read.cutTestKpaAbs()));
      } finally {
        Files.deleteIfExists(spare);
      }
      files.add(new Outcome.Extra("log", run.name(), run::write));
    }
    return new Driven(judge(next, recordings, car, result), files);
  }

  /** The virtual bench, with the settings' own valve frequency. */
  private void benchProof(Settings car) throws IOException {
    BenchPlan plan =
        BenchPlan.standard()
            .withFrequencyHz(car.valve().frequencyHz())
            .withCoil(new Coil(car.valve().coilOhms(), 0.1, 14.0))
            .withSettingsWindow(car.valve().windowLowDuty(), car.valve().windowHighDuty());
    VirtualTrial trial =
        VirtualTrial.run(BenchSetup.standard(), plan, Optional.empty(), 1L, step -> {});
    ProofFile.write(
        ProofFile.beside(file, true),
        BenchProofs.of(
            ProofSource.VIRTUAL,
            SettingsDigest.ofHardware(car),
            now(),
            trial.record(),
            trial.plan(),
            trial.verdicts()));
  }

  private void show(Settings car, ResultBuilder result, String done) {
    Standing standing = LadderFile.standing(file, car, practice);
    Rung next = standing.next();
    for (RungState state : standing.rungs()) {
      boolean open = state.rung() == next;
      result.find(
          "rung_" + state.rung().id() + "_" + state.status().name().toLowerCase(Locale.ROOT),
          open ? Severity.CAUTION : Severity.NOTE,
          (open ? "NEXT: " : "") + state.rung().words() + ": " + state.words() + ".",
          open ? state.rung().next() : "");
    }
    result.headline(done + sentence(standing, next));
    if (next != null) {
      next.cautions().forEach(result::caution);
    }
    if (practice) {
      result.caution("This is the virtual car's ladder; it proves nothing about yours.");
    }
  }

  private static String sentence(Standing standing, @Nullable Rung next) {
    String words = standing.words();
    return (next == null
            ? "Every rung is proven"
            : words.substring(0, 1).toUpperCase(Locale.ROOT) + words.substring(1))
        + ".";
  }
}
