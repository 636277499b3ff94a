package org.boostwright.core.monitor;

import org.boostwright.core.settings.MapLocation;
import org.boostwright.core.settings.SensorSettings;

/**
 * Whether the pressure sensor has shown life since the engine started.
 *
 * <p>Where it sees vacuum: a fall below ambient. Elsewhere a rise above ambient that follows what
 * makes pressure: a throttle (or pedal) that opened by {@value #BLIP_PCT} points, or the engine's
 * start, within the last {@value #WINDOW_SECONDS} to 6 s. The rise has to show against the lowest
 * reading of that time too, so that an ambient pressure that is wrong by then, as after a long
 * descent, is no life. A sensor whose hose is off shows ambient and no life in either place.
 */
public final class LifeWatch {
  /** A throttle that opens by this much is followed by pressure, points of percent. */
  static final double BLIP_PCT = 15.0;

  /** Lowest readings are kept for one to two of these, s. */
  static final double WINDOW_SECONDS = 3.0;

  private static final long WINDOW_NANOS = (long) (WINDOW_SECONDS * 1e9);

  private final boolean expectsFall;
  private final double changeKpa;
  private final Lowest pressure = new Lowest();
  private final Lowest throttle = new Lowest();
  private boolean shown;
  private boolean ran;
  private boolean started;
  private long startedNanos;
  private boolean windowOpen;
  private long windowNanos;

  /** The lowest of this window and of the one before; NaN while there was none. */
  private static final class Lowest {
    private double before = Double.NaN;
    private double now = Double.NaN;

    void turn() {
      before = now;
      now = Double.NaN;
    }

    void add(double value) {
      if (value < now || Double.isNaN(now)) {
        now = value;
      }
    }

    double least() {
      return before < now || Double.isNaN(now) ? before : now;
    }
  }

  /** Has seen nothing. */
  public LifeWatch(SensorSettings sensors) {
    expectsFall = sensors.mapLocation() == MapLocation.INTAKE_MANIFOLD;
    changeKpa = sensors.lifeChangeKpa();
  }

  /**
   * Judges one valid sample.
   *
   * @param stopped engine known to be stopped: life has to be shown anew
   * @param running engine runs
   * @param throttlePct throttle, or the pedal where it is the demand, percent; NaN while unknown
   */
  public void update(
      long nowNanos,
      boolean stopped,
      boolean running,
      double mapKpaAbs,
      double ambientKpaAbs,
      double throttlePct) {
    boolean follows = expectsFall || follows(nowNanos, running, mapKpaAbs, throttlePct);
    if (stopped) {
      shown = false;
    } else if (running && follows) {
      double change = expectsFall ? ambientKpaAbs - mapKpaAbs : mapKpaAbs - ambientKpaAbs;
      if (change >= changeKpa) {
        shown = true;
      }
    }
  }

  private boolean follows(long nowNanos, boolean running, double kpa, double throttlePct) {
    if (!windowOpen || nowNanos - windowNanos >= WINDOW_NANOS) {
      windowOpen = true;
      windowNanos = nowNanos;
      pressure.turn();
      throttle.turn();
    }
    pressure.add(kpa);
    throttle.add(throttlePct);
    if (running && !ran) {
      started = true;
      startedNanos = nowNanos;
    }
    ran = running;
    started = started && nowNanos - startedNanos <= WINDOW_NANOS;
    boolean blip = throttlePct - throttle.least() >= BLIP_PCT;
    return (blip || started) && kpa - pressure.least() >= changeKpa;
  }

  /** Life has to be shown anew. */
  void forget() {
    shown = false;
  }

  /** True once life was shown since the engine started. */
  public boolean shown() {
    return shown;
  }
}
