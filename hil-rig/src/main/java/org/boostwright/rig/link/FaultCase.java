package org.boostwright.rig.link;

import java.util.EnumSet;
import java.util.Set;
import org.boostwright.core.monitor.FaultCode;

/**
 * One fault to inject at boost, and what must happen.
 *
 * @param id stable name, its row in the fault list first
 * @param text what it is, for people
 * @param reaction what has to come of it
 * @param withinMillis longest time from the fault taking effect at sensor or wire to the reaction,
 *     ms; NaN where no time is laid down
 * @param expected faults of which at least one must be reported; empty where the controller cannot
 *     report anything any more
 * @param alsoAllowed faults that cannot be told apart from it, or follow from it
 * @param inject brings it about
 * @param effect proof that it has taken effect
 * @param clear takes it back
 */
record FaultCase(
    String id,
    String text,
    Reaction reaction,
    double withinMillis,
    Set<FaultCode> expected,
    Set<FaultCode> alsoAllowed,
    Step inject,
    Effect effect,
    Step clear) {

  /** What has to come of a fault. */
  enum Reaction {
    /** Duty 0, channel disabled and coil supply open, as the frames say. */
    REST,
    /** The heartbeat gate has opened the coil supply, whatever the frames say or do not say. */
    SUPPLY_OPEN,
    /** Reported, and the rest goes on with a substitute. */
    REPORTED
  }

  /** Something done to the bench. */
  interface Step {
    void run(FaultBench bench) throws Exception;
  }

  /** Whether something is so on the bench. */
  interface Effect {
    boolean shown(FaultBench bench);
  }

  static Set<FaultCode> codes(FaultCode... codes) {
    Set<FaultCode> set = EnumSet.noneOf(FaultCode.class);
    for (FaultCode code : codes) {
      set.add(code);
    }
    return set;
  }

  /** Bits of the faults that may be reported. */
  long allowedBits() {
    long bits = 0L;
    for (FaultCode code : expected) {
      bits |= code.bit();
    }
    for (FaultCode code : alsoAllowed) {
      bits |= code.bit();
    }
    return bits;
  }

  /** True when one of the expected faults is among these bits. */
  boolean reportedIn(long bits) {
    if (expected.isEmpty()) {
      return true;
    }
    for (FaultCode code : expected) {
      if ((bits & code.bit()) != 0L) {
        return true;
      }
    }
    return false;
  }
}
