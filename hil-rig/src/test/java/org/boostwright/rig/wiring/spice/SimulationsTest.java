package org.boostwright.rig.wiring.spice;

import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeSet;
import java.util.stream.Stream;
import org.boostwright.rig.wiring.Circuit;
import org.boostwright.rig.wiring.WiringFolder;
import org.boostwright.rig.wiring.spice.Demand.Outcome;
import org.boostwright.rig.wiring.spice.Demand.Verdict;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestFactory;

/** Runs every deck in ngspice; skipped where ngspice is absent. */
class SimulationsTest {
  private static final List<Simulation> ALL = Simulations.all(Circuit.own());

  /** Every simulation passes, and shows what the committed page says, within 2 % or 0.02. */
  @TestFactory
  Stream<DynamicTest> everySimulationPassesAndIsTheOneOfThePage() throws IOException {
    assumeTrue(NgSpice.present(), "ngspice is not installed: apt install ngspice");
    List<String> page = Files.readAllLines(WiringFolder.root().resolve("docs/wiring-results.md"));
    return ALL.stream()
        .map(simulation -> DynamicTest.dynamicTest(simulation.id(), () -> check(simulation, page)));
  }

  private static void check(Simulation simulation, List<String> page) throws IOException {
    for (Outcome outcome : simulation.run()) {
      Demand demand = outcome.demand();
      assertThat(outcome.verdict())
          .as(
              "%s %s: %s, limit %s",
              demand.requirement(), demand.text(), outcome.seen(), demand.limits())
          .isEqualTo(Verdict.PASSED);
      List<String> rows =
          page.stream()
              .filter(
                  row ->
                      row.startsWith("| " + demand.text()) && row.contains(simulation.id() + "]"))
              .toList();
      assertThat(rows).as("row of the page: " + demand.text()).hasSize(1);
      double[] written = numbers(rows.get(0).split("\\|")[2]);
      assertThat(written[0]).as(rows.get(0)).isCloseTo(outcome.lowest(), near(outcome.lowest()));
      assertThat(written[1]).as(rows.get(0)).isCloseTo(outcome.highest(), near(outcome.highest()));
    }
  }

  private static org.assertj.core.data.Offset<Double> near(double value) {
    return org.assertj.core.data.Offset.offset(Math.max(0.02 * Math.abs(value), 0.02));
  }

  /** Lowest and highest number of a cell such as {@code 31.9 to 84.7 ms}. */
  private static double[] numbers(String cell) {
    String[] words = cell.trim().split(" ");
    double low = Double.parseDouble(words[0]);
    boolean range = words.length > 2 && words[1].equals("to");
    return new double[] {low, range ? Double.parseDouble(words[2]) : low};
  }

  @Test
  void everyRequirementHasADemandAndEveryDemandARequirement() {
    TreeSet<String> demanded = new TreeSet<>();
    ALL.forEach(s -> s.demands().forEach(d -> demanded.add(d.requirement())));
    assertThat(demanded).isEqualTo(new TreeSet<>(Requirements.ALL.keySet()));
  }

  @Test
  void missingResultIsAnErrorAndNotAPass() {
    Demand demand = new Demand("HW-01", "x", "x", "V", 1, 0, 1, 2);
    assertThat(demand.judge(Map.of()).verdict()).isEqualTo(Verdict.ERROR);
    assertThat(demand.judge(Map.of("x", List.of(0.5))).verdict()).isEqualTo(Verdict.ERROR);
    assertThat(demand.judge(Map.of("x", List.of(0.5, 1.5))).verdict()).isEqualTo(Verdict.FAILED);
    assertThat(demand.judge(Map.of("x", List.of(0.5, Double.NaN))).verdict())
        .isEqualTo(Verdict.FAILED);
    assertThat(demand.judge(Map.of("x", List.of(0.5, 0.6))).verdict()).isEqualTo(Verdict.PASSED);
  }

  @Test
  void printedResultsAreReadBackInOrder() {
    Map<String, List<Double>> read =
        NgSpice.results("hold = 3.5e-02\nvolts_x=  1.25000e+00 at= 2\nnode 1.0\nhold = 4e-2\n");
    Map<String, List<Double>> expected = new LinkedHashMap<>();
    expected.put("hold", new ArrayList<>(List.of(3.5e-2, 4e-2)));
    expected.put("volts_x", new ArrayList<>(List.of(1.25)));
    assertThat(read).isEqualTo(expected);
  }
}
