package org.boostwright.pi.web;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.List;
import org.boostwright.core.monitor.FaultCode;
import org.boostwright.core.record.LogFormat;
import org.boostwright.pi.record.RowQueue;

/** Faults as they came and went, each with the row of the tick in which it was confirmed. */
final class FaultHistory {
  private static final int MOST = 40;

  /**
   * One fault.
   *
   * @param code which
   * @param frame row of the tick that confirmed it
   * @param number counts up over the run
   */
  record Entry(FaultCode code, double[] frame, long number) {}

  private final ArrayDeque<Entry> entries = new ArrayDeque<>();
  private long active;
  private long count;

  /** Takes what is new. */
  synchronized void take(RowQueue changes) {
    for (double[] row = changes.peek(); row != null; row = changes.peek()) {
      take(row.clone());
      changes.remove();
    }
  }

  private void take(double[] row) {
    long now = (long) row[LogFormat.FAULTS] | (long) row[LogFormat.FINDINGS];
    long begun = now & ~active;
    active = now;
    for (FaultCode code : FaultCode.values()) {
      if ((begun & code.bit()) != 0L) {
        entries.addFirst(new Entry(code, row, ++count));
      }
    }
    while (entries.size() > MOST) {
      entries.removeLast();
    }
  }

  /** Newest first. */
  synchronized List<Entry> entries() {
    return new ArrayList<>(entries);
  }

  /** Faults since the start, those no longer kept included. */
  synchronized long count() {
    return count;
  }
}
