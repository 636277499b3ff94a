package org.boostwright.rig.logs.whatif;

import java.util.EnumSet;
import java.util.Set;
import org.boostwright.core.AnalogChannel;
import org.boostwright.core.Inputs;
import org.boostwright.core.settings.AnalogSensor;
import org.boostwright.core.settings.Settings;
import org.boostwright.core.table.Curve;
import org.boostwright.rig.plant.ProjectCar;
import org.boostwright.rig.plant.VirtualCar;
import org.boostwright.rig.replay.InverseCalibration;
import org.jspecify.annotations.Nullable;

/** Lets the virtual car's sensors speak the calibration of the user's settings. */
final class CarWires {
  private final @Nullable InverseCalibration[] sensors =
      new InverseCalibration[AnalogChannel.COUNT];
  private final Curve[] virtual = new Curve[AnalogChannel.COUNT];
  private final double tachFactor;
  private final double roadFactor;

  /**
   * @param gear gear driven in, for the ratio of engine to road speed; 0 when not known
   */
  CarWires(Settings settings, VirtualCar car, int gear) {
    Set<AnalogChannel> fitted = EnumSet.noneOf(AnalogChannel.class);
    for (AnalogChannel channel : AnalogChannel.values()) {
      AnalogSensor sensor = settings.sensors().channel(channel);
      virtual[channel.ordinal()] =
          switch (channel) {
            case MAP, BAROMETER -> ProjectCar.mapCurve();
            case THROTTLE, PEDAL -> ProjectCar.throttleCurve();
            case INTAKE_AIR, COOLANT -> ProjectCar.temperatureCurve();
            case SUPPLY -> ProjectCar.supplyCurve();
          };
      if (sensor != null) {
        sensors[channel.ordinal()] = new InverseCalibration(sensor);
        fitted.add(channel);
      }
    }
    car.sensors().setFitted(fitted);
    tachFactor = ProjectCar.TACH_PULSES_PER_REV / settings.car().pulsesPerRevolution();
    double[] ratios = settings.car().gearRpmPerKmh();
    double pulses = settings.car().roadPulsesPerKm();
    double own = gear >= 1 && gear <= ratios.length ? ratios[gear - 1] : Double.NaN;
    roadFactor =
        pulses > 0.0 && own > 0.0
            ? ProjectCar.ROAD_PULSES_PER_KM / pulses * own / car.params().car().rpmPerKmh(gear)
            : 1.0;
  }

  /** Turns what the virtual car's wires say into what the user's would say. */
  void translate(Inputs inputs, double addedKpa) {
    for (int i = 0; i < sensors.length; i++) {
      InverseCalibration sensor = sensors[i];
      if (sensor != null && inputs.answered[i]) {
        double value = virtual[i].at(inputs.volts[i]);
        boolean pressure = i == AnalogChannel.MAP.ordinal();
        inputs.volts[i] = sensor.volts(pressure ? value + addedKpa : value);
      }
    }
    inputs.enginePeriodNanos *= tachFactor;
    inputs.roadPeriodNanos *= roadFactor;
  }
}
