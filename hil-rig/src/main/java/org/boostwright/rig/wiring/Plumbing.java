package org.boostwright.rig.wiring;

import java.util.EnumSet;
import java.util.List;
import java.util.Set;

/**
 * The pneumatic side: which hose joins what, and which ports the valve joins in each of its two
 * positions. At rest the actuator sees boost.
 */
public final class Plumbing {
  /** Ports of the valve. */
  public enum Port {
    SUPPLY,
    ACTUATOR,
    VENT
  }

  /** Positions of the valve. */
  public enum Position {
    REST("At rest: coil off", EnumSet.of(Port.SUPPLY, Port.ACTUATOR)),
    ENERGISED("Energised: coil on", EnumSet.of(Port.ACTUATOR, Port.VENT));

    private final String words;
    private final Set<Port> joined;

    Position(String words, Set<Port> joined) {
      this.words = words;
      this.joined = joined;
    }

    /** For a caption. */
    public String words() {
      return words;
    }

    /** The two ports that are joined; the third is shut. */
    public Set<Port> joined() {
      return joined;
    }
  }

  /**
   * A hose.
   *
   * @param port valve port at one end
   * @param other what is at the other end
   * @param text bore, length, care
   */
  public record Hose(Port port, String other, String text) {}

  /** The three hoses of the valve. */
  public static final List<Hose> HOSES =
      List.of(
          new Hose(Port.SUPPLY, "compressor outlet", "4 mm bore, clamped at both ends"),
          new Hose(Port.ACTUATOR, "actuator", "4 mm bore, at most 0.5 m, clamped"),
          new Hose(
              Port.VENT, "intake before the compressor", "behind the air filter, never blocked"));

  private Plumbing() {}

  /** True when air flows in this hose. */
  public static boolean flows(Hose hose, Position position) {
    return position.joined().contains(hose.port());
  }
}
