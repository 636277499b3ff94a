package org.boostwright.rig.scenario.fault;

import org.boostwright.core.monitor.FaultCode;

/** The reports that say nothing but that pressure was above the limit. */
final class Overboosts {
  static final long BITS =
      FaultCode.OVERBOOST.bit()
          | FaultCode.OVERBOOST_REPEATED.bit()
          | FaultCode.VALVE_NO_EFFECT.bit();

  private Overboosts() {}
}
