package org.boostwright.rig.logs.gains;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.boostwright.core.settings.Settings;
import org.boostwright.rig.logs.identify.CarTwin;
import org.boostwright.rig.logs.identify.Fopdt;
import org.boostwright.rig.plant.Atmosphere;
import org.boostwright.rig.plant.PlantParams;
import org.boostwright.rig.scenario.ProjectCarSettings;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.api.Test;

/** Proposed gains on cars of full tolerances, and AMIGO against its paper. */
class GainsTest {
  private static final boolean FULL = Boolean.getBoolean("boostwright.logs.full");

  /** Requirement: over 200 cars 95 % overshoot at most 5 kPa, none hunts, nominal Ms at most 1.8. */
  @ParameterizedTest
  @EnumSource(Pace.class)
  void carsWithinTolerancesArriveWithoutOvershootOrHunting(Pace pace) {
    Settings settings = ProjectCarSettings.load();
    double[][] doubt = new double[9][9];
    for (int i = 0; i < doubt.length; i++) {
      doubt[i][i] = 0.3;
    }
    CarTwin nominal = new CarTwin(PlantParams.PROJECT_CAR, new double[9], doubt, 0.2, 2);
    GainAdvice advice = GainAdvice.of(nominal, Atmosphere.at(0, 20), settings, pace, 1);
    for (BandGains band : advice.bands()) {
      assertThat(band.margins().maxSensitivity()).isLessThanOrEqualTo(1.8);
    }
    GainProof proof =
        GainProof.of(
            advice.in(settings), PlantParams.PROJECT_CAR, 1.0, FULL ? 200 : 20, 1, share -> {});
    System.out.println(pace + ": " + proof + ", lead " + advice.leadSeconds());
    assertThat(proof.overshootKpa95()).isLessThanOrEqualTo(5.0);
    assertThat(proof.hunting()).isZero();
    assertThat(proof.faults()).isZero();
  }

  /**
   * Kp 1, T 1: L 0.5 and L 1 (Astrom and Hagglund, J. Process Control 14, 2004, 635-650; Ti and Td
   * at L 1 from memory).
   */
  @Test
  void amigoGivesThePapersNumbers() {
    Amigo pi = Amigo.pi(new Fopdt(1.0, 1.0, 0.5));
    assertThat(pi.gain()).isCloseTo(0.4056, within(5e-5));
    assertThat(pi.integralSeconds()).isCloseTo(0.9179, within(5e-5));
    Amigo pid = Amigo.pid(new Fopdt(1.0, 1.0, 0.5));
    assertThat(pid.gain()).isCloseTo(1.100, within(5e-4));
    assertThat(pid.integralSeconds()).isCloseTo(0.8333, within(5e-5));
    assertThat(pid.derivativeSeconds()).isCloseTo(0.2174, within(5e-5));
    Amigo far = Amigo.pi(new Fopdt(1.0, 1.0, 1.0));
    assertThat(far.gain()).isCloseTo(0.25, within(5e-4));
    assertThat(far.integralSeconds()).isCloseTo(1.0, within(5e-3));
  }
}
