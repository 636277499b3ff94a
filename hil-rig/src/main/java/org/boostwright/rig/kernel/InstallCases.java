package org.boostwright.rig.kernel;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.function.Consumer;
import org.boostwright.rig.kernel.GuestProgram.User;
import org.boostwright.rig.link.CaseOutcome;
import org.boostwright.rig.link.VirtualCarSide;

/** Installing it: what is missing or wrong is said in words a person can act on, and refused. */
final class InstallCases extends BenchCases {
  private static final String DRIVE =
      "drive --settings unwatched.toml --data recorded --quiet --for 1";

  private static final int WATCHDOG_SECONDS = 6;

  private final KernelRig rig;
  private final GuestProgram program;

  private InstallCases(KernelRig rig, Consumer<CaseOutcome> each) {
    super(each);
    this.rig = rig;
    program = new GuestProgram(rig);
  }

  static List<CaseOutcome> run(KernelBench bench, Path archive) throws IOException {
    if (!bench.runs(KernelBench.Guest.INSTALL)) {
      return List.of();
    }
    Path folder = Files.createDirectories(bench.plan().folder().resolve("install"));
    GuestDisk disk = bench.disk(folder, archive, true);
    try (KernelRig rig = bench.rig(disk, new VirtualCarSide(bench.car()))) {
      InstallCases cases = new InstallCases(rig, bench.each());
      try {
        cases.all();
        rig.cutPower();
      } finally {
        Files.writeString(
            folder.resolve("shell.txt"), rig.shell().everything(), StandardCharsets.UTF_8);
      }
      return cases.outcomes();
    }
  }

  @Override
  double takePeak() {
    return Double.NaN;
  }

  private void all() throws IOException {
    rig.shell()
        .run(
            "sed 's/^machine_watchdog .*/machine_watchdog = false/' /data/car.toml"
                + " >/data/unwatched.toml; cp /data/car.bench-proof.txt"
                + " /data/unwatched.bench-proof.txt",
            2.0);
    pwmChip("N");
    refused("no_overlay", "no PWM chip, as without the overlay", DRIVE, "there is no PWM chip 0");
    pwmChip("Y");
    rig.shell()
        .run("sed 's/^pwm_chip .*/pwm_chip = 3/' /data/unwatched.toml >/data/wrong-chip.toml", 2.0);
    refused(
        "wrong_pwm_chip",
        "settings name another PWM chip",
        DRIVE.replace("unwatched", "wrong-chip"),
        "there are pwmchip0");
    faulty(
        "pwm_period_refused",
        "the PWM chip refuses the period",
        GuestOrders.REFUSE_PERIOD,
        "refuses a period");
    faulty(
        "b1_wrong_chip_at_start",
        "another chip where the converter should be",
        GuestOrders.WRONG_CHIP,
        "does not behave like an ADS1115");
    faulty("b1_nak_at_start", "no converter on the bus", GuestOrders.NAK, "I2C bus 1 address 0x48");
    run("no_groups", "a user in none of the groups", Double.NaN, this::visitor);
    refused(
        "no_watchdog",
        "no watchdog device",
        DRIVE.replace("unwatched", "car"),
        "/dev/watchdog does not exist");
    rig.shell().run("touch /tmp/file; chmod 666 /tmp/file", 2.0);
    refused(
        "file_as_watchdog",
        "an ordinary file where the watchdog should be",
        DRIVE + " --watchdog /tmp/file",
        "is no character device");
    run("second_process", "a second process on the same lines", Double.NaN, this::second);
    run("ended", "asked to end: off, a report, and no reset after it", Double.NaN, this::ended);
  }

  private void pwmChip(String there) throws IOException {
    rig.shell().run("echo " + there + " >/sys/module/bwbench/parameters/pwm", 2.0);
    if (there.equals("Y")) {
      rig.shell()
          .run(
              "chgrp gpio /sys/class/pwm/pwmchip0/export; chmod 220 /sys/class/pwm/pwmchip0/export",
              2.0);
    }
  }

  private void faulty(String id, String text, int kernelFault, String says) throws IOException {
    rig.orders().faults |= kernelFault;
    refused(id, text, DRIVE, says);
    rig.orders().faults &= ~kernelFault;
  }

  private void refused(String id, String text, String arguments, String says) throws IOException {
    run(id, text, Double.NaN, notes -> refused(notes, User.DRIVER, arguments, says));
  }

  private void refused(BenchCases.Notes notes, User user, String arguments, String says)
      throws IOException {
    GuestShell.Answer answer = program.run(user, arguments);
    notes.must(answer.exitCode() == 2, "exit code " + answer.exitCode() + " and not 2");
    notes.must(answer.text().contains(says), "it does not say '" + says + "'");
    notes.must(rig.outputsOff(), "outputs are not off");
    notes.must(rig.lines().gate().edges() == 0L, "the heartbeat ran");
    notes.seen.add("it says: " + answer.text().replace('\n', ' '));
  }

  private void visitor(BenchCases.Notes notes) throws IOException {
    refused(notes, User.VISITOR, DRIVE.replace("recorded", "/tmp/recorded"), "groups gpio");
  }

  private void second(BenchCases.Notes notes) throws IOException {
    program.loadWatchdog(WATCHDOG_SECONDS);
    program.start(DRIVE.replace("unwatched", "car").replace(" --for 1", ""));
    notes.must(program.awaitOutputs(), "the first does not start");
    refused(notes, User.DRIVER, DRIVE, "another program holds it");
    notes.must(program.alive(), "the first has ended");
  }

  private void ended(BenchCases.Notes notes) throws IOException {
    int boots = rig.boots();
    program.signal("TERM");
    notes.seen.add("exit code " + program.await());
    notes.must(rig.outputsOff(), "outputs are not off");
    notes.must(program.said().contains("the coil is off"), "no report at the end");
    rig.run(WATCHDOG_SECONDS + 1.0);
    notes.must(rig.boots() == boots, "the machine was reset after an orderly end");
  }
}
