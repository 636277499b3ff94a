package org.boostwright.core.monitor;

/**
 * Coil current seen on the feedback wire against what was commanded.
 *
 * <p>While off is commanded, current means a driver that is stuck on. While the coil is driven,
 * every PWM period must show current at some tick where the on time is long enough to be met by
 * one, and no current at some tick where the off time is: a coil that is open never shows any, a
 * driver that is stuck on always does. A command is judged only once it has lasted long enough to
 * have reached the coil.
 */
final class CoilWatch {
  /** A phase this long is met by a tick of 5 ms with the current risen or died away, ns. */
  static final double CERTAIN_NANOS = 12.5e6;

  /** Beyond one PWM period: until the current has risen or died away and was sampled, ns. */
  static final long SETTLE_NANOS = 10_000_000L;

  private final double periodNanos;
  private final long windowNanos;
  private final Expectation rest = new Expectation();
  private final Expectation current = new Expectation();
  private final Expectation pause = new Expectation();

  /** Something that has to be so for as long as it is commanded. */
  private static final class Expectation {
    private boolean commanded;
    private long commandedNanos;
    private long seenNanos;

    void command(long nowNanos, boolean commandedNow) {
      if (!commandedNow || !commanded) {
        commanded = commandedNow;
        commandedNanos = nowNanos;
      }
    }

    void see(long nowNanos, boolean seenNow) {
      if (seenNow) {
        seenNanos = nowNanos;
      }
    }

    boolean commandedFor(long nowNanos, long nanos) {
      return commanded && nowNanos - commandedNanos >= nanos;
    }

    boolean unseenFor(long nowNanos, long nanos) {
      return nowNanos - seenNanos > nanos;
    }
  }

  /**
   * @param frequencyHz PWM frequency
   */
  CoilWatch(double frequencyHz) {
    periodNanos = 1e9 / frequencyHz;
    windowNanos = (long) periodNanos + SETTLE_NANOS;
  }

  /** Nothing is known of what is commanded: every expectation begins anew. */
  void interrupt() {
    rest.commanded = false;
    current.commanded = false;
    pause.commanded = false;
  }

  /**
   * Judges one tick.
   *
   * @param commandedDuty duty commanded in the last tick, 0 to 1; 0 where the coil supply was open
   * @param energised coil current is seen
   */
  void update(long nowNanos, double commandedDuty, boolean energised, FaultTable faults) {
    double onNanos = commandedDuty * periodNanos;
    boolean driven = onNanos > 0.0;
    rest.command(nowNanos, !driven);
    current.command(nowNanos, onNanos >= CERTAIN_NANOS);
    current.see(nowNanos, energised);
    pause.command(nowNanos, driven && periodNanos - onNanos >= CERTAIN_NANOS);
    pause.see(nowNanos, !energised);
    boolean judgeRest = rest.commandedFor(nowNanos, windowNanos);
    boolean judgeCurrent = current.commandedFor(nowNanos, 2 * windowNanos);
    boolean judgePause = pause.commandedFor(nowNanos, 2 * windowNanos);
    if (judgeRest || judgeCurrent || judgePause) {
      boolean bad =
          judgeRest && energised
              || judgeCurrent && current.unseenFor(nowNanos, windowNanos)
              || judgePause && pause.unseenFor(nowNanos, windowNanos);
      faults.sample(FaultCode.COIL_FEEDBACK, bad, nowNanos);
    }
  }
}
