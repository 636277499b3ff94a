package org.boostwright.core.monitor;

import org.boostwright.core.settings.MapLocation;
import org.boostwright.core.settings.SensorSettings;

/**
 * Whether the pressure sensor has shown life since the engine started: a fall below ambient where
 * it sees vacuum, a rise above it elsewhere. A sensor whose hose is off shows ambient and no life.
 */
public final class LifeWatch {
  private final boolean expectsFall;
  private final double changeKpa;
  private boolean shown;

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
   */
  public void update(boolean stopped, boolean running, double mapKpaAbs, double ambientKpaAbs) {
    if (stopped) {
      shown = false;
    } else if (running) {
      double change = expectsFall ? ambientKpaAbs - mapKpaAbs : mapKpaAbs - ambientKpaAbs;
      if (change >= changeKpa) {
        shown = true;
      }
    }
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
