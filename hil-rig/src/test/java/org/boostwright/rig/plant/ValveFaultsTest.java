package org.boostwright.rig.plant;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/** Each fault of valve and hoses has its physical effect, at any moment of a run. */
class ValveFaultsTest {
  private static final double SUPPLY = 82.7;

  private static ValveTestBench bench() {
    return new ValveTestBench(new BenchValve(), SUPPLY);
  }

  private static double atRestAfter(ValveTestBench bench, double seconds) {
    bench.valve.setEnabled(false);
    bench.valve.advance(seconds);
    return bench.valve.chamberKpaGauge();
  }

  @Test
  @Tag("P3")
  void blockedSupplyHoseNeverFillsTheActuator() {
    ValveTestBench bench = bench();
    bench.valve.setChamberKpaGauge(0.0);
    bench.valve.faults().supplyOpen = 0.0;
    assertThat(atRestAfter(bench, 1.0)).isCloseTo(0.0, within(1e-6));
    bench.valve.faults().supplyOpen = 1.0;
    assertThat(atRestAfter(bench, 1.0)).isCloseTo(SUPPLY, within(0.1));
  }

  @Test
  @Tag("P3")
  void blockedVentKeepsTheActuatorFull() {
    ValveTestBench bench = bench();
    bench.valve.faults().ventOpen = 0.0;
    assertThat(bench.run(30.0, 0.5).meanKpaGauge).isCloseTo(SUPPLY, within(0.5));
  }

  @Test
  @Tag("P3")
  void halfBlockedVentLiesBetweenSoundAndBlocked() {
    ValveTestBench bench = bench();
    bench.valve.faults().ventOpen = 0.5;
    double half = bench.run(30.0, 0.5).meanKpaGauge;
    assertThat(half).isBetween(bench().run(30.0, 0.5).meanKpaGauge + 5.0, SUPPLY - 5.0);
  }

  @Test
  @Tag("P5")
  void supplyAndVentExchangedTurnsTheValveUpsideDown() {
    ValveTestBench bench = bench();
    bench.valve.faults().portSwap = PortSwap.SUPPLY_WITH_VENT;
    assertThat(atRestAfter(bench, 1.0)).isCloseTo(0.0, within(0.1));
    assertThat(bench.run(30.0, 0.9).meanKpaGauge).isCloseTo(SUPPLY, within(0.5));
  }

  @Test
  @Tag("P5")
  void actuatorAndVentExchangedNeverFillsTheActuator() {
    ValveTestBench bench = bench();
    bench.valve.setChamberKpaGauge(0.0);
    bench.valve.faults().portSwap = PortSwap.ACTUATOR_WITH_VENT;
    assertThat(atRestAfter(bench, 1.0)).isCloseTo(0.0, within(0.1));
    assertThat(bench.run(30.0, 0.5).meanKpaGauge).isCloseTo(0.0, within(0.1));
  }

  @Test
  @Tag("P5")
  void supplyAndActuatorExchangedTrapsTheActuator() {
    ValveTestBench bench = bench();
    bench.valve.faults().portSwap = PortSwap.SUPPLY_WITH_ACTUATOR;
    assertThat(atRestAfter(bench, 1.0)).isCloseTo(SUPPLY, within(0.1));
    assertThat(bench.run(30.0, 0.5).meanKpaGauge).isCloseTo(SUPPLY, within(0.5));
  }

  @Test
  @Tag("P5")
  void exchangedPortsBlowSuppliedAirOff() {
    ValveTestBench bench = bench();
    bench.valve.setRegulatorKpaPerGramPerSecond(10.0);
    bench.valve.faults().portSwap = PortSwap.ACTUATOR_WITH_VENT;
    atRestAfter(bench, 0.5);
    assertThat(bench.valve.supplyKpaGauge()).isLessThan(SUPPLY - 8.0);
  }

  @Test
  @Tag("P5")
  void wrongPolarityEnergisesTheCoilAtDutyZero() {
    ValveTestBench bench = bench();
    bench.valve.setInverted(true);
    assertThat(bench.run(30.0, 0.0).meanKpaGauge).isCloseTo(0.0, within(0.5));
    assertThat(bench.run(30.0, 1.0).meanKpaGauge).isCloseTo(SUPPLY, within(0.5));
  }

  @Test
  @Tag("P4")
  void stuckValveIgnoresTheCoil() {
    ValveTestBench bench = bench();
    bench.valve.faults().stuck = ValveFaults.Stuck.ENERGISED;
    assertThat(bench.run(30.0, 0.0).meanKpaGauge).isCloseTo(0.0, within(0.1));
    bench.valve.faults().stuck = ValveFaults.Stuck.AT_REST;
    assertThat(bench.run(30.0, 1.0).meanKpaGauge).isCloseTo(SUPPLY, within(0.1));
  }

  @Test
  @Tag("P4")
  void slowSpoolNarrowsTheWindow() {
    ValveTestBench bench = bench();
    bench.valve.faults().slowFactor = 2.0;
    assertThat(bench.run(30.0, 0.2).clicks).isZero();
    assertThat(bench().run(30.0, 0.2).clicks).isEqualTo(20);
  }

  @Test
  @Tag("E1")
  void coilFaultsDoWhatTheyDoOnTheCar() {
    ValveTestBench open = bench();
    open.valve.faults().coilOpen = true;
    assertThat(open.run(30.0, 0.5).clicks).isZero();
    assertThat(open.valve.coilAmps()).isZero();

    ValveTestBench shorted = bench();
    shorted.valve.faults().coilShort = true;
    assertThat(shorted.run(30.0, 0.5).clicks).isZero();

    ValveTestBench driver = bench();
    driver.valve.faults().driverStuckOn = true;
    assertThat(driver.run(30.0, 0.0).meanKpaGauge).isCloseTo(0.0, within(0.1));
    driver.valve.setSupplyClosed(false);
    assertThat(atRestAfter(driver, 1.0)).isCloseTo(SUPPLY, within(0.1));
  }

  @Test
  @Tag("P2")
  void hoseOffTheActuatorEmptiesItWithinAFewTenthsOfASecond() {
    ValveTestBench bench = bench();
    assertThat(atRestAfter(bench, 0.1)).isCloseTo(SUPPLY, within(0.1));
    bench.valve.faults().actuatorHoseOff = true;
    assertThat(atRestAfter(bench, 0.1)).isCloseTo(0.0, within(0.5));
  }

  @Test
  @Tag("P3")
  void hoseOffTheSupplyEmptiesTheActuatorThroughTheValve() {
    ValveTestBench bench = bench();
    bench.valve.faults().supplyHoseOff = true;
    assertThat(atRestAfter(bench, 0.3)).isCloseTo(0.0, within(0.5));
  }

  @Test
  @Tag("P3")
  void leakLowersThePressureAtRestByItsShareOfTheFlow() {
    ValveTestBench bench = bench();
    bench.valve.faults().leakConductance = 0.3e-8;
    double leaking = atRestAfter(bench, 1.0);
    // Both paths carry the same flow once settled (ISO 6358-1 formula).
    double chamber = (101.325 + leaking) * 1e3;
    double in = IsoFlow.kgPerSecond(0.9e-8, 0.3, (101.325 + SUPPLY) * 1e3, chamber, 293.15);
    double out = IsoFlow.kgPerSecond(0.3e-8, 0.3, chamber, 101.325e3, 293.15);
    assertThat(leaking).isLessThan(SUPPLY - 3.0);
    assertThat(in).isCloseTo(out, within(1e-3 * out));
  }

  @Test
  void supplySagsInProportionToTheFlow() {
    ValveTestBench bench = bench();
    bench.valve.setRegulatorKpaPerGramPerSecond(10.0);
    bench.valve.faults().actuatorHoseOff = true;
    atRestAfter(bench, 0.5);
    double supply = bench.valve.supplyKpaGauge();
    double flow =
        IsoFlow.kgPerSecond(0.9e-8, 0.3, (101.325 + supply) * 1e3, 101.325e3, 293.15) * 1e3;
    assertThat(supply).isCloseTo(SUPPLY - 10.0 * flow, within(0.01));
  }

  /** Common practice, no source: a valve that only bleeds cannot hold the actuator down. */
  @Test
  void twoPortBleedCannotEmptyTheActuator() {
    ValveTestBench bench = bench();
    // Supply always joined, vent only as a leak of the same size: the best a bleed can do.
    bench.valve.faults().leakConductance = 0.9e-8;
    double bled = atRestAfter(bench, 1.0);
    assertThat(bled).isGreaterThan(0.4 * SUPPLY);
    assertThat(bench().run(30.0, 0.76).meanKpaGauge).isLessThan(0.1 * SUPPLY);
  }

  /** Flyback theory: a plain diode holds the current up, so the valve lets go late. */
  @Test
  void plainDiodeReleasesAboutThreeTimesSlowerThanAClamp() {
    double diode = releaseMillis(0.8);
    double zener = releaseMillis(12.8);
    double clamp24 = releaseMillis(24.0);
    double clamp36 = releaseMillis(36.0);
    // Decay to 20 % of 0.467 A at 30 ohm, 100 mH: closed form of di/dt = -(Vc + R*i)/L.
    assertThat(diode).isCloseTo(4.71, within(0.011));
    assertThat(zener).isCloseTo(1.80, within(0.011));
    assertThat(clamp24).isCloseTo(1.16, within(0.011));
    assertThat(clamp36).isCloseTo(0.85, within(0.011));
  }

  private static double releaseMillis(double clampVolts) {
    double full = 14.0 / 30.0;
    CoilParams coil =
        CoilParams.TIMED.withClampVolts(clampVolts).withThresholds(0.5 * full, 0.2 * full);
    BenchValve valve =
        new BenchValve(
            ValveParams.DEFAULT.withCoil(coil).withDelays(0.0, 0.0),
            ChamberParams.DEFAULT,
            ActuatorParams.DEFAULT,
            101.325);
    valve.setSupplyClosed(true);
    valve.setDuty(1.0);
    valve.setEnabled(true);
    valve.advance(0.2);
    assertThat(valve.spoolEnergised()).isTrue();
    assertThat(valve.coilAmps()).isCloseTo(full, within(1e-6));
    valve.setEnabled(false);
    double millis = 0.0;
    while (valve.spoolEnergised()) {
      valve.advance(1e-5);
      millis += 0.01;
    }
    return millis;
  }
}
