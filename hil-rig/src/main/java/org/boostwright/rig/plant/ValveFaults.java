package org.boostwright.rig.plant;

/**
 * What is wrong with valve, coil, driver, hoses and actuator chamber right now.
 *
 * <p>A plain holder: write any field at any moment, it acts from the next solver step. A new holder
 * means everything is sound.
 */
public final class ValveFaults {
  /** Where a spool hangs. */
  public enum Stuck {
    FREE,
    AT_REST,
    ENERGISED
  }

  /** Spool that no longer moves. */
  public Stuck stuck = Stuck.FREE;

  /** Both spool delays are multiplied by this; 1 = sound. */
  public double slowFactor = 1.0;

  /** Hoses exchanged at the valve. */
  public PortSwap portSwap = PortSwap.NONE;

  /** Open share of the supply hose and port, 1 = clear, 0 = blocked. */
  public double supplyOpen = 1.0;

  /** Open share of the actuator hose and port, 1 = clear, 0 = blocked. */
  public double actuatorOpen = 1.0;

  /** Open share of the vent, 1 = clear, 0 = blocked. */
  public double ventOpen = 1.0;

  /** Sonic conductance of a leak from the chamber to ambient, m3/(s Pa). */
  public double leakConductance;

  /** Hose off the supply: the valve sees ambient there and the nipple blows off. */
  public boolean supplyHoseOff;

  /** Hose off the actuator: the chamber sees ambient and the valve feeds open air. */
  public boolean actuatorHoseOff;

  /** Coil or its wire broken: no current. */
  public boolean coilOpen;

  /** Coil shorted: current without magnetic force. */
  public boolean coilShort;

  /** Low-side driver conducts always: the coil is on whenever its supply is closed. */
  public boolean driverStuckOn;

  /** Coil supply switch welded: closed whatever is commanded. */
  public boolean supplySwitchStuckClosed;

  /** Back to sound. */
  public void clear() {
    stuck = Stuck.FREE;
    slowFactor = 1.0;
    portSwap = PortSwap.NONE;
    supplyOpen = 1.0;
    actuatorOpen = 1.0;
    ventOpen = 1.0;
    leakConductance = 0.0;
    supplyHoseOff = false;
    actuatorHoseOff = false;
    coilOpen = false;
    coilShort = false;
    driverStuckOn = false;
    supplySwitchStuckClosed = false;
  }
}
