package org.boostwright.rig.link;

import java.util.EnumSet;
import java.util.Set;
import org.boostwright.core.monitor.FaultCode;

/**
 * One fault to inject, and what must happen.
 *
 * @param id stable name, its row in the fault list first
 * @param text what it is, for people
 * @param start how the car stands before it
 * @param place where the fault sits: decides from when its time runs
 * @param reaction what has to come of it
 * @param withinMillis longest time from the fault taking effect at the controller's wire to the
 *     reaction, ms; NaN where no time is laid down
 * @param expected faults of which at least one must be reported; empty where the controller cannot
 *     or need not report anything
 * @param alsoAllowed faults that cannot be told apart from it, or follow from it
 * @param inject brings it about
 * @param effect proof that it has taken effect
 * @param clear takes it back
 */
record FaultCase(
    String id,
    String text,
    Start start,
    Place place,
    Reaction reaction,
    double withinMillis,
    Set<FaultCode> expected,
    Set<FaultCode> alsoAllowed,
    Step inject,
    Effect effect,
    Step clear) {

  /** How the car stands before a fault. */
  enum Start {
    /** Full throttle, the controller holds boost. */
    BOOST,
    /** Key on, engine stopped and known to be. */
    STOPPED
  }

  /** Where a fault sits. */
  enum Place {
    /** In the car: from the controller's receiving the first frame that shows it. */
    CAR,
    /** On the serial line: from the controller's receiving the last frame before it. */
    LINE,
    /** In the controller's program: from the signal, or its very last tick if that is later. */
    PROGRAM
  }

  /** What has to come of a fault. */
  enum Reaction {
    /** Duty 0, channel disabled and coil supply open, as the frames say. */
    REST,
    /** The heartbeat gate has opened the coil supply, whatever the frames say or do not say. */
    SUPPLY_OPEN,
    /** Reported, and control goes on with a substitute. */
    REPORTED,
    /** Nothing: no fault, and control goes on. */
    NOTHING,
    /** The controller never leaves rest. */
    NEVER_READY
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

  private static final FaultCode[] CODES = FaultCode.values();

  /** Starts the description of a fault that must lead to rest from boost; see the other methods. */
  static FaultCase of(String id, String text) {
    return new FaultCase(
        id,
        text,
        Start.BOOST,
        Place.CAR,
        Reaction.REST,
        Double.NaN,
        codes(),
        codes(),
        b -> {},
        b -> false,
        b -> {});
  }

  FaultCase from(Start newStart) {
    return new FaultCase(
        id, text, newStart, place, reaction, withinMillis, expected, alsoAllowed, inject, effect,
        clear);
  }

  FaultCase at(Place newPlace) {
    return new FaultCase(
        id, text, start, newPlace, reaction, withinMillis, expected, alsoAllowed, inject, effect,
        clear);
  }

  FaultCase must(Reaction newReaction) {
    return new FaultCase(
        id, text, start, place, newReaction, withinMillis, expected, alsoAllowed, inject, effect,
        clear);
  }

  FaultCase within(double millis) {
    return new FaultCase(
        id, text, start, place, reaction, millis, expected, alsoAllowed, inject, effect, clear);
  }

  FaultCase reports(FaultCode... codes) {
    return new FaultCase(
        id, text, start, place, reaction, withinMillis, codes(codes), alsoAllowed, inject, effect,
        clear);
  }

  FaultCase mayReport(FaultCode... codes) {
    return new FaultCase(
        id, text, start, place, reaction, withinMillis, expected, codes(codes), inject, effect,
        clear);
  }

  FaultCase injected(Step by, Effect shownBy) {
    return new FaultCase(
        id, text, start, place, reaction, withinMillis, expected, alsoAllowed, by, shownBy, clear);
  }

  FaultCase cleared(Step by) {
    return new FaultCase(
        id, text, start, place, reaction, withinMillis, expected, alsoAllowed, inject, effect, by);
  }

  /** True when the fault is in force for a while and nothing is waited for. */
  boolean watched() {
    return reaction == Reaction.NOTHING || reaction == Reaction.NEVER_READY;
  }

  /** Bits of the faults that may be reported. */
  long allowedBits() {
    return bits(expected) | bits(alsoAllowed);
  }

  /** True when one of the expected faults is among these bits, or none is expected. */
  boolean reportedIn(long bits) {
    return expected.isEmpty() || (bits & bits(expected)) != 0L;
  }

  private static long bits(Set<FaultCode> set) {
    long bits = 0L;
    for (FaultCode code : CODES) {
      bits |= set.contains(code) ? code.bit() : 0L;
    }
    return bits;
  }
}
