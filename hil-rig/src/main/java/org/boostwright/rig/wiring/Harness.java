package org.boostwright.rig.wiring;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;

/**
 * Every wire that leaves the box. Which net a pin carries is not said here: it is the net of the
 * terminal of that name on the sheets.
 */
public final class Harness {
  /**
   * One wire.
   *
   * @param pin terminal on the box, {@code J2.3}
   * @param device what it goes to
   * @param devicePin pin or wire there
   * @param squareMillimetres copper
   * @param colour insulation, as a suggestion
   * @param inline designator of a part in the wire, empty for none
   * @param remark screen, twist, option
   */
  public record Run(
      String pin,
      String device,
      String devicePin,
      double squareMillimetres,
      String colour,
      String inline,
      String remark) {}

  private static final String BATTERY = "Battery, key-switched";
  private static final String VALVE = "Boost valve Y201";
  private static final String SWITCH = "Spring-only switch S101";
  private static final String MAP = "Pressure sensor";
  private static final String THROTTLE = "Throttle sensor";
  private static final String AIR = "Intake-air sensor";
  private static final String IGNITION = "Ignition coil (instead of tach)";
  private static final String PERMIT = "Permit device (or a link)";
  private static final String CUT = "Engine computer's cut input (optional)";
  private static final String LAMP = "Warning lamp D1041";
  private static final String TAPS = "Car's own sensors (optional)";

  /** All wires in the order of the connectors. */
  public static final List<Run> RUNS =
      List.of(
          new Run("J1.1", BATTERY, "+", 1.5, "red", "F101", "fuse within 20 cm of the battery"),
          new Run("J1.2", BATTERY, "-", 1.5, "black", "", "to the battery, not to the body"),
          new Run("J1.3", VALVE, "1", 0.75, "red/white", "", "twisted"),
          new Run("J1.4", VALVE, "2", 0.75, "blue", "", "twisted"),
          new Run("J1.5", SWITCH, "1", 0.75, "orange", "", ""),
          new Run("J1.6", SWITCH, "2", 0.75, "orange/black", "", ""),
          new Run("J2.1", MAP, "5 V", 0.5, "yellow", "", "screened"),
          new Run("J2.2", MAP, "ground", 0.5, "brown", "", "screened"),
          new Run("J2.3", MAP, "signal", 0.5, "green", "", "screened"),
          new Run("J2.1", THROTTLE, "5 V", 0.5, "yellow", "", "splice"),
          new Run("J2.2", THROTTLE, "ground", 0.5, "brown", "", "splice"),
          new Run("J2.4", THROTTLE, "wiper", 0.5, "white", "", ""),
          new Run("J2.5", AIR, "1", 0.5, "grey", "", ""),
          new Run("J2.2", AIR, "2", 0.5, "brown", "", "splice"),
          new Run("J3.1", "Tach output", "signal", 0.5, "violet", "", ""),
          new Run("J3.2", IGNITION, "negative", 0.5, "violet", "", "400 V: keep apart"),
          new Run("J3.3", IGNITION, "engine block", 0.5, "black", "", "400 V: keep apart"),
          new Run("J3.4", "Road-speed sensor (optional)", "signal", 0.5, "pink", "", ""),
          new Run("J3.5", "Ignition key", "12 V, key on", 0.5, "red", "", "fused 1 A in the car"),
          new Run("J3.6", "Boost selector (optional)", "12 V = high", 0.5, "green/red", "", ""),
          new Run("J3.7", PERMIT, "contact", 0.5, "blue/red", "", "open = rest"),
          new Run("J3.8", PERMIT, "contact", 0.5, "black", "", ""),
          new Run("J3.9", CUT, "cut", 0.5, "white/red", "", "contact, no potential"),
          new Run("J3.10", CUT, "ground", 0.5, "white/black", "", "contact, no potential"),
          new Run("J3.11", LAMP, "+", 0.5, "red", "", ""),
          new Run("J3.12", LAMP, "-", 0.5, "blue", "", ""),
          new Run("J4.1", TAPS, "pressure", 0.5, "green", "", "screened"),
          new Run("J4.2", TAPS, "throttle", 0.5, "white", "", "screened"),
          new Run("J4.3", TAPS, "sensor ground", 0.5, "brown", "", "at the computer's plug"));

  private Harness() {}

  /** Net of every terminal on a connector of the box. */
  public static Map<String, String> nets(Circuit circuit) {
    Map<String, String> nets = new TreeMap<>();
    for (Block block : circuit.fitted()) {
      for (Part part : block.parts()) {
        if (part.symbol() == Symbol.TERMINAL && part.ref().startsWith("J")) {
          nets.put(part.ref(), part.net("1"));
        }
      }
    }
    return nets;
  }

  /** What is wrong between harness and sheets; empty when they agree. */
  public static List<String> problems(Circuit circuit) {
    List<String> problems = new ArrayList<>();
    Map<String, String> nets = nets(circuit);
    for (Run run : RUNS) {
      if (!nets.containsKey(run.pin())) {
        problems.add(run.pin() + " of the harness stands on no sheet");
      }
      if (!run.inline().isEmpty()
          && circuit.fitted().stream().noneMatch(block -> block.has(run.inline()))) {
        problems.add(run.inline() + " in the harness stands on no sheet");
      }
    }
    for (String pin : nets.keySet()) {
      if (RUNS.stream().noneMatch(run -> run.pin().equals(pin))) {
        problems.add(pin + " has no wire in the harness");
      }
    }
    return problems;
  }
}
