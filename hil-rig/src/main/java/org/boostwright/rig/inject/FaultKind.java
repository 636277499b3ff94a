package org.boostwright.rig.inject;

import java.util.EnumSet;
import java.util.Locale;
import java.util.Set;
import org.boostwright.core.monitor.FaultCode;

/**
 * One way a car can go wrong, as data.
 *
 * @param id stable name, its row of the fault list first, for example {@code s1_map_open}
 * @param row row of the fault list
 * @param words what it is, for people
 * @param amount how much of it
 * @param site where it shows first
 * @param stoppable whether the coil can keep the pressure down meanwhile
 * @param restWithinSeconds longest time laid down from taking effect to the coil without current,
 *     s; NaN = none
 * @param onlyUnderBoost the time holds only where boost was controlled in the moment of the fault
 * @param momentary over as soon as it has happened
 * @param reports faults of which at least one is the right report; empty = nothing need be reported
 * @param allows further faults that follow from it or cannot be told apart from it
 * @param on brings it about
 * @param off takes it back
 */
public record FaultKind(
    String id,
    String row,
    String words,
    Amount amount,
    Site site,
    Stoppable stoppable,
    double restWithinSeconds,
    boolean onlyUnderBoost,
    boolean momentary,
    Set<FaultCode> reports,
    Set<FaultCode> allows,
    On on,
    Off off) {

  /** Brings a fault about. */
  public interface On {
    /**
     * @param at the car it is done to
     * @param amount how much, in the unit of {@link FaultKind#amount}
     */
    void set(FaultyRun at, double amount);
  }

  /** Takes a fault back. */
  public interface Off {
    void clear(FaultyRun at);
  }

  /** True when the full rule for unsafe runs holds while this fault stands. */
  public boolean controllable() {
    return stoppable != Stoppable.ONLY_BY_ENGINE_CUT;
  }

  /** Bits of every fault that may be reported. */
  public long allowedBits() {
    return bits(reports) | bits(allows);
  }

  private static long bits(Set<FaultCode> codes) {
    long bits = 0L;
    for (FaultCode code : codes) {
      bits |= code.bit();
    }
    return bits;
  }

  /** Begins the description of a fault that rests and shows at {@code site}. */
  static Builder of(String id, String words, Site site) {
    return new Builder(id, words, site);
  }

  /** Collects a fault; everything not said is the mildest: no number, no time, no report. */
  static final class Builder {
    private final String id;
    private final String words;
    private final Site site;
    private Amount amount = Amount.NONE;
    private Stoppable stoppable = Stoppable.BY_REST;
    private double restWithinSeconds = Double.NaN;
    private boolean onlyUnderBoost;
    private boolean momentary;
    private final Set<FaultCode> reports = EnumSet.noneOf(FaultCode.class);
    private final Set<FaultCode> allows = EnumSet.noneOf(FaultCode.class);

    private Builder(String id, String words, Site site) {
      this.id = id;
      this.words = words;
      this.site = site;
    }

    Builder amount(String what, String unit, double low, double high, double usual) {
      amount = new Amount(what, unit, low, high, usual);
      return this;
    }

    Builder restWithin(double seconds) {
      restWithinSeconds = seconds;
      return this;
    }

    Builder onlyUnderBoost() {
      onlyUnderBoost = true;
      return this;
    }

    Builder momentary() {
      momentary = true;
      return this;
    }

    Builder stoppable(Stoppable how) {
      stoppable = how;
      return this;
    }

    Builder reports(FaultCode... codes) {
      reports.addAll(Set.of(codes));
      return this;
    }

    Builder allows(FaultCode... codes) {
      allows.addAll(Set.of(codes));
      return this;
    }

    FaultKind done(On on, Off off) {
      String row = id.substring(0, id.indexOf('_')).toUpperCase(Locale.ROOT);
      return new FaultKind(
          id,
          row,
          words,
          amount,
          site,
          stoppable,
          restWithinSeconds,
          onlyUnderBoost,
          momentary,
          Set.copyOf(reports),
          Set.copyOf(allows),
          on,
          off);
    }
  }
}
