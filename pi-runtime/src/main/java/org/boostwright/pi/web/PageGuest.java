package org.boostwright.pi.web;

import org.boostwright.core.Inputs;
import org.boostwright.core.Outputs;
import org.boostwright.core.bench.BenchStep;
import org.boostwright.core.bench.Question;
import org.boostwright.core.bench.TickedBench;
import org.boostwright.core.record.LogFormat;
import org.boostwright.pi.loop.TickGuest;
import org.boostwright.pi.record.RowQueue;
import org.jspecify.annotations.Nullable;

/**
 * The page's end inside the tick: hands a row over whenever the set of faults changes, and carries
 * a bench session while there is one. It never waits for the page; what the page wants it finds in
 * fields, and what finds no place in the queue is counted.
 *
 * <p>Without a session it touches nothing. With one it can ask for the bench state only, which the
 * core grants while the engine is known to be stopped and takes away when it is not.
 */
public final class PageGuest implements TickGuest {
  private static final int CHANGES = 64;

  /**
   * An answer of the person.
   *
   * @param question what it answers; passed over when another one is open by now
   * @param value the number, in the question's unit
   */
  record Answer(Question question, double value) {}

  private final RowQueue changes = new RowQueue(CHANGES);
  private final double restHz;
  private long faults;
  private @Nullable TickedBench running;

  private volatile @Nullable TickedBench wanted;
  private volatile @Nullable Answer answer;
  private volatile boolean stop;
  private volatile @Nullable Question question;
  private volatile @Nullable BenchStep step;
  private volatile @Nullable TickedBench ended;

  /**
   * @param restHz PWM frequency of the settings, Hz
   */
  public PageGuest(double restHz) {
    this.restHz = restHz;
  }

  @Override
  public void before(long nowNanos, Inputs inputs) {
    inputs.benchRequest = false;
    inputs.benchDutyFraction = 0.0;
    TickedBench bench = wanted;
    if (bench == null) {
      return;
    }
    if (bench != running) {
      running = bench;
      ended = null;
    }
    Answer given = answer;
    Question open = bench.wanted().question;
    if (given != null) {
      answer = null;
      if (open != null && given.question() == open) {
        bench.told().answered = true;
        bench.told().answer = given.value();
      }
    }
    bench.told().abort = stop;
    bench.before(nowNanos, inputs);
  }

  @Override
  public double after(long nowNanos, Inputs inputs, Outputs outputs) {
    long now = outputs.activeFaults | outputs.findings;
    if (now != faults) {
      faults = now;
      double[] place = changes.claim();
      if (place != null) {
        LogFormat.fill(place, nowNanos, inputs, outputs);
        changes.publish();
      }
    }
    TickedBench bench = running;
    if (bench == null) {
      return restHz;
    }
    bench.after(outputs);
    question = bench.wanted().question;
    step = bench.session().step();
    if (bench.session().finished()) {
      running = null;
      wanted = null;
      question = null;
      stop = false;
      ended = bench;
      return restHz;
    }
    return bench.frequencyHz();
  }

  /** Rows of the ticks in which the set of faults changed; for one reading thread. */
  RowQueue changes() {
    return changes;
  }

  /** Starts a session unless one runs. */
  synchronized boolean begin(TickedBench bench) {
    if (wanted != null) {
      return false;
    }
    answer = null;
    stop = false;
    ended = null;
    wanted = bench;
    return true;
  }

  /** The person's answer. */
  void tell(Answer given) {
    answer = given;
  }

  /** Ends the session in the next tick, coil off first. */
  void stop() {
    stop = wanted != null;
  }

  /** Whether a session runs. */
  boolean busy() {
    return wanted != null;
  }

  /** The open question; null when there is none. */
  @Nullable Question question() {
    return question;
  }

  /** The step that runs; null when none does. */
  @Nullable BenchStep step() {
    return step;
  }

  /** The session that ended last; null while none has. */
  @Nullable TickedBench ended() {
    return ended;
  }
}
