package org.boostwright.rig.plant;

import java.util.EnumSet;
import java.util.Set;
import org.boostwright.core.AnalogChannel;
import org.boostwright.core.Inputs;

/** The car's sensors, pulse signals, switches and battery, and how they fill {@link Inputs}. */
public final class CarSensors {
  static final double COIL_SEEN_AMPS = 0.05;

  private static final int CHANNELS = AnalogChannel.COUNT;
  private static final AnalogChannel[] CHANNEL = AnalogChannel.values();
  private static final int MAP = AnalogChannel.MAP.ordinal();
  private static final double SENSOR_NOISE_VOLTS = 1e-3;

  /** Battery voltage, V. */
  public double batteryVolts = 14.0;

  /** Coolant temperature, degC. */
  public double coolantC = 85.0;

  /** Ignition key. */
  public boolean keyOn = true;

  /** Permit from an external safety device. */
  public boolean permit = true;

  /** Boost selector asks for the high target. */
  public boolean highBoost = true;

  final PulseTrain tach;
  final PulseTrain road;

  private final SensorParams params;
  private final MapSensor map;
  private final SensorWire[] wires = new SensorWire[CHANNELS];
  private final boolean[] fitted = new boolean[CHANNELS];
  private final double[] lastVolts = new double[CHANNELS];
  private double airKelvin;
  private double ambientKpaAbs;
  private double throttle;
  private double pedal;
  private double revolutions;

  CarSensors(SensorParams params, long seed) {
    this.params = params;
    // Each part has its own stream, so that a fault of one leaves the noise of the others alone.
    tach = new PulseTrain(new Noise(seed * 31 + 101));
    road = new PulseTrain(new Noise(seed * 31 + 102));
    map = new MapSensor(params, new Noise(seed * 31 + AnalogChannel.MAP.ordinal()));
    for (AnalogChannel channel : AnalogChannel.values()) {
      double rail =
          channel == AnalogChannel.INTAKE_AIR || channel == AnalogChannel.COOLANT
              ? ProjectCar.SENSOR_SUPPLY_VOLTS
              : 0.0;
      wires[channel.ordinal()] =
          new SensorWire(
              channel, params, rail, SENSOR_NOISE_VOLTS, new Noise(seed * 31 + channel.ordinal()));
    }
    setFitted(
        EnumSet.of(
            AnalogChannel.MAP,
            AnalogChannel.THROTTLE,
            AnalogChannel.INTAKE_AIR,
            AnalogChannel.SUPPLY));
  }

  /** Which analogue sensors are there; the others never answer. */
  public void setFitted(Set<AnalogChannel> channels) {
    for (AnalogChannel channel : AnalogChannel.values()) {
      fitted[channel.ordinal()] = channels.contains(channel);
    }
  }

  WireFaults[] wireFaults() {
    WireFaults[] all = new WireFaults[CHANNELS];
    for (int i = 0; i < CHANNELS; i++) {
      all[i] = i == MAP ? map.wireFaults() : wires[i].faults;
    }
    return all;
  }

  void mapHoseOff(boolean off) {
    map.hoseOff = off;
  }

  /** One solver step of the pressure sensor. */
  void pressure(double seconds, double startPa, double endPa, double ambientPa) {
    map.advance(seconds, map.hoseOff ? ambientPa : startPa, map.hoseOff ? ambientPa : endPa);
  }

  /** Everything that needs no finer time than a tick. */
  void advance(
      long startNanos,
      long nanos,
      double turned,
      double drivenM,
      double radPerSecond,
      double throttlePct,
      double pedalPct,
      double intakeKelvin,
      double ambientPa) {
    double seconds = nanos * 1e-9;
    tach.advance(startNanos, nanos, turned * ProjectCar.TACH_PULSES_PER_REV);
    road.advance(startNanos, nanos, drivenM * 1e-3 * ProjectCar.ROAD_PULSES_PER_KM);
    revolutions += turned;
    // Four cylinders: the intake pulses twice a revolution.
    map.pulsate(4.0 * Math.PI * (revolutions % 1.0), 2.0 * radPerSecond);
    airKelvin += (intakeKelvin - airKelvin) * Math.min(1.0, seconds / params.airLagSeconds());
    ambientKpaAbs = ambientPa * 1e-3;
    throttle = throttlePct;
    pedal = pedalPct;
    for (int i = 0; i < CHANNELS; i++) {
      if (fitted[i] && i != MAP) {
        double volts = sensorVolts(CHANNEL[i]);
        wires[i].advance(seconds, lastVolts[i], volts);
        lastVolts[i] = volts;
      }
    }
  }

  private double sensorVolts(AnalogChannel channel) {
    return switch (channel) {
      case MAP -> Double.NaN;
      case THROTTLE -> ProjectCar.throttleVolts(throttle);
      case PEDAL -> ProjectCar.throttleVolts(pedal);
      case INTAKE_AIR -> ProjectCar.temperatureVolts(airKelvin - 273.15);
      case COOLANT -> ProjectCar.temperatureVolts(coolantC);
      case BAROMETER -> ProjectCar.mapVolts(ambientKpaAbs);
      case SUPPLY -> ProjectCar.supplyVolts(batteryVolts);
    };
  }

  /** Puts sensors and filters at rest. */
  void settle(double intakePa, double throttlePct, double intakeKelvin, double ambientPa) {
    map.settle(intakePa);
    throttle = throttlePct;
    pedal = throttlePct;
    airKelvin = intakeKelvin;
    ambientKpaAbs = ambientPa * 1e-3;
    for (int i = 0; i < CHANNELS; i++) {
      if (i != MAP) {
        lastVolts[i] = sensorVolts(CHANNEL[i]);
        wires[i].settle(lastVolts[i]);
      }
    }
  }

  void read(Inputs inputs, long nowNanos, long clockOffsetNanos) {
    for (int i = 0; i < CHANNELS; i++) {
      if (!fitted[i]) {
        inputs.answered[i] = false;
      } else if (i == MAP) {
        map.sample(inputs, nowNanos);
      } else {
        wires[i].sample(inputs, nowNanos, 0.0);
      }
    }
    inputs.engineSeen = tach.seen();
    inputs.enginePulseNanos = tach.lastNanos() + clockOffsetNanos;
    inputs.enginePeriodNanos = tach.periodNanos();
    inputs.roadSeen = road.seen();
    inputs.roadPulseNanos = road.lastNanos() + clockOffsetNanos;
    inputs.roadPeriodNanos = road.periodNanos();
    inputs.keyOn = keyOn;
    inputs.permit = permit;
    inputs.highBoost = highBoost;
  }
}
