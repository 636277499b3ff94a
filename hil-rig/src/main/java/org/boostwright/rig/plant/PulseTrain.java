package org.boostwright.rig.plant;

/** Turns rotation into pulses with times. */
final class PulseTrain {
  final PulseFaults faults = new PulseFaults();

  private final Noise noise;
  private double phase;
  private long lastNanos;
  private double periodNanos;
  private int seen;

  PulseTrain(Noise noise) {
    this.noise = noise;
  }

  /** Lets time pass while {@code pulses} pulses fall due at an even rate. */
  void advance(long startNanos, long nanos, double pulses) {
    double due = pulses * faults.factor;
    double end = phase + due;
    while (end >= 1.0) {
      double at = (1.0 - phase) / due;
      long time = startNanos + Math.round(at * nanos);
      if (!faults.lost && !swallowed()) {
        periodNanos = seen > 0 ? time - lastNanos : 0.0;
        lastNanos = time;
        seen = Math.min(seen + 1, 2);
      }
      phase -= 1.0;
      end -= 1.0;
    }
    phase = end;
  }

  private boolean swallowed() {
    return faults.droppedFraction > 0.0 && noise.uniform() < faults.droppedFraction;
  }

  /**
   * As if it had always turned at this rate, 1/s, up to {@code nowNanos}; a standstill changes
   * nothing.
   */
  void settle(long nowNanos, double perSecond) {
    double rate = perSecond * faults.factor;
    if (faults.lost || !(rate > 0.0)) {
      return;
    }
    periodNanos = 1e9 / rate;
    lastNanos = nowNanos - Math.round(phase * periodNanos);
    seen = 2;
  }

  boolean seen() {
    return seen > 0;
  }

  long lastNanos() {
    return lastNanos;
  }

  double periodNanos() {
    return periodNanos;
  }
}
