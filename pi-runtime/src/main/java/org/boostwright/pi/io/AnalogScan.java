package org.boostwright.pi.io;

import java.io.IOException;
import org.boostwright.core.AnalogChannel;
import org.boostwright.core.Inputs;
import org.boostwright.core.settings.ScanPlan;

/**
 * Converts what is due in each pass and hands it to the tick.
 *
 * <p>It runs on a thread of its own: the kernel cannot be told to give up a transfer, and a bus
 * that hangs must not hang the tick. The tick then sees samples grow old, and rests. Inside a pass
 * every failed conversion is tried once more while the budget lasts; a channel that still fails is
 * reported as not answering.
 */
public final class AnalogScan {
  private final Converter converter;
  private final ScanPlan plan;
  private final Clock clock;
  private final SampleQueue queue = new SampleQueue();
  private int others;
  private volatile long failures;
  private volatile String lastFailure = "";

  /** A scan that has converted nothing yet. */
  public AnalogScan(Converter converter, ScanPlan plan, Clock clock) {
    this.converter = converter;
    this.plan = plan;
    this.clock = clock;
  }

  /** One pass, by the reading thread. */
  public void pass() {
    long deadline = clock.nanoTime() + ScanPlan.BUDGET_NANOS;
    others = plan.turnLength() == 0 ? 0 : others % plan.turnLength();
    for (int slot = 0; slot < plan.conversionsPerPass(); slot++) {
      int channel = slot == 0 ? AnalogChannel.MAP.ordinal() : plan.other(others++);
      boolean done = fits(deadline) && convert(channel);
      if (!done && fits(deadline)) {
        done = convert(channel);
      }
      if (!done) {
        queue.put(channel, false, Double.NaN, clock.nanoTime());
      }
    }
  }

  private boolean fits(long deadlineNanos) {
    return clock.nanoTime() + converter.convertNanos() - deadlineNanos <= 0L;
  }

  private boolean convert(int channel) {
    try {
      double volts = converter.convert(plan.input(channel));
      queue.put(channel, true, volts, clock.nanoTime());
      return true;
    } catch (IOException e) {
      noteFailure(String.valueOf(e.getMessage()));
      return false;
    }
  }

  @SuppressWarnings("NonAtomicVolatileUpdate") // only the reading thread counts
  private void noteFailure(String words) {
    failures++;
    lastFailure = words;
  }

  /** Writes what came since the last call, by the tick thread. */
  public void read(Inputs inputs) {
    queue.drain(inputs);
  }

  /** Failed conversions since start. */
  public long failures() {
    return failures;
  }

  /** Words about the last failed conversion; empty when there was none. */
  public String lastFailure() {
    return lastFailure;
  }
}
