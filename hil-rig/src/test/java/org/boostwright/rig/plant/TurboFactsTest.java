package org.boostwright.rig.plant;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * What the project car's turbo does by itself (assumptions ), against numbers of an
 * independent model of the same equations at 101.3 kPa and 293 K unless said.
 */
class TurboFactsTest {
  private static final double ROOM_K = 293.0;
  private static final Atmosphere AT_2000_M =
      new Atmosphere(Atmosphere.standardKpaAbs(2000.0), ROOM_K);

  /** Full throttle, wastegate on its spring. */
  private static double springKpa(double rpm, Atmosphere atmosphere, double leverRatio) {
    Powerplant plant =
        new Powerplant(
            EngineParams.PROJECT_CAR,
            ValveParams.DEFAULT,
            ChamberParams.DEFAULT,
            ActuatorParams.DEFAULT.withLeverRatio(leverRatio),
            atmosphere);
    plant.engine.flows.throttleM2 = EngineFlows.throttleArea(100.0);
    double rad = rpm * Math.PI / 30.0;
    for (int i = 0; i < 4500; i++) {
      plant.step(Powerplant.STEP_SECONDS, rad, i < 4000 ? 0.1 : 1.0);
    }
    return plant.engine.p[EngineFlows.IM] * 1e-3;
  }

  @ParameterizedTest
  @CsvSource({
    "2000, 152.6",
    "2500, 155.3",
    "3000, 156.6",
    "3500, 157.0",
    "4000, 156.4",
    "4500, 155.1",
    "5000, 153.2",
    "5500, 150.9",
    "6000, 148.2",
    "6500, 145.3"
  })
  void springAloneHoldsThisWithSag(double rpm, double kpaAbs) {
    assertThat(springKpa(rpm, Atmosphere.REFERENCE, 0.5)).isCloseTo(kpaAbs, within(1.5));
  }

  @ParameterizedTest
  @CsvSource({"2000, 124.2", "4000, 133.7", "6500, 122.8"})
  void springHoldsLessAbsolutePressureAt2000M(double rpm, double kpaAbs) {
    assertThat(springKpa(rpm, AT_2000_M, 0.5)).isCloseTo(kpaAbs, within(1.5));
  }

  @ParameterizedTest
  @CsvSource({"2000, 159.3", "2500, 163.0", "4000, 166.9", "6500, 159.0"})
  void withoutExhaustBackPressureTheSpringHoldsMore(double rpm, double kpaAbs) {
    assertThat(springKpa(rpm, Atmosphere.REFERENCE, 0.0)).isCloseTo(kpaAbs, within(1.5));
  }

  private static EngineBench shut(double rpm, Atmosphere atmosphere) {
    EngineBench bench = new EngineBench(EngineParams.PROJECT_CAR, atmosphere);
    bench.setRpm(rpm);
    bench.setThrottlePct(100.0);
    bench.setLift(0.0);
    return bench;
  }

  /** 250 to 276 kPa: the ends of the range belong to 4000 and 2500 1/min. */
  @ParameterizedTest
  @CsvSource({"2500, 276", "4000, 250"})
  void wastegateHeldShutRunsAway(double rpm, double kpaAbs) {
    EngineBench bench = shut(rpm, Atmosphere.REFERENCE);
    assertThat(bench.settle()).isTrue();
    assertThat(bench.intakeKpaAbs()).isCloseTo(kpaAbs, within(1.0));
  }

  @ParameterizedTest
  @CsvSource({
    "2500, 176",
    "3000, 210",
    "3500, 209",
    "4000, 202",
    "4500, 192",
    "5000, 182",
    "5500, 172",
    "6000, 161"
  })
  void wastegateShutAt2000MAnd40DegC(double rpm, double kpaAbs) {
    EngineBench bench = shut(rpm, Atmosphere.at(2000.0, 40.0));
    assertThat(bench.settle()).isTrue();
    assertThat(bench.intakeKpaAbs()).isCloseTo(kpaAbs, within(1.0));
  }

  /** Throttle 15 to 100 % with the gate shut. */
  @Test
  void spoolsLikeARoadCar() {
    EngineBench slow = tipIn(3000.0);
    assertThat(secondsTo(slow, 150.0)).isCloseTo(1.2, within(0.05));
    EngineBench fast = tipIn(3000.0);
    assertThat(secondsTo(fast, 200.0)).isCloseTo(2.0, within(0.05));
    assertThat(kpaPerSecond(fast)).isCloseTo(67.0, within(1.0));
    EngineBench at4000 = tipIn(4000.0);
    secondsTo(at4000, 200.0);
    assertThat(kpaPerSecond(at4000)).isCloseTo(109.0, within(1.0));
  }

  private static EngineBench tipIn(double rpm) {
    EngineBench bench = shut(rpm, Atmosphere.REFERENCE);
    bench.setThrottlePct(15.0);
    assertThat(bench.settle()).isTrue();
    bench.setThrottlePct(100.0);
    return bench;
  }

  private static double secondsTo(EngineBench bench, double kpaAbs) {
    int steps = 0;
    while (bench.intakeKpaAbs() < kpaAbs && steps < 10_000) {
      bench.advance(1e-3);
      steps++;
    }
    return steps * 1e-3;
  }

  private static double kpaPerSecond(EngineBench bench) {
    double before = bench.intakeKpaAbs();
    bench.advance(0.01);
    return (bench.intakeKpaAbs() - before) / 0.01;
  }

  /** Holding 180 kPa at 5500 1/min, full throttle. */
  @ParameterizedTest
  @CsvSource({"0, 167, 2.18", "2000, 213, 3.04"})
  void theSameTargetCostsMoreTurboSpeedAtAltitude(double altitudeM, double krpm, double ratio) {
    Atmosphere atmosphere = altitudeM > 0.0 ? AT_2000_M : Atmosphere.REFERENCE;
    double low = 0.0;
    double high = 1.0;
    EngineBench bench = shut(5500.0, atmosphere);
    for (int i = 0; i < 24; i++) {
      double lift = 0.5 * (low + high);
      bench.setLift(lift);
      assertThat(bench.settle()).isTrue();
      if (bench.intakeKpaAbs() > 180.0) {
        low = lift;
      } else {
        high = lift;
      }
    }
    assertThat(bench.intakeKpaAbs()).isCloseTo(180.0, within(0.1));
    assertThat(bench.turboKrpm()).isCloseTo(krpm, within(1.0));
    assertThat(bench.compressorOutKpaAbs() / bench.compressorInKpaAbs())
        .isCloseTo(ratio, within(0.01));
  }
}
