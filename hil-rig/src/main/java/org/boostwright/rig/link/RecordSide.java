package org.boostwright.rig.link;

import java.util.List;
import org.boostwright.core.Controller;
import org.boostwright.core.Inputs;
import org.boostwright.core.record.LogFormat;

/**
 * A recorded trace behind the wires: row after row of inputs, at the pace of the ticks. What the
 * controller does changes nothing of it.
 */
public final class RecordSide implements CarSide {
  private final List<double[]> rows;
  private int row;
  private long shiftNanos;
  private final Inputs recorded = new Inputs();

  /**
   * @param rows rows of the record format, one per tick
   */
  public RecordSide(List<double[]> rows) {
    if (rows.isEmpty()) {
      throw new IllegalArgumentException("a trace without rows");
    }
    this.rows = rows;
    row = -1;
  }

  @Override
  public boolean advance(long nanos) {
    long ticks = Math.max(1L, Math.round((double) nanos / Controller.TICK_NANOS));
    row = (int) Math.min(rows.size() - 1L, row + ticks);
    LogFormat.restoreInputs(rows.get(row), recorded);
    return row < rows.size() - 1;
  }

  @Override
  public void read(long nowNanos, Inputs inputs) {
    long recordedNanos = (long) rows.get(Math.max(0, row))[LogFormat.TIME_NS];
    if (shiftNanos == 0L) {
      shiftNanos = nowNanos - recordedNanos;
    }
    inputs.copyFrom(recorded);
    for (int c = 0; c < inputs.sampleNanos.length; c++) {
      inputs.sampleNanos[c] += shiftNanos;
    }
    inputs.enginePulseNanos += shiftNanos;
    inputs.roadPulseNanos += shiftNanos;
  }

  @Override
  public void coil(double dutyFraction, double hz, boolean pwmEnabled, boolean supplyClosed) {}

  @Override
  public void engineCut(boolean requested) {}
}
