package org.boostwright.rig.wiring.spice;

import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.IOException;
import java.util.List;
import java.util.function.Function;
import java.util.stream.Stream;
import org.boostwright.rig.wiring.Circuit;
import org.boostwright.rig.wiring.Part;
import org.boostwright.rig.wiring.Semiconductors;
import org.boostwright.rig.wiring.spice.Demand.Outcome;
import org.boostwright.rig.wiring.spice.Demand.Verdict;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.TestFactory;

/**
 * Wrong parts and wrong values, one at a time: a simulation must fail. The twin, the same
 * simulation of the circuit as it is, passes in {@link SimulationsTest}.
 */
class SeededMistakesTest {
  private record Mistake(
      String words, Circuit circuit, Function<Circuit, Simulation> simulation, String measure) {}

  @TestFactory
  Stream<DynamicTest> mistakeIsCaughtByItsSimulation() {
    assumeTrue(NgSpice.present(), "ngspice is not installed: apt install ngspice");
    Circuit own = Circuit.own();
    Function<Circuit, Simulation> beat = c -> GateSimulations.heartbeat(c, 0);
    List<Mistake> mistakes =
        List.of(
            new Mistake(
                "no pull-down at the gate",
                own.without("R202"),
                GateSimulations::boot,
                "boot_low_side"),
            new Mistake(
                "flyback diode the wrong way round",
                own.with("D201", Part::reversed),
                c -> CoilSimulations.clamp(c, "diode", "valve-driver"),
                "feed_current"),
            new Mistake(
                "no clamp",
                own.without("D201"),
                c -> CoilSimulations.clamp(c, "diode", "valve-driver"),
                "drain_16"),
            new Mistake(
                "MOSFET with a threshold of 4 V",
                own.with("Q201", part -> part.withClass(Semiconductors.NMOS_STANDARD)),
                CoilSimulations::fullyOn,
                "hot_low"),
            new Mistake(
                "divider too high for a converter at 3.3 V",
                own.with("R504", part -> part.withValue(56e3)),
                c ->
                    SensorFaultSimulations.sixteenVolts(
                        c, "map-input-3v3", "slow-inputs-3v3", "3.3", 3.6),
                "adc_high"),
            new Mistake(
                "filter ten times too slow",
                own.with("C502", part -> part.withValue(6.8e-6)),
                c -> InputSimulations.filter(c, "map-input", 20, 50, 1.0),
                "corner_hz"),
            new Mistake(
                "filter ten times too slow, open wire",
                own.with("C502", part -> part.withValue(6.8e-6)),
                c -> InputSimulations.openWire(c, "map-input", 0.2, 1.0),
                "open_wire"),
            new Mistake(
                "bias of 1 megohm without a follower",
                own.with("R501", part -> part.withValue(1e6)),
                c -> InputSimulations.openWire(c, "map-input-simple", 0.2, 1.0),
                "open_wire"),
            new Mistake(
                "bias missing",
                own.without("R501"),
                c -> InputSimulations.openWire(c, "map-input", 0.2, 1.0),
                "open_wire"),
            new Mistake(
                "reservoir of 1 microfarad",
                own.with("C302", part -> part.withValue(1e-6)),
                beat,
                "hold_low"),
            new Mistake("bleed resistor missing", own.without("R304"), beat, "hold_low"),
            new Mistake(
                "bleed resistor of 10 kiloohm",
                own.with("R304", part -> part.withValue(10e3)),
                beat,
                "hold_high"),
            new Mistake(
                "enable transistor shorted by solder",
                own.with("Q303", part -> part.rewired("D", "PERMIT"))
                    .with("Q302", part -> part.rewired("S", "PERMIT")),
                GateSimulations::opens,
                "enable_opens"),
            new Mistake(
                "permit loop soldered to ground",
                own.with("Q303", part -> part.rewired("S", "GND")),
                GateSimulations::opens,
                "permit_opens"),
            new Mistake(
                "reverse diode the wrong way round",
                own.with("D102", Part::reversed),
                SupplySimulations::wrong,
                "jump_rail"),
            new Mistake(
                "thermistor pull-up of 22 kiloohm",
                own.with("R601", part -> part.withValue(22e3)),
                InputSimulations::slow,
                "iat_20"),
            new Mistake(
                "tap of 10 kiloohm",
                own.with("R921", part -> part.withValue(10e3))
                    .with("R922", part -> part.withValue(10e3)),
                SensorFaultSimulations::taps,
                "load_tps"),
            new Mistake(
                "sensor input on the 12 V rail",
                own.with("R502", part -> part.rewired("1", "VBAT_F")),
                c -> InputSimulations.filter(c, "map-input", 20, 50, 1.0),
                "error_dc"),
            new Mistake(
                "relay driver without its pull-down",
                own.without("R402"),
                SupplySimulations::cut,
                "cut_boot"));
    return mistakes.stream().map(m -> DynamicTest.dynamicTest(m.words(), () -> check(m)));
  }

  private static void check(Mistake mistake) throws IOException {
    List<Outcome> outcomes = mistake.simulation().apply(mistake.circuit()).run();
    assertThat(outcomes)
        .filteredOn(outcome -> outcome.demand().measure().equals(mistake.measure()))
        .as(mistake.words())
        .isNotEmpty()
        .allMatch(outcome -> outcome.verdict() != Verdict.PASSED);
  }
}
