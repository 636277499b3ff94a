package org.boostwright.rig.wiring.spice;

import java.io.IOException;
import java.util.List;
import java.util.Map;
import org.boostwright.rig.wiring.spice.Demand.Outcome;

/**
 * A deck and what it must show.
 *
 * @param id file name of the deck
 * @param title what is simulated
 * @param deck complete input for ngspice
 * @param demands what it must show
 */
public record Simulation(String id, String title, String deck, List<Demand> demands) {
  /** Runs the deck and judges every demand. */
  public List<Outcome> run() throws IOException {
    Map<String, List<Double>> printed = NgSpice.run(deck);
    return demands.stream().map(demand -> demand.judge(printed)).toList();
  }
}
