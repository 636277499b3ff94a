package org.boostwright.rig.cli;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import org.boostwright.rig.kernel.KernelBench;
import org.boostwright.rig.kernel.KernelBenchReport;
import org.boostwright.rig.link.CaseOutcome;
import org.boostwright.rig.report.JunitXml;
import org.boostwright.rig.result.Result;
import org.boostwright.rig.result.ResultBuilder;
import org.boostwright.rig.result.Severity;
import org.boostwright.rig.result.Units;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** The packaged program on a real arm64 kernel under emulation, with the virtual car outside. */
@Command(
    name = "kernel-bench",
    header = "Run the Pi's program on a real arm64 Linux kernel under emulation.",
    description = {
      "Boot Debian's arm64 kernel under emulation with a converter, a PWM chip and GPIO lines of the",
      "bench's own, run the program as packaged for the Pi in it, put the virtual car at the other",
      "end, inject faults and judge. For developers: needs QEMU and a cross compiler; what is",
      "missing is named. The first run downloads Debian packages and builds the guest."
    },
    footer = {
      "",
      "Examples:",
      "  boostwright kernel-bench",
      "  boostwright kernel-bench --guests valve_bench --out runs/kernel",
      "",
      "Everything it builds and writes besides the run folder is in hil-rig/target/kernel-bench."
    })
final class KernelBenchCommand extends Subcommand {
  @Mixin OutOption out = new OutOption();

  @Option(
      names = "--guests",
      paramLabel = "LIST",
      split = ",",
      defaultValue = "drive,install",
      description =
          "Which guests run: drive (the virtual car, faults, watchdog), install (everything installed "
              + "wrongly), valve_bench (the valve's proof; minutes more). Default: ${DEFAULT-VALUE}.")
  Set<KernelBench.Guest> guests = EnumSet.of(KernelBench.Guest.DRIVE, KernelBench.Guest.INSTALL);

  @Option(
      names = "--seed",
      paramLabel = "N",
      defaultValue = "1",
      description = "Seed of the car's noise. Default: ${DEFAULT-VALUE}.")
  long seed = 1L;

  KernelBenchCommand(Terminal terminal) {
    super(terminal);
  }

  @Override
  Outcome work(Progress progress) throws Exception {
    Path launcher = Path.of(System.getProperty("boostwright.launcher", "boostwright"));
    Path root = launcher.toAbsolutePath().getParent();
    Path scripts = root.resolve("hil-rig").resolve("kernel-bench");
    if (!Files.isDirectory(scripts)) {
      throw new WrongUseException(
          "the kernel bench is not beside " + launcher, "run it from a checkout of the sources");
    }
    progress.begin("building the guest, where it is not built yet", 1);
    Path image = build(scripts);
    Path folder = root.resolve("hil-rig/target/kernel-bench/run");
    long begun = System.nanoTime();
    KernelBenchReport report =
        KernelBench.run(
            new KernelBench.Plan(image, scripts, root.resolve("pi-runtime"), folder, guests, seed),
            words -> progress.begin(words, 1));
    Result result = result(report, image, (System.nanoTime() - begun) * 1e-9);
    List<Outcome.Extra> extras = new ArrayList<>();
    extras.add(new Outcome.Extra("junit", "junit.xml", to -> JunitXml.write(to, result)));
    for (KernelBench.Guest guest : guests) {
      String name = guest.name().toLowerCase(Locale.ROOT);
      Path said = folder.resolve(name).resolve("shell.txt");
      extras.add(
          new Outcome.Extra(
              name + "_guest",
              name + "-guest.txt",
              to -> Files.copy(said, to, StandardCopyOption.REPLACE_EXISTING)));
    }
    return Outcome.kept(result, out.folder, extras.toArray(Outcome.Extra[]::new));
  }

  private static Path build(Path scripts) throws Exception {
    Process build =
        new ProcessBuilder(scripts.resolve("build.sh").toString())
            .redirectError(ProcessBuilder.Redirect.INHERIT)
            .start();
    String said = new String(build.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
    int code = build.waitFor();
    if (code == 2) {
      throw new WrongUseException("the guest cannot be built, see above", "");
    }
    if (code != 0) {
      throw new IOException("building the guest ended with " + code + ", see above");
    }
    return Path.of(said.strip());
  }

  private Result result(KernelBenchReport report, Path image, double seconds) {
    ResultBuilder builder = new ResultBuilder("kernel-bench").seed(seed);
    builder.provenance("image", String.valueOf(image.getFileName()));
    long failed = 0;
    for (CaseOutcome outcome : report.outcomes()) {
      failed += outcome.verdict() == CaseOutcome.Verdict.PASSED ? 0 : 1;
      CaseFindings.add(builder, "kernel", outcome);
    }
    CaseFindings.timeLine(builder, report.outcomes());
    builder.measure("kernel.wall_s", "time of this run", seconds, Units.SECONDS);
    if (guests.contains(KernelBench.Guest.DRIVE)) {
      logs(builder, report);
    }
    builder.headline(
        failed == 0
            ? "All " + report.outcomes().size() + " cases as they must be."
            : failed + " of " + report.outcomes().size() + " cases not as they must be.");
    return builder.build();
  }

  private static void logs(ResultBuilder builder, KernelBenchReport report) {
    builder.measure(
        "kernel.pwm_applies",
        "states the kernel was told for the PWM",
        report.pwmApplies(),
        Units.COUNT,
        1.0,
        Double.NaN);
    builder.measure(
        "kernel.pwm_updates",
        "of these, changes of a running channel",
        report.pwmUpdates(),
        Units.COUNT,
        1.0,
        Double.NaN);
    builder.measure(
        "kernel.pwm_wrongs",
        "of these, cut, stretched, inverted or not off",
        report.pwmWrongs().size(),
        Units.COUNT,
        Double.NaN,
        0.0);
    report
        .pwmWrongs()
        .forEach(words -> builder.find("kernel_pwm_wrong", Severity.PROBLEM, words, ""));
    long rows = 0;
    long differing = 0;
    for (KernelBenchReport.Recording recording : report.recordings()) {
      rows += recording.rows();
      differing += recording.differing() < 0 ? recording.rows() + 1 : recording.differing();
    }
    builder.measure(
        "kernel.recorded_rows", "rows recorded in the guest", rows, Units.COUNT, 1.0, Double.NaN);
    builder.measure(
        "kernel.differing_rows",
        "of these, other bits when replayed on this machine",
        differing,
        Units.COUNT,
        Double.NaN,
        0.0);
  }
}
