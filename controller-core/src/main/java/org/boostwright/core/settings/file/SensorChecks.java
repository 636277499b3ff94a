package org.boostwright.core.settings.file;

import org.boostwright.core.AnalogChannel;
import org.boostwright.core.settings.AnalogSensor;
import org.boostwright.core.settings.Settings;

/** Does each sensor cover what it is there to see? */
final class SensorChecks {
  /** Ambient pressure on any road lies in here, kPa absolute. */
  private static final double AMBIENT_LOW_KPA = 60.0;

  private static final double AMBIENT_HIGH_KPA = 106.0;

  private final Reading reading;
  private final Settings settings;

  SensorChecks(Reading reading, Settings settings) {
    this.reading = reading;
    this.settings = settings;
  }

  void run() {
    pressure(AnalogChannel.MAP);
    pressure(AnalogChannel.BAROMETER);
    pedal(AnalogChannel.THROTTLE);
    pedal(AnalogChannel.PEDAL);
    frozen();
    life();
  }

  private void pressure(AnalogChannel channel) {
    AnalogSensor sensor = settings.sensors().channel(channel);
    String key = "sensors." + channel.id() + ".pressure";
    if (sensor == null || !reading.sound(key)) {
      return;
    }
    double low = lowest(sensor);
    double high = highest(sensor);
    if (!(low <= AMBIENT_LOW_KPA && high >= AMBIENT_HIGH_KPA)) {
      Quantity unit = reading.level(key);
      reading.atKey(
          Severity.ERROR,
          "sensor_span",
          key,
          "the sensor reads from "
              + unit.words(low)
              + " to "
              + unit.words(high)
              + " and cannot see ambient pressure, "
              + unit.words(AMBIENT_LOW_KPA)
              + " to "
              + unit.words(AMBIENT_HIGH_KPA)
              + ", on every road; correct the calibration (a gauge sensor's zero is "
              + unit.words(101.325)
              + ") or fit another sensor");
    }
  }

  private void pedal(AnalogChannel channel) {
    AnalogSensor sensor = settings.sensors().channel(channel);
    String key = "sensors." + channel.id() + "." + SensorReader.valueKey(channel);
    if (sensor == null) {
      return;
    }
    double low = lowest(sensor);
    double high = highest(sensor);
    if (low <= 10.0 && high >= 90.0) {
      return;
    }
    String slip =
        high <= 1.0
            ? " and looks like 0 to 1; it is written in percent, 0 to 100"
            : "; closed must read 10 % or less and fully open 90 % or more: calibrate it again";
    reading.atKey(
        Severity.ERROR,
        "sensor_span",
        key,
        "runs from " + Quantity.PERCENT.words(low) + " to " + Quantity.PERCENT.words(high) + slip);
  }

  private void frozen() {
    AnalogSensor map = settings.sensors().channel(AnalogChannel.MAP);
    if (map != null && !map.frozenIsWatched()) {
      reading.atKey(
          Severity.NOTE,
          "map_frozen_not_watched",
          "sensors.map.noise",
          "the declared noise does not exceed one step of the converter, or the sensor is read"
              + " less often than every "
              + Words.number(AnalogSensor.FROZEN_REFRESH_MILLIS)
              + " ms, so a reading that freezes in range is not detected; measure the noise of a"
              + " steady reading and write it here");
    }
  }

  private void life() {
    double life = settings.sensors().lifeChangeKpa();
    double noise = settings.sensors().mapNoiseKpa();
    if (!(life > 5.0 * noise)) {
      Quantity apart = reading.difference("sensors.map.life_change");
      reading.atKey(
          Severity.ERROR,
          "life_in_noise",
          "sensors.map.life_change",
          apart.words(life)
              + " is not above five times the declared noise, "
              + apart.words(noise)
              + ": noise alone would pass for a living sensor; raise it or lower the noise");
    }
  }

  private static double lowest(AnalogSensor sensor) {
    int last = sensor.calibration().axis().size() - 1;
    return Math.min(sensor.calibration().value(0), sensor.calibration().value(last));
  }

  private static double highest(AnalogSensor sensor) {
    int last = sensor.calibration().axis().size() - 1;
    return Math.max(sensor.calibration().value(0), sensor.calibration().value(last));
  }
}
