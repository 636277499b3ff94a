package org.boostwright.core.signal;

/**
 * A speed from pulse periods: events per second, falling towards 0 as pulses stay away.
 *
 * <p>{@code rate = 1e9 / period}, never more than {@code 1e9 / time since the last pulse}. A period
 * that is not positive or not finite, a rate above the plausible ceiling and a change no machine
 * makes are bad samples: the last accepted rate stays. A new level that persists is gone on from,
 * but stays bad for as long as it stands off from the level before it (a doubled or halved signal),
 * or until pulses have been away for 2 s. The long period after lost pulses is no speed at all.
 */
public final class PulseSpeed {
  /** Pulses away for this long: the next one starts afresh, ns. */
  static final long SILENT_NANOS = 2_000_000_000L;

  /** Beside the change that time allows, one pulse of uneven spacing is ordinary: this share. */
  static final double UNEVEN = 0.1;

  /** Accepted periods after which the level is known well enough to call others a jump. */
  static final int KNOWN_AFTER = 10;

  /** A level off by less than this factor either way is not doubled or halved. */
  static final double SHIFTED = 1.4;

  /** Pulses away for this long, and for {@link #GAP} periods: some were lost in between, s. */
  static final double GAP_SECONDS = 0.1;

  /** See {@link #GAP_SECONDS}. */
  static final double GAP = 4.0;

  private final double maxPerSecond;
  private final double maxChangePerSecond2;

  private boolean seen;
  private long lastPulseNanos;
  private double accepted;
  private long acceptedNanos;
  private double level;
  private int acceptedCount;
  private double rejected;
  private int rejectedInARow;
  private double shift = 1.0;
  private double perSecond;
  private boolean fresh;
  private boolean bad;

  /**
   * @param maxPerSecond highest plausible rate, events/s
   * @param maxChangePerSecond2 fastest plausible change, events/s per s
   */
  public PulseSpeed(double maxPerSecond, double maxChangePerSecond2) {
    this.maxPerSecond = maxPerSecond;
    this.maxChangePerSecond2 = maxChangePerSecond2;
  }

  /**
   * Takes the newest pulse. One from the future is not taken before its time.
   *
   * @param nowNanos time of this tick
   * @param everSeen a pulse has been seen since the runtime started
   * @param periodNanos time between the last two pulses, ns; 0 when there were fewer than two
   * @param pulseNanos time of the last pulse
   */
  public void update(long nowNanos, boolean everSeen, double periodNanos, long pulseNanos) {
    fresh = everSeen && nowNanos - pulseNanos >= 0 && (!seen || pulseNanos - lastPulseNanos > 0);
    bad = false;
    if (seen && (fresh ? pulseNanos : nowNanos) - lastPulseNanos >= SILENT_NANOS) {
      accepted = 0.0;
      acceptedCount = 0;
      rejectedInARow = 0;
      shift = 1.0;
    }
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
      bad = acceptedCount >= KNOWN_AFTER;
      rejectedInARow = 0;
      return;
    }
    if (dt >= GAP_SECONDS && dt * accepted > GAP) {
      // Nobody knows what the level did meanwhile: whatever comes next is not a shift of it.
      acceptedCount = 0;
      rejectedInARow = 0;
      bad = !(shift < SHIFTED && shift > 1.0 / SHIFTED);
      return;
    }
    if (accepted == 0.0 || follows(rate, accepted, dt)) {
      accept(rate);
    } else if (rejectedInARow > 0 && follows(rate, rejected, dt)) {
      rejectedInARow++;
      if (rejectedInARow > ChannelSignal.REBASE_AFTER) {
        if (acceptedCount >= KNOWN_AFTER || shift != 1.0) {
          shift *= rate / level;
        }
        acceptedCount = 0;
        accept(rate);
      }
    } else if (follows(rate, accepted, (lastPulseNanos - acceptedNanos) * 1e-9)) {
      // Possible after so long, but one period after bad ones: no level that others shift from.
      double before = level;
      accept(rate);
      level = before;
    } else {
      rejectedInARow = 1;
    }
    rejected = rate;
    bad =
        rejectedInARow > 0 && acceptedCount >= KNOWN_AFTER
            || !(shift < SHIFTED && shift > 1.0 / SHIFTED);
  }

  private boolean follows(double rate, double from, double dt) {
    return Math.abs(rate - from) <= maxChangePerSecond2 * dt + UNEVEN * from;
  }

  private void accept(double rate) {
    accepted = rate;
    level = rate;
    acceptedNanos = lastPulseNanos;
    acceptedCount = Math.min(acceptedCount + 1, KNOWN_AFTER);
    rejectedInARow = 0;
  }

  /** Events per second; 0 when none was seen. */
  public double perSecond() {
    return perSecond;
  }

  /**
   * Events per second at the last accepted pulse; 0 when there was none or pulses have been away
   * for 2 s.
   */
  public double lastPerSecond() {
    return accepted;
  }

  /** True when this tick brought a new pulse. */
  public boolean fresh() {
    return fresh;
  }

  /** True when the newest period was rejected, or its level is not to be believed. */
  public boolean bad() {
    return bad;
  }

  /** Time since the last pulse, ns; {@link Long#MAX_VALUE} when none was seen. */
  public long age(long nowNanos) {
    return seen ? nowNanos - lastPulseNanos : Long.MAX_VALUE;
  }
}
