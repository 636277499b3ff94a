package org.boostwright.rig.link;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.boostwright.core.Controller;
import org.boostwright.core.monitor.FaultCode;
import org.boostwright.rig.link.CaseOutcome.Verdict;
import org.boostwright.rig.link.FaultCase.Place;
import org.boostwright.rig.link.FaultCase.Reaction;
import org.boostwright.rig.link.FaultCase.Start;

/**
 * Judges what was seen of a fault case.
 *
 * <p>A measurement that the machine has disturbed proves nothing. It is called invalid, and only
 * where two things hold: the line or the rig was itself so late that the controller had to find its
 * samples old (or its own ticks late, where the rig's were too), and nothing else is wrong.
 */
final class CaseJudge {
  private static final double TICK_MILLIS = Controller.TICK_NANOS * 1e-6;

  private static final long STALE_BITS =
      FaultCode.MAP_STALE.bit()
          | FaultCode.THROTTLE_STALE.bit()
          | FaultCode.SUPPLY_SIGNAL.bit()
          | FaultCode.INTAKE_AIR_SIGNAL.bit();

  private final double staleMillis;

  /**
   * @param mapRefreshMillis declared time between pressure samples, ms
   */
  CaseJudge(double mapRefreshMillis) {
    staleMillis = 3.0 * mapRefreshMillis;
  }

  /**
   * What was measured of a case.
   *
   * @param effect the fault was shown to have taken effect
   * @param reacted what must come of it came
   * @param millis when, ms; NaN where no time is laid down or nothing came
   * @param faults faults reported, as bits
   * @param rested the controller went to rest
   * @param lineMillis how late the line was by itself, ms
   * @param rigMillis how late the rig's own ticks were, ms
   * @param peakKpaAbs highest true manifold pressure, kPa absolute
   */
  record Seen(
      boolean effect,
      boolean reacted,
      double millis,
      long faults,
      boolean rested,
      double lineMillis,
      double rigMillis,
      double peakKpaAbs) {

    /** The same with the reaction's time as it stood when it came. */
    Seen at(double reactionMillis) {
      return new Seen(
          effect, reacted, reactionMillis, faults, rested, lineMillis, rigMillis, peakKpaAbs);
    }
  }

  /** The verdict. */
  CaseOutcome judge(FaultCase fault, Seen seen) {
    List<String> wrong = new ArrayList<>();
    boolean late = false;
    if (!seen.reacted()) {
      wrong.add(fault.watched() ? "did not go on as before" : "no reaction");
    } else if (!Double.isNaN(fault.withinMillis()) && !(seen.millis() <= fault.withinMillis())) {
      wrong.add("too late");
      // The controller is timed by its own stamps: only a machine that stood still excuses it.
      late = !(seen.millis() - seen.rigMillis() <= fault.withinMillis());
    }
    boolean reported = fault.reportedIn(seen.faults());
    long unrelated = seen.faults() & ~fault.allowedBits();
    if (!reported) {
      wrong.add("not reported");
    }
    if (unrelated != 0L) {
      wrong.add("an unrelated fault reported");
    }
    boolean goesOn = fault.reaction() == Reaction.REPORTED && fault.start() == Start.BOOST;
    if (goesOn && seen.rested()) {
      wrong.add("went to rest");
    }
    boolean disturbed = !late && disturbance(seen, unrelated);
    Verdict verdict =
        !seen.effect() || (!wrong.isEmpty() && disturbed)
            ? Verdict.INVALID
            : wrong.isEmpty() ? Verdict.PASSED : Verdict.FAILED;
    String words =
        !seen.effect()
            ? "the fault did not take effect"
            : wrong.isEmpty() ? "as it must be" : String.join(", ", wrong);
    return outcome(
        fault,
        verdict,
        seen,
        words
            + (verdict == Verdict.INVALID && seen.effect()
                ? String.format(
                    Locale.ROOT,
                    " while this machine held up the line by %.0f ms and the rig by %.0f ms",
                    seen.lineMillis(),
                    seen.rigMillis())
                : "")
            + "; faults: "
            + names(seen.faults()));
  }

  /** True when the lateness of line and rig alone may explain these faults. */
  private boolean disturbance(Seen seen, long unrelated) {
    boolean old = seen.lineMillis() >= staleMillis - 2.0 * TICK_MILLIS;
    boolean stood = seen.rigMillis() >= TICK_MILLIS;
    long explained = (old ? STALE_BITS : 0L) | (stood ? FaultCode.TICK_LATE.bit() : 0L);
    return (old || stood) && (unrelated & ~explained) == 0L;
  }

  /** A case that could not be run at all. */
  static CaseOutcome notRun(FaultCase fault, Seen seen, String words) {
    return outcome(fault, Verdict.INVALID, seen, words);
  }

  private static CaseOutcome outcome(FaultCase fault, Verdict verdict, Seen seen, String words) {
    return new CaseOutcome(
        fault.id(),
        fault.text(),
        verdict,
        seen.millis(),
        fault.withinMillis(),
        seen.peakKpaAbs(),
        Math.max(seen.lineMillis(), seen.rigMillis()),
        words);
  }

  /**
   * From when the fault's time runs, ns.
   *
   * @param injectedNanos when it was about to be injected
   */
  static long beginNanos(FaultCase fault, WireObserver observer, long injectedNanos) {
    return switch (fault.place()) {
      case CAR -> observer.faultReceived() ? observer.faultReceivedNanos() : injectedNanos;
      case LINE -> observer.soundReceivedNanos();
      case PROGRAM ->
          fault.reaction() == Reaction.SUPPLY_OPEN
              ? Math.max(injectedNanos, observer.lastTickNanos())
              : injectedNanos;
    };
  }

  /** How late the line was by itself since the case began, ms. */
  static double lineMillis(FaultCase fault, WireObserver observer) {
    // A fault of line or program is itself what makes frames old.
    long in = fault.place() == Place.CAR ? observer.longestHeldNanos() - Controller.TICK_NANOS : 0L;
    return Math.max(0L, Math.max(in, observer.longestOutNanos())) * 1e-6;
  }

  /** Ids of faults, for people. */
  static String names(long faults) {
    StringBuilder names = new StringBuilder();
    for (FaultCode code : FaultCode.values()) {
      if ((faults & code.bit()) != 0L) {
        names.append(names.length() == 0 ? "" : " ").append(code.id());
      }
    }
    return names.length() == 0 ? "none" : names.toString();
  }
}
