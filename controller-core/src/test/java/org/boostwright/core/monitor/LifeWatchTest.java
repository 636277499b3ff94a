package org.boostwright.core.monitor;

import static org.assertj.core.api.Assertions.assertThat;

import org.boostwright.core.TestCar;
import org.boostwright.core.settings.MapLocation;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/** Signs of life of the pressure sensor: 20 kPa down in the manifold, 20 kPa up before it. */
@Tag("S11")
class LifeWatchTest {

  private static LifeWatch watch(MapLocation location) {
    TestCar car = new TestCar();
    car.mapLocation = location;
    return new LifeWatch(car.build().sensors());
  }

  @Test
  void inTheManifoldOnlyAFallByTheDeclaredChangeIsLife() {
    LifeWatch life = watch(MapLocation.INTAKE_MANIFOLD);
    assertThat(life.shown()).isFalse();
    life.update(false, true, 80.1, 100.0);
    life.update(false, true, 190.0, 100.0);
    assertThat(life.shown()).isFalse();
    life.update(false, true, 80.0, 100.0);
    assertThat(life.shown()).isTrue();
    life.update(false, true, 100.0, 100.0);
    assertThat(life.shown()).as("kept").isTrue();
  }

  @Test
  void beforeTheThrottleOnlyARiseByTheDeclaredChangeIsLife() {
    LifeWatch life = watch(MapLocation.BEFORE_THROTTLE);
    life.update(false, true, 119.9, 100.0);
    life.update(false, true, 40.0, 100.0);
    assertThat(life.shown()).isFalse();
    life.update(false, true, 120.0, 100.0);
    assertThat(life.shown()).isTrue();
  }

  @Test
  void withoutARunningEngineNothingIsLife() {
    LifeWatch life = watch(MapLocation.INTAKE_MANIFOLD);
    life.update(false, false, 40.0, 100.0);
    life.update(true, false, 40.0, 100.0);
    life.update(true, true, 40.0, 100.0);
    assertThat(life.shown()).isFalse();
  }

  @Test
  void aStopAsksForLifeAnewAndAStallOfTheSpeedSignalDoesNot() {
    LifeWatch life = watch(MapLocation.INTAKE_MANIFOLD);
    life.update(false, true, 40.0, 100.0);
    life.update(false, false, 100.0, 100.0);
    assertThat(life.shown()).isTrue();
    life.update(true, false, 100.0, 100.0);
    assertThat(life.shown()).isFalse();
  }

  @Test
  @Tag("S10")
  void anUnknownAmbientPressureShowsNoLife() {
    LifeWatch life = watch(MapLocation.INTAKE_MANIFOLD);
    life.update(false, true, 40.0, Double.NaN);
    life.update(false, true, Double.NaN, 100.0);
    assertThat(life.shown()).isFalse();
  }
}
