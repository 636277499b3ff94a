package org.boostwright.core.upkeep;

import java.util.List;
import org.boostwright.core.bench.proof.DamagedProofException;
import org.boostwright.core.bench.proof.Seal;
import org.boostwright.core.ladder.Entry;

/**
 * What was counted since a date.
 *
 * @param since when counting began, ISO 8601; not empty
 * @param starts engine starts
 * @param engineSeconds engine running, s
 * @param drivenSeconds valve driven, on the bench too, s
 * @param valveCycles strokes of the valve: periods with the coil neither off nor held throughout
 */
public record OperatingHours(
    String since, long starts, double engineSeconds, double drivenSeconds, double valveCycles) {
  private static final String FIRST = "boostwright hours 1";

  /** Refuses what cannot have been counted. */
  public OperatingHours {
    boolean plain = !since.isEmpty() && Entry.plain(since);
    boolean counted =
        starts >= 0
            && engineSeconds >= 0
            && engineSeconds < Double.POSITIVE_INFINITY
            && drivenSeconds >= 0
            && drivenSeconds < Double.POSITIVE_INFINITY
            && valveCycles >= 0
            && valveCycles < Double.POSITIVE_INFINITY;
    if (!plain || !counted) {
      throw new IllegalArgumentException("hours are counted from 0 on and since a date");
    }
  }

  /** Nothing counted yet. */
  public static OperatingHours from(String since) {
    return new OperatingHours(since, 0, 0.0, 0.0, 0.0);
  }

  /** These and what was counted later. */
  public OperatingHours plus(OperatingHours later) {
    return new OperatingHours(
        since,
        starts + later.starts,
        engineSeconds + later.engineSeconds,
        drivenSeconds + later.drivenSeconds,
        valveCycles + later.valveCycles);
  }

  /** The written form, with a {@link Seal} that finds every changed bit. */
  public String text() {
    StringBuilder text = new StringBuilder(FIRST).append('\n');
    Seal.line(text, "since", since);
    Seal.line(text, "starts", Long.toString(starts));
    Seal.line(text, "engine_s", Double.toString(engineSeconds));
    Seal.line(text, "driven_s", Double.toString(drivenSeconds));
    Seal.line(text, "valve_cycles", Double.toString(valveCycles));
    return Seal.put(text.toString());
  }

  /**
   * Reads {@link #text}.
   *
   * @throws DamagedProofException when it was changed or is not whole
   */
  public static OperatingHours read(String text) throws DamagedProofException {
    List<String> lines = Seal.lines(text, FIRST);
    try {
      return new OperatingHours(
          field(lines, 0, "since"),
          Long.parseLong(field(lines, 1, "starts")),
          Double.parseDouble(field(lines, 2, "engine_s")),
          Double.parseDouble(field(lines, 3, "driven_s")),
          Double.parseDouble(field(lines, 4, "valve_cycles")));
    } catch (IllegalArgumentException | IndexOutOfBoundsException e) {
      throw new DamagedProofException("a line of it is not understood");
    }
  }

  private static String field(List<String> lines, int at, String name) {
    String[] f = lines.get(at).split("\t", -1);
    if (f.length != 2 || !f[0].equals(name)) {
      throw new IllegalArgumentException(name);
    }
    return f[1];
  }
}
