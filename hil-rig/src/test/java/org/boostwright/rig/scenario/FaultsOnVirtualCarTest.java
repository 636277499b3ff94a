package org.boostwright.rig.scenario;

import static org.assertj.core.api.Assertions.assertThat;

import org.boostwright.core.AnalogChannel;
import org.boostwright.core.monitor.FaultCode;
import org.boostwright.core.monitor.Reaction;
import org.boostwright.core.record.LogFormat;
import org.boostwright.core.settings.FeedbackSettings;
import org.boostwright.core.settings.LimitSettings;
import org.boostwright.core.settings.Settings;
import org.boostwright.core.settings.SpoolSettings;
import org.boostwright.core.state.SafetyState;
import org.boostwright.core.table.Curve;
import org.boostwright.core.table.Table2d;
import org.boostwright.rig.plant.Atmosphere;
import org.boostwright.rig.plant.PlantParams;
import org.boostwright.rig.plant.VirtualCar;
import org.boostwright.rig.plant.WireFaults;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * What the scenario files cannot say: thresholds that need a run before them, sample counts, every
 * channel in turn. Everything else is a file of its own in {@code hil-rig/scenarios}.
 */
class FaultsOnVirtualCarTest {
  private static final int COIL_SUPPLY = LogFormat.column("coil_supply_closed");
  private static final int PWM = LogFormat.column("pwm_enabled");

  private static final long RESTING = resting();

  private static long resting() {
    long bits = 0L;
    for (FaultCode code : FaultCode.values()) {
      bits |= code.reaction().compareTo(Reaction.REST) >= 0 ? code.bit() : 0L;
    }
    return bits;
  }

  private static Settings car() {
    Settings file = ProjectCarSettings.load();
    LimitSettings limits = file.limits();
    // Limits per gear off: the engine is held on a dynamometer, where no road speed tells the gear.
    return file.withLimits(
        new LimitSettings(
            limits.cutoffKpaAbs(),
            limits.pressureRatioMax(),
            limits.dutyCeiling(),
            limits.trimCapDuty(),
            Curve.constant(1.0),
            limits.springOnlyIntakeC(),
            new double[0],
            limits.lowBoostKpaAbs(),
            limits.minControlRpm(),
            limits.minThrottlePct(),
            false));
  }

  /** At full throttle and on target, 4500 rpm. */
  private static CarRun onTarget(Settings settings, long seed) {
    VirtualCar car = new VirtualCar(PlantParams.PROJECT_CAR, Atmosphere.at(0.0, 20.0), seed);
    CarRun run = new CarRun(settings, car);
    run.startEngine();
    run.settleHeld(4500.0, 15.0, 0.5);
    car.setThrottlePct(100.0);
    run.run(3.0);
    assertThat(car.mapKpaAbs()).isBetween(177.0, 183.0);
    assertThat(run.outputs().state).isEqualTo(SafetyState.CONTROLLING);
    assertThat(run.outputs().activeFaults).isZero();
    return run;
  }

  private static CarRun onTarget(long seed) {
    return onTarget(car(), seed);
  }

  private static WireFaults mapWire(CarRun run) {
    return run.car().faults().wire(AnalogChannel.MAP);
  }

  private static boolean rests(CarRun run, int row) {
    return run.log().get(row, LogFormat.DUTY) == 0.0
        && run.log().get(row, PWM) == 0.0
        && run.log().get(row, COIL_SUPPLY) == 0.0;
  }

  private static long faults(CarRun run, int fromRow) {
    long seen = 0L;
    for (int r = fromRow; r < run.log().rows(); r++) {
      seen |= (long) run.log().get(r, LogFormat.FAULTS);
    }
    return seen;
  }

  /** In every tick: duty finite and in range, 0 in rest states, rest in the confirming tick. */
  private static void assertInvariants(CarRun run) {
    SafetyState[] states = SafetyState.values();
    for (int r = 0; r < run.log().rows(); r++) {
      double duty = run.log().get(r, LogFormat.DUTY);
      assertThat(duty).isBetween(0.0, 1.0);
      boolean resting = states[(int) run.log().get(r, LogFormat.STATE)].isRest();
      if (resting || ((long) run.log().get(r, LogFormat.FAULTS) & RESTING) != 0L) {
        assertThat(rests(run, r)).isTrue();
      }
    }
  }

  @Test
  @Tag("S1")
  @Tag("S3")
  void voltsJustInsideTheValidRangeAreNotAWireFault() {
    // Reached slowly, so that the rate of change is no fault either: 0.25 V is below 20 kPa.
    CarRun run = onTarget(1);
    int from = run.log().rows();
    double volts = run.inputs().volts[AnalogChannel.MAP.ordinal()];
    while (volts > 0.21) {
      volts -= 0.02;
      mapWire(run).replacedVolts = Math.max(0.205, volts);
      run.tick();
    }
    long low = FaultCode.MAP_SIGNAL_LOW.bit() | FaultCode.MAP_SIGNAL_HIGH.bit();
    assertThat(faults(run, from) & low).isZero();
  }

  @ParameterizedTest
  @Tag("S10")
  @ValueSource(
      doubles = {
        Double.NaN,
        Double.POSITIVE_INFINITY,
        Double.NEGATIVE_INFINITY,
        Double.MAX_VALUE,
        -Double.MAX_VALUE
      })
  void numbersThatAreNoneNeverReachTheOutput(double volts) {
    for (AnalogChannel channel : AnalogChannel.values()) {
      CarRun run = onTarget(1);
      run.disturb(in -> in.volts[channel.ordinal()] = volts);
      run.run(0.3);
      assertInvariants(run);
      run.disturb(in -> {});
      run.run(4.0);
      assertInvariants(run);
      assertThat(run.outputs().state).as("after %s", channel).isEqualTo(SafetyState.CONTROLLING);
      assertThat(Double.isFinite(run.outputs().trimDutyFraction)).isTrue();
    }
  }

  /** Open loop with a base duty far too high, so that the limit is all there is. */
  private static Settings tooMuch(double limitKpaAbs) {
    Settings car = car();
    LimitSettings limits = car.limits();
    FeedbackSettings off =
        new FeedbackSettings(
            false, Curve.constant(0.0), Curve.constant(0.0), Curve.constant(0.0), 0.5, 0.03, 10.0);
    return car.withBaseDuty(Table2d.constant(0.52))
        .withTarget(Table2d.constant(190.0))
        .withFeedback(off)
        .withSpool(new SpoolSettings(false, 0.3, 3.0, 10.0))
        .withLimits(
            new LimitSettings(
                limitKpaAbs,
                2.5,
                Curve.constant(1.0),
                0.1,
                Curve.constant(1.0),
                75.0,
                new double[0],
                190.0,
                1500.0,
                30.0,
                false));
  }

  private static CarRun overboosting(double limitKpaAbs) {
    VirtualCar car = new VirtualCar(PlantParams.PROJECT_CAR, Atmosphere.at(0.0, 20.0), 1L);
    CarRun run = new CarRun(tooMuch(limitKpaAbs), car);
    run.startEngine();
    run.settleHeld(4500.0, 15.0, 0.5);
    return run;
  }

  private static void pressThrottle(CarRun run, double seconds) {
    run.car().setThrottlePct(100.0);
    run.run(seconds);
  }

  private static void releaseThrottle(CarRun run, double seconds) {
    run.car().setThrottlePct(10.0);
    run.run(seconds);
  }

  @Test
  @Tag("P1")
  void overboostRestsWithinATickOfMaturingAndLatchesUntilTheThrottleIsReleased() {
    CarRun run = overboosting(200.0);
    int from = run.log().rows();
    pressThrottle(run, 4.0);
    assertThat(faults(run, from)).isEqualTo(FaultCode.OVERBOOST.bit());
    int above = 0;
    double peak = 0.0;
    int aboveTrue = 0;
    boolean rested = false;
    for (int r = from; r < run.log().rows(); r++) {
      if (!rested && run.log().get(r, LogFormat.MAP) > 200.0) {
        above++;
      }
      rested |= (long) run.log().get(r, LogFormat.FAULTS) != 0L;
      peak = Math.max(peak, run.log().get(r, RunLog.TRUE_MAP));
      aboveTrue += run.log().get(r, RunLog.TRUE_MAP) > 200.0 ? 1 : 0;
    }
    System.out.printf(
        "overboost: %d samples above before rest, true peak %.1f kPa, above for %d ms%n",
        above, peak, aboveTrue * 5);
    // Noise may put a sample below the limit between those above it, which counts one down.
    assertThat(above).isLessThanOrEqualTo(6);
    assertThat(peak).isLessThan(212.0);
    assertThat(aboveTrue * 5).isLessThan(250);
    assertInvariants(run);
    assertThat(run.outputs().state).isEqualTo(SafetyState.HELD_AT_SPRING);
    run.run(5.0);
    assertThat(run.outputs().state).isEqualTo(SafetyState.HELD_AT_SPRING);
    releaseThrottle(run, 1.9);
    assertThat(run.outputs().state).isEqualTo(SafetyState.HELD_AT_SPRING);
    run.run(0.3);
    assertThat(run.outputs().state).isEqualTo(SafetyState.READY);
  }

  @Test
  @Tag("P1")
  void pressureJustBelowTheLimitTripsNothing() {
    CarRun first = overboosting(250.0);
    pressThrottle(first, 4.0);
    double peak = 0.0;
    for (int r = 0; r < first.log().rows(); r++) {
      double seen = first.log().get(r, LogFormat.MAP);
      peak = Double.isNaN(seen) ? peak : Math.max(peak, seen);
    }
    CarRun twin = overboosting(peak);
    pressThrottle(twin, 4.0);
    assertThat(faults(twin, 0)).isZero();
  }
}
