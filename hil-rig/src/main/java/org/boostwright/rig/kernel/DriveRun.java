package org.boostwright.rig.kernel;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.boostwright.rig.link.CaseOutcome;
import org.boostwright.rig.link.VirtualCarSide;
import org.boostwright.rig.plant.VirtualCar;

/**
 * The driving guest from power on to power cut, and what its disk and PWM log show afterwards.
 *
 * @param outcomes every case, the recording's part included
 */
record DriveRun(
    List<CaseOutcome> outcomes,
    long pwmApplies,
    long pwmUpdates,
    List<String> pwmWrongs,
    List<KernelBenchReport.Recording> recordings) {
  /** It was not asked for. */
  static final DriveRun NONE = new DriveRun(List.of(), 0L, 0L, List.of(), List.of());

  static DriveRun run(KernelBench bench, Path archive) throws IOException {
    if (!bench.runs(KernelBench.Guest.DRIVE)) {
      return NONE;
    }
    Path folder = Files.createDirectories(bench.plan().folder().resolve("drive"));
    GuestDisk disk = bench.disk(folder, archive, true);
    VirtualCar car = bench.car();
    KernelRig rig = bench.rig(disk, new VirtualCarSide(car));
    DriveCases cases = new DriveCases(rig, car, bench.each());
    try (rig) {
      try {
        cases.all();
        rig.cutPower();
      } finally {
        Files.writeString(
            folder.resolve("shell.txt"), rig.shell().everything(), StandardCharsets.UTF_8);
      }
    }
    List<Path> files = disk.take("/recorded/recordings");
    RecordingCheck check = new RecordingCheck(bench, cases);
    check.judge(files);
    return new DriveRun(
        cases.outcomes(),
        rig.pwm().applies(),
        rig.pwm().updates(),
        rig.pwm().wrongs(),
        check.recordings());
  }
}
