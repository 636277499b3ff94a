package org.boostwright.rig.plant;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Force balance and motion of the wastegate actuator (assumption A-02). */
class ActuatorResponseTest {
  /** Common practice, no source: a factory actuator spring cracks at 7 to 10 psi gauge. */
  @Test
  void springCracksWithinTheFactoryRange() {
    double psi = ActuatorParams.DEFAULT.crackKpaGauge() / 6.894757;
    assertThat(psi).isBetween(7.0, 10.0);
  }

  @Test
  void forcesBalanceAtCrackAndFullLift() {
    BoostLine line = line(ActuatorParams.DEFAULT);
    assertThat(line.balanceLift(60e3, 0.0)).isCloseTo(0.0, within(1e-12));
    assertThat(line.balanceLift(110e3, 0.0)).isCloseTo(1.0, within(1e-12));
    // 100 kPa on 25 mm at half leverage = 24.54 N, as much as 19.53 kPa on 40 mm.
    assertThat(line.balanceLift(60e3 - 19.53e3, 100e3)).isCloseTo(0.0, within(1e-3));
  }

  /**
   * Published step responses of a bench engine (unlicensed records, derived numbers only): dead
   * time 25 to 50 ms from duty to lift, 63 % after 75 to 113 ms. The step's effect is the lift less
   * that of a twin without the step, so that ripple does not count; 63 % is read from its mean over
   * one PWM period; both averaged over eight phases of the PWM.
   */
  @ParameterizedTest
  @CsvSource({
    "30, 0.20, 0.30",
    "30, 0.35, 0.20",
    "30, 0.20, 0.40",
    "39, 0.20, 0.30",
    "39, 0.35, 0.20",
    "39, 0.40, 0.20"
  })
  void liftFollowsDutyLikeOnABenchEngine(double frequencyHz, double from, double to) {
    double dead = 0.0;
    double most = 0.0;
    int half = (int) Math.round(500.0 / frequencyHz);
    for (int phase = 0; phase < 8; phase++) {
      BenchValve stepped = atDuty(frequencyHz, from, phase);
      BenchValve twin = atDuty(frequencyHz, from, phase);
      stepped.setDuty(to);
      double[] effect = new double[600];
      for (int i = half; i < effect.length; i++) {
        stepped.advance(1e-3);
        twin.advance(1e-3);
        effect[i] = stepped.lift() - twin.lift();
      }
      double end = mean(effect, effect.length - 8 * half, effect.length);
      int i = half;
      while (effect[i] / end < 0.05) {
        i++;
      }
      dead += (i - half + 1) / 8.0;
      while (mean(effect, i - half, i + half + 1) / end < 0.632) {
        i++;
      }
      most += (i - half + 1) / 8.0;
    }
    assertThat(dead).isBetween(25.0, 50.0);
    assertThat(most).isBetween(75.0, 113.0);
  }

  private static BenchValve atDuty(double frequencyHz, double duty, int phase) {
    BenchValve valve = new BenchValve();
    valve.setSupplyKpaGauge(110.0);
    valve.setChamberKpaGauge(110.0);
    valve.setFrequencyHz(frequencyHz);
    valve.setSupplyClosed(true);
    valve.setDuty(duty);
    valve.setEnabled(true);
    valve.advance(2.0 + phase / 8.0 / frequencyHz);
    return valve;
  }

  private static double mean(double[] values, int from, int to) {
    double sum = 0.0;
    for (int i = from; i < to; i++) {
      sum += values[i];
    }
    return sum / (to - from);
  }

  @Test
  void frictionLeavesTheLiftWhereItWas() {
    double up = liftAfter(ActuatorParams.DEFAULT.withFriction(6.0), 60.0, 85.0);
    double down = liftAfter(ActuatorParams.DEFAULT.withFriction(6.0), 110.0, 85.0);
    // 6 N of 62.8 N per lift either way.
    assertThat(up).isCloseTo(0.5 - 6.0 / 62.83, within(1e-3));
    assertThat(down).isCloseTo(0.5 + 6.0 / 62.83, within(1e-3));
    assertThat(liftAfter(ActuatorParams.DEFAULT, 60.0, 85.0)).isCloseTo(0.5, within(1e-3));
  }

  private static double liftAfter(ActuatorParams params, double firstKpa, double thenKpa) {
    BenchValve valve = new BenchValve(ValveParams.DEFAULT, ChamberParams.DEFAULT, params, 101.325);
    valve.setSupplyKpaGauge(firstKpa);
    valve.advance(2.0);
    valve.setSupplyKpaGauge(thenKpa);
    if (thenKpa < firstKpa) {
      // Let the surplus out through the vent first, so that it comes down from above.
      valve.setChamberKpaGauge(thenKpa);
    }
    valve.advance(2.0);
    return valve.lift();
  }

  @Test
  void strokeMakesTheChamberGrowAndSlowDown() {
    double rigid = secondsToFullLift(ActuatorParams.DEFAULT);
    double growing = secondsToFullLift(ActuatorParams.DEFAULT.withStroke(0.010));
    // 10 mm on 40 mm add 12.6 cm3 to 60.
    assertThat(growing).isGreaterThan(rigid);
  }

  private static double secondsToFullLift(ActuatorParams params) {
    BoostLine line = line(params);
    double seconds = 0.0;
    while (line.lift() < 0.99) {
      line.advance(1e-4, 220e3, 220e3, 101.325e3, 0.0, 0.0);
      seconds += 1e-4;
    }
    return seconds;
  }

  private static BoostLine line(ActuatorParams params) {
    return new BoostLine(ValveParams.DEFAULT, ChamberParams.DEFAULT, params, 101.325e3);
  }
}
