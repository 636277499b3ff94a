package org.boostwright.rig.wiring.spice;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.IOException;
import java.util.List;
import org.boostwright.core.settings.WiringNumbers;
import org.boostwright.core.settings.WiringSettings;
import org.boostwright.rig.plant.ValveParams;
import org.boostwright.rig.wiring.Circuit;
import org.boostwright.rig.wiring.block.Blocks;
import org.boostwright.rig.wiring.spice.Demand.Outcome;
import org.junit.jupiter.api.Test;

/**
 * The virtual car's valve times follow from the simulated coil current, stated pick-up and drop-out
 * currents and stated spool travel.
 */
class VirtualCarTimesTest {
  private static final double ONE_MILLISECOND = 1e-3;

  @Test
  void defaultTimesFollowFromTheSimulatedCoilCurrentWithinOneMillisecond() throws IOException {
    assumeTrue(NgSpice.present(), "ngspice is not installed: apt install ngspice");
    List<Outcome> times =
        CoilSimulations.times(Circuit.own(), "diode", "valve-driver", 3.5, 7.5).run();
    ValveParams car = ValveParams.DEFAULT;
    assertThat(value(times, "t_on")).isCloseTo(car.onDelaySeconds(), within(ONE_MILLISECOND));
    assertThat(value(times, "t_off")).isCloseTo(car.offDelaySeconds(), within(ONE_MILLISECOND));
  }

  @Test
  void theyFollowFromTheClosedFormToo() {
    WiringNumbers numbers = new WiringNumbers(WiringSettings.DEFAULT, Blocks.COIL_OHMS);
    ValveParams car = ValveParams.DEFAULT;
    assertThat(numbers.onSeconds()).isCloseTo(car.onDelaySeconds(), within(ONE_MILLISECOND));
    assertThat(numbers.offSeconds()).isCloseTo(car.offDelaySeconds(), within(ONE_MILLISECOND));
  }

  /** Two ways to the same number: ngspice and the closed form, within a tenth. */
  @Test
  void simulationAndClosedFormAgree() throws IOException {
    assumeTrue(NgSpice.present(), "ngspice is not installed: apt install ngspice");
    WiringNumbers numbers = new WiringNumbers(WiringSettings.DEFAULT, Blocks.COIL_OHMS);
    Circuit own = Circuit.own();
    List<Outcome> times = CoilSimulations.times(own, "diode", "valve-driver", 3.5, 7.5).run();
    near(value(times, "t_on"), numbers.onSeconds());
    near(value(times, "t_off"), numbers.offSeconds());
    List<Outcome> filter = InputSimulations.filter(own, "map-input", 20, 50, 1.0).run();
    Outcome corner = find(filter, "corner_hz");
    assertThat(numbers.filterCornerHz()).isBetween(corner.lowest(), corner.highest());
    List<Outcome> beat = GateSimulations.heartbeat(own, 0).run();
    near(find(beat, "hold_high").lowest() * 1e-3, numbers.shortestHoldSeconds());
    near(find(beat, "hold_low").highest() * 1e-3, numbers.longestHoldSeconds());
  }

  private static void near(double simulated, double closedForm) {
    assertThat(closedForm).isCloseTo(simulated, within(0.1 * simulated));
  }

  private static double value(List<Outcome> outcomes, String measure) {
    return find(outcomes, measure).lowest() * 1e-3;
  }

  private static Outcome find(List<Outcome> outcomes, String measure) {
    return outcomes.stream()
        .filter(outcome -> outcome.demand().measure().equals(measure))
        .findFirst()
        .orElseThrow();
  }
}
