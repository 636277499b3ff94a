package org.boostwright.rig.replay;

import java.util.ArrayList;
import java.util.List;
import org.boostwright.rig.replay.csv.Pause;
import org.boostwright.rig.replay.csv.RecordedLog;
import org.boostwright.rig.replay.csv.SignalTrace;

/**
 * Rows of a log without a pause between them.
 *
 * @param first first row
 * @param start first row by which every signal fed has been read once; the replay starts there
 * @param end row after the last
 */
record Stretch(int first, int start, int end) {

  /** The stretches of a log between its pauses; one that never gets complete is left out. */
  static List<Stretch> of(RecordedLog log, List<SignalTrace> fed) {
    List<Stretch> stretches = new ArrayList<>();
    int first = 0;
    for (Pause pause : log.pauses()) {
      addIfComplete(stretches, first, pause.row(), fed);
      first = pause.row();
    }
    addIfComplete(stretches, first, log.rows(), fed);
    return stretches;
  }

  private static void addIfComplete(
      List<Stretch> stretches, int first, int end, List<SignalTrace> fed) {
    int start = first;
    for (SignalTrace trace : fed) {
      int read = trace.nextFresh(first);
      start = read < 0 ? end : Math.max(start, read);
    }
    if (start < end) {
      stretches.add(new Stretch(first, start, end));
    }
  }
}
