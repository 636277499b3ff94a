package org.boostwright.pi.io;

import java.io.IOException;
import org.boostwright.core.Outputs;
import org.jspecify.annotations.Nullable;

/**
 * PWM channel, coil supply and heartbeat: everything that acts through the coil.
 *
 * <p>Rest means duty 0, channel disabled, coil supply low and no more heartbeat edges, all in the
 * same tick. The heartbeat line alternates; a level that stays, high or low, opens the coil supply
 * without any help from software.
 */
final class PiCoil implements AutoCloseable {
  private final SysfsPwm pwm;
  private final OutputLine heartbeat;
  private final @Nullable OutputLine supply;
  private boolean level;
  private boolean supplyHigh;
  private boolean closed;

  /**
   * @param supply second condition of the coil supply; null where only the heartbeat holds it
   */
  PiCoil(SysfsPwm pwm, OutputLine heartbeat, @Nullable OutputLine supply) {
    this.pwm = pwm;
    this.heartbeat = heartbeat;
    this.supply = supply;
  }

  /** Takes over commands and reads them back; anything that fails is rest and false. */
  synchronized boolean apply(Outputs outputs) {
    boolean on = !closed && outputs.pwmEnabled && outputs.coilSupplyClosed;
    try {
      if (on) {
        pwm.setDuty(outputs.dutyFraction);
        pwm.enable();
      } else {
        pwm.off();
      }
      setSupply(on);
      if (pwm.verified()
          && heartbeat.get() == level
          && (supply == null || supply.get() == supplyHigh)) {
        return true;
      }
    } catch (IOException e) {
      // As an output that reads back wrong: rest.
    }
    rest();
    return false;
  }

  private void setSupply(boolean high) throws IOException {
    if (supply != null && supplyHigh != high) {
      supply.set(high);
      supplyHigh = high;
    }
  }

  /** One edge. */
  synchronized void beat() {
    if (closed) {
      return;
    }
    try {
      heartbeat.set(!level);
      level = !level;
    } catch (IOException e) {
      // No edge, no coil supply: that is all this line can do wrong.
    }
  }

  /** Another PWM frequency; from rest to rest. */
  synchronized boolean setHz(double hz) {
    try {
      pwm.off();
      if (!(Math.abs(pwm.hz() - hz) <= 0.01)) {
        pwm.setPeriod(hz);
      }
      return true;
    } catch (IOException e) {
      rest();
      return false;
    }
  }

  /** Off by every means, whatever was believed before. */
  synchronized void rest() {
    try {
      pwm.writeOff();
    } catch (IOException e) {
      // The supply and the missing heartbeat do it alone.
    }
    try {
      if (supply != null) {
        supply.set(false);
        supplyHigh = false;
      }
    } catch (IOException e) {
      // No heartbeat follows a rest; the supply opens by itself.
    }
  }

  @Override
  public synchronized void close() {
    closed = true;
    rest();
    pwm.close();
    if (supply != null) {
      supply.close();
    }
    heartbeat.close();
  }
}
