package org.boostwright.core.monitor;

import static org.assertj.core.api.Assertions.assertThat;

import org.boostwright.core.TestCar;
import org.boostwright.core.settings.MapLocation;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/**
 * Signs of life of the pressure sensor: 20 kPa down in the manifold, 20 kPa up after a blip before
 * it.
 */
@Tag("S11")
class LifeWatchTest {

  private long now = Long.MAX_VALUE - 1_000_000_000L;

  private static LifeWatch watch(MapLocation location) {
    TestCar car = new TestCar();
    car.mapLocation = location;
    return new LifeWatch(car.build().sensors());
  }

  private void see(
      LifeWatch life, boolean stopped, boolean running, double kpa, double ambientKpaAbs) {
    now += 5_000_000L;
    life.update(now, stopped, running, kpa, ambientKpaAbs, 5.0);
  }

  @Test
  void inTheManifoldOnlyAFallByTheDeclaredChangeIsLife() {
    LifeWatch life = watch(MapLocation.INTAKE_MANIFOLD);
    assertThat(life.shown()).isFalse();
    see(life, false, true, 80.1, 100.0);
    see(life, false, true, 190.0, 100.0);
    assertThat(life.shown()).isFalse();
    see(life, false, true, 80.0, 100.0);
    assertThat(life.shown()).isTrue();
    see(life, false, true, 100.0, 100.0);
    assertThat(life.shown()).as("kept").isTrue();
  }

  /** The engine runs; pressure and throttle stand. */
  private void hold(LifeWatch life, double seconds, double kpa, double throttlePct) {
    for (int i = 0; i < seconds * 200.0; i++) {
      now += 5_000_000L;
      life.update(now, false, true, kpa, 100.0, throttlePct);
    }
  }

  @Test
  void beforeTheThrottleThePressureMustFollowABlipByTheDeclaredRise() {
    LifeWatch life = watch(MapLocation.BEFORE_THROTTLE);
    hold(life, 10.0, 100.0, 5.0);
    hold(life, 0.5, 100.0, 20.0);
    hold(life, 0.5, 119.9, 20.0);
    assertThat(life.shown()).as("just below the declared rise").isFalse();
    hold(life, 0.1, 120.0, 20.0);
    assertThat(life.shown()).isTrue();
    hold(life, 5.0, 100.0, 5.0);
    assertThat(life.shown()).as("kept").isTrue();
  }

  @Test
  void aRiseThatFollowsNothingIsNoLife() {
    LifeWatch life = watch(MapLocation.BEFORE_THROTTLE);
    hold(life, 10.0, 100.0, 5.0);
    hold(life, 1.0, 150.0, 19.9);
    assertThat(life.shown()).as("just below a blip").isFalse();
    hold(life, 4.0, 100.0, 5.0);
    hold(life, 7.0, 100.0, 30.0);
    hold(life, 1.0, 130.0, 30.0);
    assertThat(life.shown()).as("a blip of long ago").isFalse();
  }

  @Test
  void aDescentWithTheHoseOffIsNoLifeWhateverAmbientIsTakenFor() {
    LifeWatch life = watch(MapLocation.BEFORE_THROTTLE);
    double kpa = 80.0;
    // 20 m of height in a second is a fall, not a road: 0.24 kPa a second.
    for (int second = 0; second < 120; second++) {
      hold(life, 1.0, kpa, second % 4 < 2 ? 5.0 : 60.0);
      kpa += 0.24;
    }
    assertThat(kpa).isGreaterThan(80.0 + 20.0);
    assertThat(life.shown()).isFalse();
  }

  @Test
  void aRiseThatDoesNotReachAboveAmbientIsNoLife() {
    LifeWatch life = watch(MapLocation.BEFORE_THROTTLE);
    hold(life, 4.0, 60.0, 5.0);
    hold(life, 1.0, 119.0, 60.0);
    assertThat(life.shown()).isFalse();
    hold(life, 0.1, 120.0, 60.0);
    assertThat(life.shown()).isTrue();
  }

  @Test
  void theStartOfTheEngineIsFollowedToo() {
    LifeWatch life = watch(MapLocation.BEFORE_THROTTLE);
    for (int i = 0; i < 400; i++) {
      now += 5_000_000L;
      life.update(now, true, false, 100.0, 100.0, 5.0);
    }
    hold(life, 2.9, 119.9, 5.0);
    assertThat(life.shown()).isFalse();
    hold(life, 0.05, 120.0, 5.0);
    assertThat(life.shown()).isTrue();
    LifeWatch late = watch(MapLocation.BEFORE_THROTTLE);
    hold(late, 3.1, 100.0, 5.0);
    hold(late, 1.0, 130.0, 5.0);
    assertThat(late.shown()).as("the start is over").isFalse();
  }

  @Test
  @Tag("S10")
  void anUnknownThrottleExplainsNoRise() {
    LifeWatch life = watch(MapLocation.BEFORE_THROTTLE);
    hold(life, 4.0, 100.0, Double.NaN);
    hold(life, 1.0, 150.0, Double.NaN);
    hold(life, 1.0, Double.NaN, 50.0);
    assertThat(life.shown()).isFalse();
  }

  @Test
  void withoutARunningEngineNothingIsLife() {
    LifeWatch life = watch(MapLocation.INTAKE_MANIFOLD);
    see(life, false, false, 40.0, 100.0);
    see(life, true, false, 40.0, 100.0);
    see(life, true, true, 40.0, 100.0);
    assertThat(life.shown()).isFalse();
  }

  @Test
  void aStopAsksForLifeAnewAndAStallOfTheSpeedSignalDoesNot() {
    LifeWatch life = watch(MapLocation.INTAKE_MANIFOLD);
    see(life, false, true, 40.0, 100.0);
    see(life, false, false, 100.0, 100.0);
    assertThat(life.shown()).isTrue();
    see(life, true, false, 100.0, 100.0);
    assertThat(life.shown()).isFalse();
  }

  @Test
  @Tag("S10")
  void anUnknownAmbientPressureShowsNoLife() {
    LifeWatch life = watch(MapLocation.INTAKE_MANIFOLD);
    see(life, false, true, 40.0, Double.NaN);
    see(life, false, true, Double.NaN, 100.0);
    assertThat(life.shown()).isFalse();
  }
}
