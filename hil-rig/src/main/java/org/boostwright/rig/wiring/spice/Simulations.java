package org.boostwright.rig.wiring.spice;

import java.util.ArrayList;
import java.util.List;
import org.boostwright.rig.wiring.Circuit;

/** Every simulation of the circuit. */
public final class Simulations {
  private Simulations() {}

  /** All decks for a circuit, in the order of their requirements. */
  public static List<Simulation> all(Circuit c) {
    List<Simulation> all = new ArrayList<>(GateSimulations.all(c));
    all.addAll(CoilSimulations.all(c));
    all.addAll(SupplySimulations.all(c));
    all.addAll(InputSimulations.all(c));
    all.addAll(SensorFaultSimulations.all(c));
    all.addAll(PulseSimulations.all(c));
    return List.copyOf(all);
  }
}
