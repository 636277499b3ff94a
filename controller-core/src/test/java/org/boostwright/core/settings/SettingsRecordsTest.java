package org.boostwright.core.settings;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import org.boostwright.core.AnalogChannel;
import org.boostwright.core.table.Axis;
import org.boostwright.core.table.Curve;
import org.boostwright.core.table.Table2d;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;

/** Nobody can change settings that are in use, and equal numbers are equal settings. */
class SettingsRecordsTest {

  @Test
  void gearRatiosCannotBeChangedFromOutside() {
    double[] ratios = {113.8, 68.5};
    CarSettings car = new CarSettings("car", 4, 2, 6800, 500, 4000, ratios);
    ratios[0] = 0.0;
    car.gearRpmPerKmh()[1] = 0.0;
    assertThat(car.gearRpmPerKmh()).containsExactly(113.8, 68.5);
    assertThat(car.gearRpmPerKmh(0)).isEqualTo(113.8);
    assertThat(car)
        .isEqualTo(new CarSettings("car", 4, 2, 6800, 500, 4000, new double[] {113.8, 68.5}))
        .hasSameHashCodeAs(
            new CarSettings("car", 4, 2, 6800, 500, 4000, new double[] {113.8, 68.5}))
        .isNotEqualTo(new CarSettings("car", 4, 2, 6800, 500, 4000, new double[] {113.8, 68.4}));
  }

  @Test
  void gearTargetsCannotBeChangedFromOutside() {
    double[] targets = {160.0, 180.0};
    LimitSettings limits = limits(targets);
    targets[0] = 400.0;
    limits.gearTargetKpaAbs()[1] = 400.0;
    assertThat(limits.gearTargetKpaAbs()).containsExactly(160.0, 180.0);
    assertThat(limits.gearTargetKpaAbs(1)).isEqualTo(180.0);
    assertThat(limits.gearTargets()).isEqualTo(2);
    assertThat(limits).isEqualTo(limits(new double[] {160.0, 180.0}));
    assertThat(limits).isNotEqualTo(limits(new double[] {160.0, 181.0}));
  }

  private static LimitSettings limits(double[] gears) {
    Curve one = Curve.constant(1.0);
    return new LimitSettings(200, 2.5, one, 0.1, one, 75, gears, 165, 1800, 30, false);
  }

  @Test
  void sensorsCannotBeSwappedFromOutside() {
    AnalogSensor sensor =
        new AnalogSensor(new Curve(new Axis(0.5, 4.5), 20, 300), 0.2, 4.8, 1e-4, 0, 5, 3000);
    @Nullable AnalogSensor[] channels = new @Nullable AnalogSensor[AnalogChannel.COUNT];
    channels[AnalogChannel.MAP.ordinal()] = sensor;
    SensorSettings sensors =
        new SensorSettings(channels, MapLocation.INTAKE_MANIFOLD, 15, 0.3, Double.NaN);
    channels[AnalogChannel.MAP.ordinal()] = null;
    sensors.channels()[AnalogChannel.MAP.ordinal()] = null;
    assertThat(sensors.channel(AnalogChannel.MAP)).isSameAs(sensor);
    assertThat(sensors)
        .isEqualTo(
            new SensorSettings(
                sensors.channels(), MapLocation.INTAKE_MANIFOLD, 15, 0.3, Double.NaN));
    assertThatThrownBy(
            () ->
                new SensorSettings(
                    new @Nullable AnalogSensor[3], MapLocation.INTAKE_MANIFOLD, 15, 0.3, 100))
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessageContaining("7 analogue channels, not 3");
  }

  @Test
  void curvesAndTablesAreEqualWhenTheirNumbersAre() {
    Curve curve = new Curve(new Axis(1, 2), 3, 4);
    assertThat(curve).isEqualTo(new Curve(new Axis(1, 2), 3, 4));
    assertThat(curve).hasSameHashCodeAs(new Curve(new Axis(1, 2), 3, 4));
    assertThat(curve).isNotEqualTo(new Curve(new Axis(1, 2), 3, 5));
    assertThat(curve).isNotEqualTo(new Curve(new Axis(1, 3), 3, 4));
    Table2d table = new Table2d(new Axis(1), new Axis(1, 2), new double[] {3, 4});
    assertThat(table).isEqualTo(new Table2d(new Axis(1), new Axis(1, 2), new double[] {3, 4}));
    assertThat(table).isNotEqualTo(new Table2d(new Axis(1), new Axis(1, 2), new double[] {3, 5}));
  }
}
