package org.boostwright.rig.wiring.spice;

import java.util.List;
import java.util.Map;
import org.boostwright.rig.wiring.spice.Demand.Outcome;

/** Writes the results of all simulations as a page. */
public final class ResultsPage {
  private ResultsPage() {}

  /** The page. */
  public static String of(Map<Simulation, List<Outcome>> results) {
    StringBuilder page =
        new StringBuilder(
            """
            # Results of the circuit's simulations

            Written by `./boostwright wiring --write`: ngspice on the decks in [wiring/sim](../wiring/sim), which are generated from the circuit description. Each deck runs on its own: `ngspice -b wiring/sim/NAME.cir`. A test runs them all again and compares.

            The models are generic ones with the numbers of the parts list, not those of any maker. A simulation says that the values are right; it does not say that the board was soldered right: measure, see [wiring/README.md](../wiring/README.md).

            Not simulated: electromagnetic disturbance, vibration, water, contact wear, a relay contact that welds.

            """);
    Requirements.ALL.forEach(
        (id, words) -> {
          page.append("## ").append(id).append("\n\n").append(words).append("\n\n");
          page.append("| measured | value | limit | verdict | deck |\n|---|---|---|---|---|\n");
          results.forEach((simulation, outcomes) -> rows(page, id, simulation, outcomes));
          page.append('\n');
        });
    return page.toString().stripTrailing() + "\n";
  }

  private static void rows(
      StringBuilder page, String id, Simulation simulation, List<Outcome> outcomes) {
    for (Outcome outcome : outcomes) {
      Demand demand = outcome.demand();
      if (demand.requirement().equals(id)) {
        String unit = demand.unit().isEmpty() ? "" : " " + demand.unit();
        String runs = demand.runs() > 1 ? " (" + demand.runs() + " runs)" : "";
        page.append("| ")
            .append(demand.text())
            .append(runs)
            .append(" | ")
            .append(outcome.seen())
            .append(unit)
            .append(" | ")
            .append(demand.limits())
            .append(unit)
            .append(" | ")
            .append(outcome.verdict().toString().toLowerCase(java.util.Locale.ROOT))
            .append(" | [")
            .append(simulation.id())
            .append("](../wiring/sim/")
            .append(simulation.id())
            .append(".cir) |\n");
      }
    }
  }
}
