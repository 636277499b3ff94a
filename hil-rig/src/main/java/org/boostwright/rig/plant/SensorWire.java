package org.boostwright.rig.plant;

import org.boostwright.core.AnalogChannel;
import org.boostwright.core.Inputs;

/**
 * Electrical side of one sensor: wire, input filter and converter.
 *
 * <p>The filter {@code dv/dt = (u - v)/tau} is solved exactly for an input that changes linearly.
 */
final class SensorWire {
  final WireFaults faults = new WireFaults();

  private final AnalogChannel channel;
  private final SensorParams params;
  private final double openRailVolts;
  private final double noiseVolts;
  private final Noise noise;

  private double filteredVolts;
  private boolean contactOpen;
  private double untilContactChanges;
  private double decaySeconds = Double.NaN;
  private double decayTau = Double.NaN;
  private double decay;
  private double lastVolts;
  private long lastNanos;
  private boolean converted;

  /**
   * @param channel converter channel
   * @param params filter and converter
   * @param openRailVolts where an open input goes, V
   * @param noiseVolts noise of the sensor, standard deviation, V
   * @param noise source of noise
   */
  SensorWire(
      AnalogChannel channel,
      SensorParams params,
      double openRailVolts,
      double noiseVolts,
      Noise noise) {
    this.channel = channel;
    this.params = params;
    this.openRailVolts = openRailVolts;
    this.noiseVolts = noiseVolts;
    this.noise = noise;
  }

  /** The sensor reaches the filter. */
  boolean connected() {
    return faults.wire == WireFaults.Wire.SOUND && !contactOpen;
  }

  /** Time constant of the filter in its present state, s. */
  double tau() {
    boolean open = faults.wire == WireFaults.Wire.OPEN || contactOpen;
    return open ? params.openSeconds() : params.filterSeconds();
  }

  /** Puts the filter at rest at the sensor's output. */
  void settle(double sensorVolts) {
    filteredVolts = input(sensorVolts);
  }

  /** Lets time pass while the sensor's output changes linearly, V. */
  void advance(double seconds, double startVolts, double endVolts) {
    moveContact(seconds);
    double tau = tau();
    if (seconds != decaySeconds || tau != decayTau) {
      decaySeconds = seconds;
      decayTau = tau;
      decay = Math.exp(-seconds / tau);
    }
    double from = input(startVolts);
    double to = input(endVolts);
    double behind = tau * (to - from) / seconds;
    filteredVolts = to - behind + (filteredVolts - from + behind) * decay;
  }

  /** Factor by which a disturbance of the filter has died down in the last {@link #advance}. */
  double decay() {
    return decay;
  }

  private double input(double sensorVolts) {
    if (contactOpen) {
      return openRailVolts;
    }
    return switch (faults.wire) {
      case SOUND -> faults.offsetVolts + faults.scale * sensorVolts;
      case OPEN -> openRailVolts;
      case SHORT_TO_GROUND -> 0.0;
      case SHORT_TO_SUPPLY -> ProjectCar.SENSOR_SUPPLY_VOLTS;
    };
  }

  private void moveContact(double seconds) {
    if (!(faults.intermittentFraction > 0.0 && faults.intermittentPeriodSeconds > 0.0)) {
      contactOpen = false;
      untilContactChanges = 0.0;
      return;
    }
    untilContactChanges -= seconds;
    if (untilContactChanges <= 0.0) {
      contactOpen = !contactOpen;
      double share = contactOpen ? faults.intermittentFraction : 1.0 - faults.intermittentFraction;
      untilContactChanges = faults.intermittentPeriodSeconds * share * (0.5 + noise.uniform());
    }
  }

  /** Converts once and writes the sample; {@code addedVolts} rides on the filter's output. */
  void sample(Inputs inputs, long nowNanos, double addedVolts) {
    int i = channel.ordinal();
    if (faults.noAnswer) {
      inputs.answered[i] = false;
      return;
    }
    if (!converted || !(faults.frozen || faults.stale)) {
      lastVolts = convert(addedVolts);
      converted = true;
      lastNanos = nowNanos;
    } else if (!faults.stale) {
      lastNanos = nowNanos;
    }
    inputs.sample(channel, lastVolts, lastNanos);
  }

  private double convert(double addedVolts) {
    double volts = filteredVolts + addedVolts;
    if (connected()) {
      volts += faults.noiseFactor * noiseVolts * noise.gaussian();
    }
    if (faults.intermittentFraction > 0.0
        && !(faults.intermittentPeriodSeconds > 0.0)
        && noise.uniform() < faults.intermittentFraction) {
      volts = openRailVolts;
    }
    if (!Double.isNaN(faults.replacedVolts)) {
      volts = faults.replacedVolts;
    }
    volts = volts > 0.0 ? Math.min(volts, ProjectCar.SENSOR_SUPPLY_VOLTS) : 0.0;
    return Math.rint(volts / params.lsbVolts()) * params.lsbVolts();
  }
}
