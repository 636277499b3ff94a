package org.boostwright.core.signal;

import org.boostwright.core.settings.AnalogSensor;

/**
 * One analogue channel: volts to value, with what this channel alone can tell about itself.
 *
 * <p>Each tick {@link #update} looks at the newest sample once. Findings are bits that describe the
 * newest sample ({@link #LOW}, {@link #HIGH}, {@link #NOT_A_NUMBER}, {@link #JUMP}, {@link
 * #FROZEN}) or the lack of one ({@link #STALE}). The value is the last accepted one, so a rejected
 * sample never reaches the control law.
 */
public final class ChannelSignal {
  /** Volts below the valid range: wire open on a pulled-down input, or short to ground. */
  public static final int LOW = 1;

  /** Volts above the valid range: short to supply. */
  public static final int HIGH = 2;

  /** Volts are NaN or infinite. */
  public static final int NOT_A_NUMBER = 4;

  /** The change since the last accepted sample is faster than possible. */
  public static final int JUMP = 8;

  /** Identical samples for 50 ms although the declared noise exceeds one step. */
  public static final int FROZEN = 16;

  /** No sample for more than three of the channel's periods, counted from the first tick. */
  public static final int STALE = 32;

  /** Time of identical samples after which a noisy source counts as frozen, ns. */
  static final long FROZEN_NANOS = 50_000_000L;

  /** Rejected samples in a row that agree with each other before they become the new base. */
  static final int REBASE_AFTER = 6;

  private final AnalogSensor sensor;
  private final long staleNanos;

  private boolean started;
  private long startNanos;
  private boolean seen;
  private boolean hasValue;
  private boolean usable;
  private long lastSampleNanos;
  private double lastVolts;
  private long sameSinceNanos;
  private double value = Double.NaN;
  private long acceptedNanos;
  private double rejectedValue;
  private int rejectedInARow;
  private boolean fresh;
  private int findings;
  private SignalStatus status = SignalStatus.STALE;

  /** A channel that has seen nothing yet. */
  public ChannelSignal(AnalogSensor sensor) {
    this.sensor = sensor;
    this.staleNanos = (long) (3.0 * sensor.refreshMillis() * 1e6);
  }

  /**
   * Takes the newest sample. One from the future is not taken: it would keep every later one out.
   *
   * @param nowNanos time of this tick
   * @param volts raw volts
   * @param sampleNanos when they were converted
   * @param answered false while the converter does not answer
   * @param changeExplained true while another signal explains any rate of change
   */
  public void update(
      long nowNanos, double volts, long sampleNanos, boolean answered, boolean changeExplained) {
    if (!started) {
      started = true;
      startNanos = nowNanos;
    }
    findings = 0;
    fresh = answered && nowNanos - sampleNanos >= 0 && (!seen || sampleNanos - lastSampleNanos > 0);
    if (fresh) {
      takeSample(volts, sampleNanos, changeExplained);
    } else if (!answered && seen) {
      status = SignalStatus.INVALID;
    }
    if (!within(nowNanos - (seen ? lastSampleNanos : startNanos))) {
      findings |= STALE;
      status = SignalStatus.STALE;
    }
    usable = hasValue && status != SignalStatus.STALE && within(nowNanos - acceptedNanos);
  }

  private boolean within(long age) {
    return age >= 0 && age <= staleNanos;
  }

  private void takeSample(double volts, long sampleNanos, boolean changeExplained) {
    seen = true;
    lastSampleNanos = sampleNanos;
    if (!Double.isFinite(volts)) {
      findings |= NOT_A_NUMBER;
      status = SignalStatus.INVALID;
      return;
    }
    if (volts < sensor.validLowVolts()) {
      findings |= LOW;
      status = SignalStatus.INVALID;
      return;
    }
    if (volts > sensor.validHighVolts()) {
      findings |= HIGH;
      status = SignalStatus.INVALID;
      return;
    }
    double candidate = sensor.calibration().at(volts);
    if (hasValue
        && !changeExplained
        && !possible(candidate, value, sampleNanos - acceptedNanos)
        && !rebased(candidate)) {
      findings |= JUMP;
      status = SignalStatus.SUSPECT;
      return;
    }
    // A sample that is set aside is no sign of life: a frozen source with spikes stays frozen.
    if (!hasValue || volts != lastVolts) {
      sameSinceNanos = sampleNanos;
    }
    lastVolts = volts;
    if (sensor.frozenIsWatched() && sampleNanos - sameSinceNanos >= FROZEN_NANOS) {
      findings |= FROZEN;
    }
    hasValue = true;
    rejectedInARow = 0;
    value = candidate;
    acceptedNanos = sampleNanos;
    status = (findings & FROZEN) != 0 ? SignalStatus.SUSPECT : SignalStatus.VALID;
  }

  private boolean possible(double candidate, double from, long nanos) {
    return Math.abs(candidate - from) <= sensor.maxRatePerSecond() * (nanos * 1e-9);
  }

  /** A level that persists is real, and by now reported; go on from there. */
  private boolean rebased(double candidate) {
    boolean agrees =
        rejectedInARow > 0
            && Math.abs(candidate - rejectedValue)
                <= sensor.maxRatePerSecond() * (sensor.refreshMillis() * 1e-3);
    rejectedInARow = agrees ? rejectedInARow + 1 : 1;
    rejectedValue = candidate;
    return rejectedInARow > REBASE_AFTER;
  }

  /** Last accepted value in the channel's unit; NaN before the first. */
  public double value() {
    return value;
  }

  /** What the value is worth in this tick. */
  public SignalStatus status() {
    return status;
  }

  /** True when this tick brought a new sample. */
  public boolean fresh() {
    return fresh;
  }

  /** Finding bits of this tick. */
  public int findings() {
    return findings;
  }

  /** True when any of the given finding bits is set in this tick. */
  public boolean has(int bits) {
    return (findings & bits) != 0;
  }

  /**
   * True when the value may be used: it was accepted within the last three of the channel's
   * periods. A bad sample beside it is counted by its watch and moves no output before it is
   * confirmed.
   */
  public boolean usable() {
    return usable;
  }
}
