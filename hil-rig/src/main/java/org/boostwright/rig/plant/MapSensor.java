package org.boostwright.rig.plant;

import org.boostwright.core.AnalogChannel;
import org.boostwright.core.Inputs;

/**
 * The manifold pressure sensor: hose, lag, transfer function, wire, filter and converter.
 *
 * <p>The pulsation of the intake is a sine at twice engine speed. Sensor lag and filter are linear,
 * so its share of the filter's output is carried in closed form beside the slow one: a phasor
 * through both lags, reached with the filter's own time constant when something changes.
 */
final class MapSensor {
  /** Hose off the sensor: it sees ambient and no pulsation. */
  boolean hoseOff;

  private final SensorParams params;
  private final SensorWire wire;
  private double lagPa;
  private double decaySeconds = Double.NaN;
  private double decay;
  private double pulsationVolts;
  private double pulsationGoal;

  MapSensor(SensorParams params, Noise noise) {
    this.params = params;
    wire =
        new SensorWire(
            AnalogChannel.MAP,
            params,
            0.0,
            params.mapNoiseKpa() * ProjectCar.mapVoltsPerKpa(),
            noise);
  }

  WireFaults wireFaults() {
    return wire.faults;
  }

  /** Puts sensor and filter at rest at a pressure, Pa. */
  void settle(double pa) {
    lagPa = pa;
    wire.settle(volts(pa));
    pulsationVolts = 0.0;
    pulsationGoal = 0.0;
  }

  /** Lets time pass while the pressure at the sensor changes linearly, Pa. */
  void advance(double seconds, double startPa, double endPa) {
    double tau = params.mapLagSeconds();
    double behind = tau * (endPa - startPa) / seconds;
    double before = lagPa;
    if (seconds != decaySeconds) {
      decaySeconds = seconds;
      decay = Math.exp(-seconds / tau);
    }
    lagPa = endPa - behind + (lagPa - startPa + behind) * decay;
    wire.advance(seconds, volts(before), volts(lagPa));
    pulsationVolts *= wire.decay();
    pulsationGoal *= wire.decay();
  }

  /**
   * Brings the pulsation to the present crank angle.
   *
   * @param phase angle of the pulsation, rad
   * @param radPerSecond its frequency, rad/s; 0 with the engine stopped
   */
  void pulsate(double phase, double radPerSecond) {
    double goal = 0.0;
    if (radPerSecond > 0.0 && !hoseOff && wire.connected()) {
      // Imaginary part of exp(j*phase)/((1 + j*lag)*(1 + j*filter)).
      double lag = radPerSecond * params.mapLagSeconds();
      double filter = radPerSecond * wire.tau();
      double turned = Math.sin(phase) * (1.0 - lag * filter) - Math.cos(phase) * (lag + filter);
      double amplitudeVolts =
          0.5 * params.pulsationKpa() * ProjectCar.mapVoltsPerKpa() * wire.faults.scale;
      goal = amplitudeVolts * turned / ((1.0 + lag * lag) * (1.0 + filter * filter));
    }
    // What lay between output and steady oscillation has died down meanwhile, see advance.
    pulsationVolts = goal + (pulsationVolts - pulsationGoal);
    pulsationGoal = goal;
  }

  void sample(Inputs inputs, long nowNanos) {
    wire.sample(inputs, nowNanos, pulsationVolts);
  }

  private double volts(double pa) {
    double kpa = pa * 1e-3 * params.mapScale() + params.mapOffsetKpa();
    double volts = ProjectCar.mapVolts(kpa);
    return Math.max(
        ProjectCar.MAP_SATURATED_LOW_VOLTS, Math.min(volts, ProjectCar.MAP_SATURATED_HIGH_VOLTS));
  }
}
