package org.boostwright.pi.cli;

import org.HdrHistogram.Histogram;
import org.boostwright.core.link.ControllerEnd;
import org.boostwright.pi.link.LinkIo;
import org.boostwright.pi.loop.DriveSession;
import org.boostwright.pi.loop.TickStats;

/** What every run of the controller has to say at its end: timing, recording, link, troubles. */
final class RunReport {
  private RunReport() {}

  /** Words for how a run ended. */
  static String words(DriveSession.End end) {
    return switch (end) {
      case KEY_OFF -> "the key is off; the coil is off.";
      case TIME_UP -> "the time is over; the coil is off.";
      case ASKED -> "asked to end; the coil is off.";
      case FAILED -> "a tick failed; the coil is off.";
    };
  }

  static void add(ResultText result, ControllerRun run, IoChoice where) {
    Throwable failure = run.loop().failure();
    if (failure != null) {
      result.problem("tick_failed", failure.toString(), "please report it with the recording");
    }
    timing(result, run.loop().stats());
    if (run.recording()) {
      long lost = run.recorder().lost() + run.droppedRows();
      result.measure("record.rows", "rows recorded", run.recorder().written(), "count");
      result.measure("record.lost", "rows lost", lost, "count");
      run.recordingFile().ifPresent(file -> result.file("recording", file.toString()));
      if (!run.recorder().trouble().isEmpty()) {
        result.caution("recording", run.recorder().trouble(), "make room or check the folder");
      }
    }
    if (run.io() instanceof LinkIo link) {
      link(result, link.end());
    }
    DriveSession session = run.session();
    if (!session.trouble().isEmpty()) {
      result.caution("session", session.trouble(), "");
    }
    if (!session.realTime().isEmpty()) {
      result.caution(
          "real_time",
          "the tick has no place before other programs: " + session.realTime(),
          "start it by the service of docs/install-pi.md");
    }
    result.provenance("io", where.toString());
  }

  private static void timing(ResultText result, TickStats stats) {
    Histogram late = stats.lateness();
    Histogram took = stats.duration();
    result.measure("tick.count", "ticks", stats.ticks(), "count");
    result.measure("tick.left_out", "ticks left out", stats.leftOut(), "count");
    result.measure("tick.beats", "heartbeat edges", stats.beats(), "count");
    percentile(result, "tick.lateness_p50_ms", "lateness, half of the ticks", late, 50.0);
    percentile(result, "tick.lateness_p99_ms", "lateness, 99 % of the ticks", late, 99.0);
    percentile(result, "tick.lateness_p999_ms", "lateness, 99.9 % of the ticks", late, 99.9);
    percentile(result, "tick.lateness_max_ms", "lateness, worst", late, 100.0);
    percentile(result, "tick.duration_p99_ms", "duration, 99 % of the ticks", took, 99.0);
    percentile(result, "tick.duration_max_ms", "duration, worst", took, 100.0);
  }

  private static void percentile(
      ResultText result, String id, String text, Histogram micros, double percent) {
    result.measure(id, text, micros.getValueAtPercentile(percent) * 1e-3, "ms");
  }

  private static void link(ResultText result, ControllerEnd end) {
    result.measure("link.missed", "frames missed", end.peer().sequence().missed(), "count");
    result.measure("link.dropped", "frames damaged", end.peer().decoder().rejected(), "count");
    result.measure("link.not_new", "frames not new", end.peer().sequence().notNew(), "count");
    result.measure("link.too_old", "ticks with old frames", end.tooOld(), "count");
  }
}
