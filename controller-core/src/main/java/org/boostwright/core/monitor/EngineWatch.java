package org.boostwright.core.monitor;

import org.boostwright.core.settings.Settings;
import org.boostwright.core.signal.SignalStatus;
import org.boostwright.core.signal.Signals;

/**
 * Whether the engine runs, is known to be stopped, or neither; and ambient pressure, which only a
 * stopped engine shows.
 *
 * <p>Stopped = no engine pulse for 2 s, no road-speed pulse for 2 s, and manifold pressure steady
 * within 60 to 106 kPa for 1 s. Nothing that needs a stopped engine is done otherwise.
 */
public final class EngineWatch {
  static final long QUIET_NANOS = 2_000_000_000L;
  static final long STEADY_NANOS = 1_000_000_000L;
  static final double STEADY_KPA = 2.5;
  static final double AMBIENT_LOW_KPA = 60.0;
  static final double AMBIENT_HIGH_KPA = 106.0;

  private static final double AVERAGE_GAIN = 0.02;

  private final double idleRpm;

  private boolean started;
  private long startNanos;
  private boolean averaging;
  private double averageKpa;
  private long steadySinceNanos;
  private long lastSampleNanos;
  private boolean running;
  private boolean stopped;
  private boolean steadyOutOfRange;
  private double ambientKpaAbs;
  private boolean ambientMeasured;
  private long ambientNanos;
  private double lastValidKpa;

  /** Knows nothing yet but the ambient pressure the settings assume. */
  public EngineWatch(Settings settings) {
    idleRpm = settings.car().idleRpm();
    ambientKpaAbs = settings.sensors().ambientKpaAbs();
  }

  /** Judges one tick. */
  public void update(long nowNanos, Signals signals) {
    if (!started) {
      started = true;
      startNanos = nowNanos;
      steadySinceNanos = nowNanos;
      lastSampleNanos = nowNanos;
    }
    running = isRunningSpeed(signals.engineRpm());
    trackSteadiness(nowNanos, signals);
    boolean quiet =
        nowNanos - startNanos >= QUIET_NANOS
            && signals.engine().age(nowNanos) >= QUIET_NANOS
            && signals.road().age(nowNanos) >= QUIET_NANOS;
    boolean steady =
        averaging
            && signals.map().status() == SignalStatus.VALID
            && lastSampleNanos - steadySinceNanos >= STEADY_NANOS;
    boolean inRange = averageKpa >= AMBIENT_LOW_KPA && averageKpa <= AMBIENT_HIGH_KPA;
    stopped = quiet && steady && inRange;
    steadyOutOfRange = quiet && steady && !inRange;
    if (stopped) {
      ambientKpaAbs = averageKpa;
      ambientMeasured = true;
      ambientNanos = nowNanos;
    }
  }

  private void trackSteadiness(long nowNanos, Signals signals) {
    if (signals.map().status() != SignalStatus.VALID) {
      averaging = false;
      steadySinceNanos = nowNanos;
      return;
    }
    double kpa = signals.map().value();
    lastValidKpa = kpa;
    // One old sample, held because no new one comes, is no steady pressure.
    if (signals.map().fresh()) {
      lastSampleNanos = nowNanos;
    }
    if (!averaging || !(Math.abs(kpa - averageKpa) <= STEADY_KPA)) {
      averaging = true;
      averageKpa = kpa;
      steadySinceNanos = nowNanos;
    } else {
      averageKpa += AVERAGE_GAIN * (kpa - averageKpa);
    }
  }

  /** True for an engine speed at or above running speed. */
  boolean isRunningSpeed(double rpm) {
    return rpm >= idleRpm;
  }

  /** Engine speed is at or above running speed. */
  public boolean running() {
    return running;
  }

  /** The engine is known to be stopped. */
  public boolean stopped() {
    return stopped;
  }

  /** No pulses, steady pressure, but at a value no atmosphere has. */
  public boolean steadyOutOfRange() {
    return steadyOutOfRange;
  }

  /** Ambient pressure, kPa absolute; NaN while none was measured and none is assumed. */
  public double ambientKpaAbs() {
    return ambientKpaAbs;
  }

  /** True once measured in this run. */
  public boolean ambientMeasured() {
    return ambientMeasured;
  }

  /**
   * Time since ambient was measured, s; infinite when it never was in this run, because nobody
   * knows where the car has been since.
   */
  public double ambientAgeSeconds(long nowNanos) {
    return ambientMeasured ? (nowNanos - ambientNanos) * 1e-9 : Double.POSITIVE_INFINITY;
  }

  /** Last valid manifold pressure seen, kPa absolute. */
  double lastValidKpa() {
    return lastValidKpa;
  }
}
