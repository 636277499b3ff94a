package org.boostwright.core.signal;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.boostwright.core.AnalogChannel;
import org.boostwright.core.Inputs;
import org.boostwright.core.TestCar;
import org.boostwright.core.TestSettings;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/** What one signal needs of another: throttle movement, and speeds in the car's own units. */
class SignalsTest {
  private static final long TICK = 5_000_000L;

  private final TestCar car = new TestCar();
  private final Inputs inputs = new Inputs();
  private Signals signals;
  private long now = 1_000_000_000L;
  private double throttlePct;

  @BeforeEach
  void build() {
    signals = new Signals(car.build());
  }

  private void tick() {
    now += TICK;
    inputs.sample(AnalogChannel.MAP, TestSettings.mapVolts(100.0), now);
    inputs.sample(AnalogChannel.THROTTLE, TestSettings.throttleVolts(throttlePct), now);
    signals.update(now, inputs);
  }

  private void run(int ticks) {
    for (int i = 0; i < ticks; i++) {
      tick();
    }
  }

  /** A pulse at the time of the next tick, one period after the last. */
  private void enginePulse(double rpm) {
    inputs.engineSeen = true;
    inputs.enginePeriodNanos = 30e9 / rpm; // two pulses a turn
    inputs.enginePulseNanos = now + TICK;
    tick();
  }

  @Test
  void aThrottleThatIsOpenFromTheStartHasNotMoved() {
    throttlePct = 60.0;
    for (int i = 0; i < 200; i++) {
      tick();
      assertThat(signals.throttleExplains()).isFalse();
      assertThat(signals.throttleExplainsFall()).isFalse();
    }
  }

  @Test
  @Tag("S11")
  void aMovementExplainsFor400MsAndNoLonger() {
    run(100);
    throttlePct = 4.25; // 95 % of it is ahead of the slow average in the first tick, then less
    tick();
    assertThat(signals.throttleExplains()).isTrue();
    assertThat(signals.throttleExplainsFall()).as("it opened").isFalse();
    run(80);
    assertThat(signals.throttleExplains()).isTrue();
    tick();
    assertThat(signals.throttleExplains()).isFalse();
  }

  @Test
  @Tag("S11")
  void aClosingExplainsAFallFor400MsAndNoLonger() {
    throttlePct = 50.0;
    run(100);
    throttlePct = 48.4; // 1.52 below in the first tick, then less than 1.5
    tick();
    assertThat(signals.throttleExplainsFall()).isTrue();
    assertThat(signals.throttleExplains()).as("too little to explain a rise").isFalse();
    run(80);
    assertThat(signals.throttleExplainsFall()).isTrue();
    tick();
    assertThat(signals.throttleExplainsFall()).isFalse();
  }

  @Test
  @Tag("S13")
  void anEngineSpeedAQuarterBeyondTheRedlineIsTheLastThatIsBelieved() {
    double[] up = {5_000.0, 5_500.0, 6_000.0, 6_600.0, 7_200.0, 7_900.0, 8_480.0};
    for (double rpm : up) {
      enginePulse(rpm);
      assertThat(signals.engineRpm()).isCloseTo(rpm, within(1e-6));
    }
    enginePulse(8_520.0);
    assertThat(signals.lastPulseRpm()).isCloseTo(8_480.0, within(1e-6));
  }

  @Test
  @Tag("S13")
  void engineSpeedFollows25000PerSecondAndATenthAndNotMore() {
    for (int i = 0; i < 20; i++) {
      enginePulse(3_000.0);
    }
    // One tick of 5 ms: 125 and 300 1/min.
    enginePulse(3_430.0);
    assertThat(signals.lastPulseRpm()).isCloseTo(3_000.0, within(1e-6));
    enginePulse(3_000.0);
    enginePulse(3_420.0);
    assertThat(signals.lastPulseRpm()).isCloseTo(3_420.0, within(1e-6));
  }

  @Test
  void roadSpeedIsPulsesOverPulsesPerKilometre() {
    inputs.roadSeen = true;
    for (int i = 0; i < 20; i++) {
      inputs.roadPeriodNanos = 15e6; // 66.7 a second of 4000 to the kilometre
      inputs.roadPulseNanos = now + TICK;
      tick();
    }
    assertThat(signals.roadKmh()).isCloseTo(60.0, within(1e-9));
  }

  @Test
  void aRoadSpeedThatIsNotWiredIsZeroWhateverTheInputPicksUp() {
    car.roadPulsesPerKm = 0.0;
    build();
    inputs.roadSeen = true;
    inputs.roadPeriodNanos = 15e6;
    inputs.roadPulseNanos = now + TICK;
    tick();
    assertThat(signals.roadKmh()).isZero();
    assertThat(signals.road().age(now)).isEqualTo(Long.MAX_VALUE);
  }
}
