package org.boostwright.pi.bench;

import org.boostwright.core.AnalogChannel;
import org.boostwright.core.Inputs;
import org.boostwright.core.Outputs;
import org.boostwright.core.bench.BenchPlan;
import org.boostwright.core.bench.BenchRecord;
import org.boostwright.core.bench.BenchStep;
import org.boostwright.core.bench.Question;
import org.boostwright.core.bench.TickedBench;
import org.boostwright.core.settings.Settings;
import org.boostwright.pi.loop.TickGuest;
import org.jspecify.annotations.Nullable;

/**
 * A bench session on the ticks of {@code TickLoop}. The tick thread steps it; one other thread asks
 * for the open question and answers it, which may take as long as it likes: the coil is off while a
 * question is open.
 */
public final class BenchGuest implements TickGuest {
  /** The line sensor must have spoken by then; the session ends over it otherwise, ns. */
  private static final long LONGEST_WAIT_NANOS = 10_000_000_000L;

  private static final int MAP = AnalogChannel.MAP.ordinal();

  private final TickedBench bench;
  private boolean waiting;
  private long waitingSinceNanos;
  private boolean begun;
  private volatile @Nullable Question question;
  private volatile @Nullable BenchStep step;
  private volatile @Nullable Double answer;
  private volatile boolean abort;
  private volatile boolean finished;

  /** A session that has not begun. */
  public BenchGuest(BenchPlan plan, Settings settings) {
    bench = new TickedBench(plan, settings);
  }

  @Override
  public void before(long nowNanos, Inputs inputs) {
    if (!begins(nowNanos, inputs)) {
      return;
    }
    Double given = answer;
    if (given != null) {
      bench.told().answer = given;
      bench.told().answered = true;
      question = null;
      answer = null;
    }
    bench.told().abort = abort;
    bench.before(nowNanos, inputs);
  }

  /** Converter and link take a moment to give the first sample. */
  private boolean begins(long nowNanos, Inputs inputs) {
    if (!waiting) {
      waiting = true;
      waitingSinceNanos = nowNanos;
    }
    begun |= inputs.answered[MAP] || nowNanos - waitingSinceNanos >= LONGEST_WAIT_NANOS;
    return begun;
  }

  @Override
  public double after(long nowNanos, Inputs inputs, Outputs outputs) {
    if (begun) {
      bench.after(outputs);
    }
    step = bench.session().step();
    question = bench.wanted().question;
    finished = bench.session().finished();
    return bench.frequencyHz();
  }

  /** What the person has to do or tell; null when nothing, or when it is answered already. */
  public @Nullable Question question() {
    return answer == null ? question : null;
  }

  /** Answers the open question; NaN = does not know. */
  public void answer(double number) {
    answer = number;
  }

  /** Ends the session, coil off. */
  public void abort() {
    abort = true;
  }

  /** The step that runs now; null before the first and after the last. */
  public @Nullable BenchStep step() {
    return step;
  }

  /** True once nothing more will happen; the coil stays off. */
  public boolean finished() {
    return finished;
  }

  /** What was measured; to be read once the ticks have ended. */
  public BenchRecord record() {
    return bench.session().record();
  }
}
