package org.boostwright.core.monitor;

import org.boostwright.core.settings.Settings;
import org.boostwright.core.signal.SignalStatus;
import org.boostwright.core.signal.Signals;

/**
 * Whether the engine runs, is known to be stopped, or neither; and ambient pressure, which only a
 * stopped engine shows.
 *
 * <p>Stopped = no engine pulse for 2 s, no road-speed pulse for 2 s, and manifold pressure steady
 * within 60 to 106 kPa for 1 s. Once the engine has been seen stopped since key-on, that pressure
 * must also be one the weather and the road can have brought since: a steady cruise with a dead
 * speed signal is not a stop. Nothing that needs a stopped engine is done otherwise.
 *
 * <p>On the bench the pressure sensor may sit on the actuator line, under bench air. A bench asked
 * for while the engine is known to be stopped therefore keeps it stopped, whatever that pressure
 * does, until something tells of an engine: a pulse, or vacuum. Ambient is not measured meanwhile.
 */
public final class EngineWatch {
  static final long QUIET_NANOS = 2_000_000_000L;
  static final long STEADY_NANOS = 1_000_000_000L;
  static final double STEADY_KPA = 2.5;
  static final double AMBIENT_LOW_KPA = 60.0;
  static final double AMBIENT_HIGH_KPA = 106.0;

  /** Two readings of one ambient pressure differ by less than this, kPa. */
  static final double AMBIENT_TOLERANCE_KPA = 4.0;

  /** Fastest change of ambient pressure allowed for, kPa per s (about 1000 m in ten minutes). */
  static final double CLIMB_KPA_PER_SECOND = 0.02;

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
  private boolean onBench;
  private boolean steadyOutOfRange;
  private double ambientKpaAbs;
  private boolean ambientMeasured;
  private boolean recalled;
  private boolean seenStopped;
  private long ambientNanos;

  /** Knows nothing yet but the ambient pressure the settings assume. */
  public EngineWatch(Settings settings) {
    idleRpm = settings.car().idleRpm();
    ambientKpaAbs = settings.sensors().ambientKpaAbs();
  }

  /**
   * Judges one tick.
   *
   * @param keyOff a key is wired and off: what was seen of the ambient may have changed until it is
   *     on again
   * @param benchAsked a bench procedure asks to move the valve
   */
  public void update(long nowNanos, Signals signals, boolean keyOff, boolean benchAsked) {
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
    if (keyOff) {
      seenStopped = false;
    }
    boolean shown = quiet && steady && inRange && (!seenStopped || explainedByRoad(nowNanos));
    onBench = quiet && !vacuum(signals) && (onBench || benchAsked && shown);
    stopped = shown || onBench;
    steadyOutOfRange = quiet && steady && !inRange && !seenStopped && !onBench;
    if (shown && !onBench) {
      ambientKpaAbs = averageKpa;
      ambientMeasured = true;
      seenStopped = true;
      ambientNanos = nowNanos;
    }
  }

  private boolean vacuum(Signals signals) {
    return signals.map().usable()
        && !(signals.map().value() >= ambientKpaAbs - AMBIENT_TOLERANCE_KPA);
  }

  private boolean explainedByRoad(long nowNanos) {
    double climb = CLIMB_KPA_PER_SECOND * ambientAgeSeconds(nowNanos);
    return Math.abs(averageKpa - ambientKpaAbs) <= AMBIENT_TOLERANCE_KPA + climb;
  }

  private void trackSteadiness(long nowNanos, Signals signals) {
    if (signals.map().status() != SignalStatus.VALID) {
      averaging = false;
      steadySinceNanos = nowNanos;
      return;
    }
    double kpa = signals.map().value();
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

  /** A bench procedure has asked since the engine stopped: pressure may be that of bench air. */
  public boolean onBench() {
    return onBench;
  }

  /** No pulses, steady pressure, but at a value no atmosphere has, ever since key-on. */
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
   * Time since ambient was measured, s; time since start when it never was; infinite for one that
   * was recalled, because nobody knows where the car has been since.
   */
  public double ambientAgeSeconds(long nowNanos) {
    if (recalled && !ambientMeasured) {
      return Double.POSITIVE_INFINITY;
    }
    return (nowNanos - (ambientMeasured ? ambientNanos : startNanos)) * 1e-9;
  }

  /** The ambient pressure to begin with was kept from an earlier run. */
  void recall() {
    recalled = true;
  }

  /** Manifold pressure while it is steady, averaged over about 0.25 s, kPa absolute. */
  double steadyKpaAbs() {
    return averageKpa;
  }

  /** Time without an engine pulse, ns, counted from the first tick while there never was one. */
  long silentNanos(long nowNanos, Signals signals) {
    return Math.min(signals.engine().age(nowNanos), nowNanos - startNanos);
  }
}
