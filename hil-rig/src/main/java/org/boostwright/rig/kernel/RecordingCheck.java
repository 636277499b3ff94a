package org.boostwright.rig.kernel;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.boostwright.core.monitor.FaultCode;
import org.boostwright.core.monitor.Reaction;
import org.boostwright.core.record.LogFormat;
import org.boostwright.core.state.Permission;
import org.boostwright.core.state.SafetyState;
import org.boostwright.rig.replay.RecordReplay;
import org.boostwright.rig.replay.RecordRows;
import org.boostwright.rig.replay.csv.LogRefusedException;
import org.jspecify.annotations.Nullable;

/**
 * What the program itself recorded in the guest: the right fault for each case and no other, duty 0
 * in every rest state, and the same bits when replayed on this machine.
 */
final class RecordingCheck {
  private final KernelBench bench;
  private final DriveCases cases;
  private final List<KernelBenchReport.Recording> recordings = new ArrayList<>();

  RecordingCheck(KernelBench bench, DriveCases cases) {
    this.bench = bench;
    this.cases = cases;
  }

  /** Judges the recordings, one for each start of the program in order. */
  void judge(List<Path> files) throws IOException {
    List<List<double[]>> starts = new ArrayList<>();
    for (Path file : files) {
      try {
        List<double[]> rows = RecordRows.read(file);
        starts.add(rows);
        recordings.add(
            new KernelBenchReport.Recording(
                String.valueOf(file.getFileName()), rows.size(), differing(file)));
      } catch (LogRefusedException e) {
        starts.add(List.of());
        recordings.add(
            new KernelBenchReport.Recording(String.valueOf(file.getFileName()), 0L, -1L));
      }
    }
    for (DriveCases.Stretch stretch : cases.stretches()) {
      judge(stretch, stretch.start() < starts.size() ? starts.get(stretch.start()) : List.of());
    }
    cases.run(
        "recordings",
        "a recording of each start: ended by the watchdog's reset, by kill -9 and by a power cut",
        Double.NaN,
        notes -> {
          notes.must(
              recordings.size() == cases.starts(),
              recordings.size() + " and not " + cases.starts());
          for (KernelBenchReport.Recording recording : recordings) {
            notes.must(recording.rows() > 0L, recording.name() + " cannot be read");
            notes.seen.add(recording.name() + " " + recording.rows() + " rows");
          }
        });
  }

  private long differing(Path file) throws IOException, LogRefusedException {
    return RecordReplay.run(
            bench.settings(), Permission.FULL, Files.readAllBytes(file), file.toString())
        .differingRows();
  }

  private void judge(DriveCases.Stretch stretch, List<double[]> rows) throws IOException {
    KernelFault fault = stretch.fault();
    cases.run(
        stretch.id() + "_recorded",
        fault == null
            ? "recording of it: no fault, duty 0 in every rest state"
            : "recording of it: this fault and no other, duty 0 in every rest state",
        Double.NaN,
        notes -> {
          long seen = 0L;
          int count = 0;
          int broken = 0;
          for (double[] row : rows) {
            double at = row[LogFormat.TIME_NS];
            if (at >= stretch.fromNanos() && at <= stretch.toNanos()) {
              seen |= (long) row[LogFormat.FAULTS];
              count++;
              boolean rest = SafetyState.values()[(int) row[LogFormat.STATE]].isRest();
              boolean possible = row[LogFormat.DUTY] >= 0.0 && row[LogFormat.DUTY] <= 1.0;
              broken += !possible || (rest && row[LogFormat.DUTY] != 0.0) ? 1 : 0;
            }
          }
          notes.effect = count > 0;
          notes.must(count > 0, "no row of it was recorded");
          notes.must(broken == 0, broken + " rows with a duty that must not be");
          notes.must(reported(fault, seen), "not reported");
          long unrelated = seen & ~allowed(fault);
          notes.must(unrelated == 0L, "unrelated: " + names(unrelated));
          notes.seen.add(count + " rows, faults: " + names(seen));
        });
  }

  private static boolean reported(@Nullable KernelFault fault, long seen) {
    if (fault == null || fault.expected().isEmpty()) {
      return true;
    }
    return fault.expected().stream().anyMatch(code -> (seen & code.bit()) != 0L);
  }

  private static long allowed(@Nullable KernelFault fault) {
    // What only informs is no fault: a target that is not reached yet, for example.
    long bits = 0L;
    for (FaultCode code : FaultCode.values()) {
      bits |= code.reaction() == Reaction.REPORT ? code.bit() : 0L;
    }
    if (fault != null) {
      for (FaultCode code : fault.expected()) {
        bits |= code.bit();
      }
      for (FaultCode code : fault.allowed()) {
        bits |= code.bit();
      }
    }
    return bits;
  }

  private static String names(long faults) {
    StringBuilder names = new StringBuilder();
    LogFormat.appendFaults(names, faults);
    return names.length() == 0 ? "none" : names.toString();
  }

  List<KernelBenchReport.Recording> recordings() {
    return List.copyOf(recordings);
  }
}
