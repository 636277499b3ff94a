package org.boostwright.rig.replay;

import java.lang.management.ManagementFactory;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.boostwright.core.AnalogChannel;
import org.boostwright.core.settings.MapLocation;
import org.boostwright.core.state.SafetyState;
import org.boostwright.rig.replay.csv.LogImport;
import org.boostwright.rig.replay.csv.LogMapping;
import org.boostwright.rig.replay.csv.RecordedLog;

/**
 * Imports and replays every CSV file of a folder and prints what it took: {@code ReplayBenchmark
 * FOLDER}. Each file is done three times; the first includes start-up. The CPU time is the calling
 * thread's, for comparison on a busy machine.
 */
public final class ReplayBenchmark {
  private ReplayBenchmark() {}

  /** See the class. */
  public static void main(String[] arguments) throws Exception {
    List<Path> files;
    try (var folder = Files.list(Path.of(arguments[0]))) {
      files = folder.filter(f -> f.toString().endsWith(".csv")).sorted().toList();
    }
    ReplayOptions options =
        ReplayOptions.DEFAULT
            .withAmbient(98.0)
            .withDemand(AnalogChannel.PEDAL)
            .withLife(MapLocation.BEFORE_THROTTLE, 15.0);
    for (int round = 1; round <= 3; round++) {
      for (Path file : files) {
        long cpuBegin = ManagementFactory.getThreadMXBean().getCurrentThreadCpuTime();
        long begin = System.nanoTime();
        RecordedLog log = LogImport.read(file, LogMapping.NONE);
        long imported = System.nanoTime();
        TraceResult result = TraceReplay.run(ReplayCar.settings(), log, options);
        long replayed = System.nanoTime();
        long cpu = ManagementFactory.getThreadMXBean().getCurrentThreadCpuTime() - cpuBegin;
        System.out.printf(
            "round %d  %-26s %6d rows %7d ticks  import %6.1f ms  replay %6.1f ms  own CPU time"
                + " %6.1f ms  controlling %.1f s%n",
            round,
            file.getFileName(),
            result.rows(),
            result.ticks(),
            (imported - begin) * 1e-6,
            (replayed - imported) * 1e-6,
            cpu * 1e-6,
            result.secondsIn(SafetyState.CONTROLLING));
      }
    }
  }
}
