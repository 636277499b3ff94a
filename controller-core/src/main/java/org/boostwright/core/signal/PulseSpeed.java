package org.boostwright.core.signal;

/**
 * A speed from pulse periods: events per second, falling towards 0 as pulses stay away.
 *
 * <p>{@code rate = 1e9 / period}, never more than {@code 1e9 / time since the last pulse}. A period
 * that is not positive or not finite, or a rate above the plausible ceiling, leaves the last
 * accepted rate and is counted as a bad sample.
 */
public final class PulseSpeed {
  private final double maxPerSecond;
  private final double maxChangePerSecond2;

  private boolean seen;
  private long lastPulseNanos;
  private double accepted;
  private double perSecond;
  private boolean fresh;
  private boolean bad;
  private int badInARow;

  /**
   * @param maxPerSecond highest plausible rate, events/s
   * @param maxChangePerSecond2 fastest plausible change, events/s per s
   */
  public PulseSpeed(double maxPerSecond, double maxChangePerSecond2) {
    this.maxPerSecond = maxPerSecond;
    this.maxChangePerSecond2 = maxChangePerSecond2;
  }

  /**
   * @param nowNanos time of this tick
   * @param everSeen a pulse has been seen since the runtime started
   * @param periodNanos time between the last two pulses, ns; 0 when there were fewer than two
   * @param pulseNanos time of the last pulse
   */
  public void update(long nowNanos, boolean everSeen, double periodNanos, long pulseNanos) {
    fresh = everSeen && (!seen || pulseNanos - lastPulseNanos > 0);
    bad = false;
    if (fresh) {
      double dt = seen ? (pulseNanos - lastPulseNanos) * 1e-9 : 0.0;
      seen = true;
      lastPulseNanos = pulseNanos;
      takePeriod(periodNanos, dt);
    }
    if (!seen) {
      perSecond = 0.0;
      return;
    }
    long age = nowNanos - lastPulseNanos;
    double ceiling = age > 0 ? 1e9 / age : maxPerSecond;
    perSecond = accepted < ceiling ? accepted : ceiling;
  }

  private void takePeriod(double periodNanos, double dt) {
    if (periodNanos == 0.0) {
      return; // the first pulse has no period yet
    }
    double rate = 1e9 / periodNanos;
    if (!(rate > 0.0 && rate <= maxPerSecond)) {
      bad = true;
      badInARow++;
      return;
    }
    // Beside the change that time allows, one pulse of uneven spacing (10 %) is ordinary.
    boolean possible =
        accepted == 0.0 || Math.abs(rate - accepted) <= maxChangePerSecond2 * dt + 0.1 * accepted;
    if (!possible && badInARow < ChannelSignal.REBASE_AFTER) {
      bad = true;
      badInARow++;
      return;
    }
    badInARow = 0;
    accepted = rate;
  }

  /** Events per second; 0 when none was seen. */
  public double perSecond() {
    return perSecond;
  }

  /** Events per second at the last accepted pulse, however long ago; 0 when there was none. */
  public double lastPerSecond() {
    return accepted;
  }

  /** True when this tick brought a new pulse. */
  public boolean fresh() {
    return fresh;
  }

  /** True when the newest period was rejected. */
  public boolean bad() {
    return bad;
  }

  /** Time since the last pulse, ns; {@link Long#MAX_VALUE} when none was seen. */
  public long age(long nowNanos) {
    return seen ? nowNanos - lastPulseNanos : Long.MAX_VALUE;
  }
}
