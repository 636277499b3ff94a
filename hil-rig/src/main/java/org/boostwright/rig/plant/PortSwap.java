package org.boostwright.rig.plant;

/**
 * Two hoses exchanged at the three-port valve.
 *
 * <p>The valve joins its ports S and A at rest and A and V when energised, whatever is plugged in.
 */
public enum PortSwap {
  /** Plumbed as it should be. */
  NONE(Joined.SUPPLY_ACTUATOR, Joined.ACTUATOR_VENT),
  /** Rest looks right; energised vents the supply and traps the actuator. */
  SUPPLY_WITH_ACTUATOR(Joined.SUPPLY_ACTUATOR, Joined.SUPPLY_VENT),
  /** Rest vents the supply and traps the actuator: the wastegate never opens. */
  ACTUATOR_WITH_VENT(Joined.SUPPLY_VENT, Joined.ACTUATOR_VENT),
  /** Rest vents the actuator, energised feeds it: more duty means less boost. */
  SUPPLY_WITH_VENT(Joined.ACTUATOR_VENT, Joined.SUPPLY_ACTUATOR);

  /** The two hoses that one spool position joins. */
  enum Joined {
    SUPPLY_ACTUATOR,
    ACTUATOR_VENT,
    SUPPLY_VENT
  }

  private final Joined atRest;
  private final Joined energised;

  PortSwap(Joined atRest, Joined energised) {
    this.atRest = atRest;
    this.energised = energised;
  }

  Joined joined(boolean spoolEnergised) {
    return spoolEnergised ? energised : atRest;
  }
}
