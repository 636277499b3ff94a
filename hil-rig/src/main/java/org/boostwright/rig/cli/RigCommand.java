package org.boostwright.rig.cli;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.boostwright.core.link.Line;
import org.boostwright.core.settings.Settings;
import org.boostwright.core.settings.file.SettingsDigest;
import org.boostwright.rig.bench.BenchSetup;
import org.boostwright.rig.electrical.ElectricalWires;
import org.boostwright.rig.link.FaultCases;
import org.boostwright.rig.link.RigBench;
import org.boostwright.rig.link.RigPlan;
import org.boostwright.rig.link.RigReport;
import org.boostwright.rig.link.RigSession;
import org.boostwright.rig.replay.RecordRows;
import org.boostwright.rig.replay.csv.LogRefusedException;
import org.boostwright.rig.report.JunitXml;
import org.boostwright.rig.result.Result;
import org.boostwright.rig.result.ResultBuilder;
import picocli.CommandLine.ArgGroup;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** Stands in for the car in front of a real controller, in real time. */
@Command(
    name = "rig",
    header = "Stand in for the car in front of a running controller, in real time.",
    description = {
      "Stand in for the car over a serial port, in real time: drive the virtual car or replay a",
      "recorded trace, inject faults, measure the controller's reactions at the wire and judge them."
    },
    footer = {
      "",
      "Examples:",
      "  boostwright rig --with-drive                      both programs on this machine (socat)",
      "  boostwright rig --with-drive --for 600 --faults none",
      "  boostwright rig --port /dev/ttyUSB0 --faults all  a controller at a serial port",
      "  boostwright rig --port /dev/ttyUSB0 --trace drive-000012.csv",
      "  boostwright rig --port /dev/ttyUSB0 --bench       the valve bench instead of a car",
      "",
      "The controller at the port is started with: boostwright drive --io link:PORT",
      "CAUTION: for benches. Nothing that moves air on a running engine may hang on this link."
    })
final class RigCommand extends Subcommand {
  @Mixin SettingsOption settings = new SettingsOption();
  @Mixin SetOption set = new SetOption();
  @Mixin OutOption out = new OutOption();

  @ArgGroup(multiplicity = "1")
  Where where = new Where();

  /** One of two places. */
  static final class Where {
    @Option(names = "--port", paramLabel = "P", description = "Serial port of the controller.")
    Optional<String> port = Optional.empty();

    @Option(
        names = "--electrical",
        paramLabel = "DAC,CHIP,PWM,HEARTBEAT",
        description =
            "With --bench: a controller on real wires. Folder of an MCP4725 that gives the pressure "
                + "sensor's voltage, GPIO chip, and its lines on the PWM and heartbeat wires (3.3 V).")
    Optional<String> electrical = Optional.empty();

    @Option(
        names = "--with-drive",
        description = "Start the controller's program here, at the other end of a cable by socat.")
    boolean withDrive;
  }

  @Option(
      names = "--bench",
      description =
          "Instead of a car, the valve on the bench on regulated air, for a controller that runs "
              + "bench --valve link:PORT. Type here what it asks for there, by the word in brackets.")
  boolean bench;

  @Option(
      names = "--baud",
      paramLabel = "N",
      defaultValue = "" + Line.DEFAULT_BAUD,
      description = "Speed of the serial port, the same at both ends. Default: ${DEFAULT-VALUE}.")
  int baud = Line.DEFAULT_BAUD;

  @Option(
      names = "--for",
      paramLabel = "S",
      defaultValue = "20",
      description = "Ordinary driving before the faults, s. Default: ${DEFAULT-VALUE}.")
  double seconds = 20.0;

  @Option(
      names = "--faults",
      paramLabel = "LIST",
      split = ",",
      defaultValue = "all",
      description =
          "Faults to inject one after the other: all, short, none, or ids separated by commas; "
              + "a wrong one lists what there is. Default: ${DEFAULT-VALUE}.")
  List<String> faults = new ArrayList<>();

  @Option(
      names = "--trace",
      paramLabel = "FILE",
      description = "Replay the inputs of a recorded run instead of driving the virtual car.")
  Optional<Path> trace = Optional.empty();

  @Option(
      names = "--seed",
      paramLabel = "N",
      defaultValue = "1",
      description = "Seed of noise and faults. Default: ${DEFAULT-VALUE}.")
  long seed = 1L;

  @Option(
      names = "--drive-command",
      paramLabel = "WORDS",
      description = "What starts the controller's program. Default: this program itself.")
  Optional<String> driveCommand = Optional.empty();

  RigCommand(Terminal terminal) {
    super(terminal);
  }

  @Override
  Outcome work(Progress progress) throws Exception {
    Range.check("--for", seconds, 0, 24 * 3600);
    Range.check("--baud", baud, 9600, 4_000_000);
    set.settingsOnly();
    SettingsOption.Loaded loaded = SettingsOption.parse(set.change(settings.find()));
    List<String> cases = cases(loaded.settings());
    if (bench) {
      return bench(progress, loaded);
    }
    if (where.electrical.isPresent()) {
      throw new WrongUseException(
          "--electrical needs --bench", "there is no car on real wires yet");
    }
    List<double[]> rows = List.of();
    if (trace.isPresent()) {
      try {
        rows = RecordRows.read(trace.get());
      } catch (LogRefusedException e) {
        throw new WrongUseException(String.valueOf(e.getMessage()), "");
      }
      cases = List.of();
    }
    Path folder = Files.createTempDirectory("boostwright-rig");
    try {
      Path file = folder.resolve("car.toml");
      Files.write(file, loaded.source().bytes());
      String digest = SettingsDigest.of(loaded.settings());
      RigPlan plan =
          new RigPlan(
              where.port,
              baud,
              program(),
              file,
              loaded.settings(),
              digest,
              seconds,
              cases,
              rows,
              seed,
              folder);
      RigReport report = RigSession.run(plan, words -> progress.begin(words, 1));
      ResultBuilder builder = new ResultBuilder("rig").settingsDigest(digest).seed(seed);
      builder.units(loaded.settings().units());
      builder.provenance("settings", loaded.source().where());
      builder.provenance("controller", where.port.orElse("started here"));
      set.record(builder);
      RigResult.add(builder, plan, report);
      Result result = builder.build();
      return Outcome.kept(result, out.folder, extras(folder, result));
    } finally {
      delete(folder);
    }
  }

  private Outcome bench(Progress progress, SettingsOption.Loaded loaded)
      throws IOException, WrongUseException {
    if (where.withDrive || trace.isPresent()) {
      throw new WrongUseException(
          "--bench needs --port or --electrical, and no --trace",
          "start the controller with: bench --valve link:PORT, or on its Pi: bench --valve pi");
    }
    String digest = SettingsDigest.of(loaded.settings());
    RigBench rig = new RigBench(BenchSetup.standard(), seed);
    Thread reader = new Thread(() -> read(rig), "typed");
    reader.setDaemon(true);
    reader.start();
    progress.begin("the valve bench, air off; type the words in brackets", 1);
    ResultBuilder builder = new ResultBuilder("rig").settingsDigest(digest).seed(seed);
    RigResult.addBench(builder, onWires(rig, digest));
    return Outcome.printed(builder.build());
  }

  private RigBench.Report onWires(RigBench rig, String digest)
      throws IOException, WrongUseException {
    if (where.electrical.isPresent()) {
      try (ElectricalWires wires = ElectricalWires.open(places(where.electrical.get()))) {
        return rig.run(wires, this::say);
      }
    }
    long shortDigest = Long.parseUnsignedLong(digest.substring(0, 16), 16);
    return rig.run(where.port.orElseThrow(), baud, shortDigest, seed, this::say);
  }

  private void say(String words) {
    terminal.err().println(words);
    terminal.err().flush();
  }

  private static ElectricalWires.Places places(String text) throws WrongUseException {
    String[] words = text.split(",");
    try {
      if (words.length == 4) {
        return new ElectricalWires.Places(
            Path.of(words[0]), words[1], Integer.parseInt(words[2]), Integer.parseInt(words[3]));
      }
    } catch (NumberFormatException e) {
      // Said below.
    }
    throw new WrongUseException(
        "--electrical " + text + " is no folder, chip, PWM line and heartbeat line",
        "for example /sys/bus/iio/devices/iio:device0,gpiochip0,18,17");
  }

  private static void read(RigBench rig) {
    try (BufferedReader in =
        new BufferedReader(new InputStreamReader(System.in, StandardCharsets.UTF_8))) {
      for (String line = in.readLine(); line != null; line = in.readLine()) {
        rig.type(line);
      }
    } catch (IOException e) {
      // As if nobody typed any more.
    }
    rig.end();
  }

  private static Outcome.Extra[] extras(Path folder, Result result) throws IOException {
    List<Outcome.Extra> extras = new ArrayList<>();
    extras.add(new Outcome.Extra("junit", "junit.xml", to -> JunitXml.write(to, result)));
    Path said = folder.resolve("drive.txt");
    if (Files.exists(said)) {
      byte[] bytes = Files.readAllBytes(said);
      extras.add(new Outcome.Extra("controller", "drive.txt", to -> Files.write(to, bytes)));
    }
    return extras.toArray(Outcome.Extra[]::new);
  }

  private List<String> cases(Settings car) throws WrongUseException {
    boolean canKill = where.withDrive;
    List<String> all = FaultCases.ids(car, canKill);
    if (faults.equals(List.of("none"))) {
      return List.of();
    }
    if (faults.equals(List.of("all"))) {
      return all;
    }
    if (faults.equals(List.of("short"))) {
      return FaultCases.shortForm(all);
    }
    for (String id : faults) {
      if (!all.contains(id)) {
        throw new WrongUseException(
            "--faults: there is no fault " + id + (canKill ? "" : " without --with-drive"),
            "all, short, none, or of: " + String.join(", ", all));
      }
    }
    return faults;
  }

  private List<String> program() {
    if (driveCommand.isPresent()) {
      return Arrays.asList(driveCommand.get().trim().split("\\s+"));
    }
    return List.of(System.getProperty("boostwright.launcher", "./boostwright"));
  }

  private static void delete(Path folder) throws IOException {
    try (Stream<Path> files = Files.walk(folder)) {
      for (Path file : files.sorted(Comparator.reverseOrder()).toList()) {
        Files.deleteIfExists(file);
      }
    }
  }
}
