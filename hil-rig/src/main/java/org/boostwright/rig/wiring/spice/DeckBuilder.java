package org.boostwright.rig.wiring.spice;

import java.util.ArrayList;
import java.util.List;
import org.boostwright.rig.wiring.Circuit;

/** Puts a deck together: sheets, what surrounds them, analyses, demands. */
final class DeckBuilder {
  private final String id;
  private final String title;
  private final StringBuilder elements = new StringBuilder();
  private final StringBuilder control = new StringBuilder();
  private final List<Demand> demands = new ArrayList<>();

  DeckBuilder(String id, String title) {
    this.id = id;
    this.title = title;
  }

  /** Adds sheets of the circuit. */
  DeckBuilder sheets(Circuit circuit, String... ids) {
    for (String sheet : ids) {
      elements.append(Netlist.lines(circuit.block(sheet), circuit.settings()));
    }
    return this;
  }

  /** Adds element lines: sources, loads, faults. */
  DeckBuilder add(String lines) {
    elements.append(lines.stripIndent().strip()).append('\n');
    return this;
  }

  /** Adds commands. */
  DeckBuilder run(String lines) {
    control.append(lines.stripIndent().strip()).append('\n');
    return this;
  }

  /** Asks for one printed value. */
  DeckBuilder demand(
      String requirement,
      String measure,
      String text,
      String unit,
      double scale,
      double low,
      double high) {
    return demand(requirement, measure, text, unit, scale, low, high, 1);
  }

  /** Asks for a printed value of each of several runs. */
  DeckBuilder demand(
      String requirement,
      String measure,
      String text,
      String unit,
      double scale,
      double low,
      double high,
      int runs) {
    demands.add(new Demand(requirement, measure, text, unit, scale, low, high, runs));
    return this;
  }

  Simulation build() {
    String deck =
        "* "
            + title
            + "\n* Generated from the circuit description. Run: ngspice -b "
            + id
            + ".cir\n"
            + SpiceModels.LIBRARY
            + elements
            + ".options noacct\n.control\n"
            + control
            + "quit\n.endc\n.end\n";
    return new Simulation(id, title, deck, List.copyOf(demands));
  }
}
