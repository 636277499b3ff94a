package org.boostwright.core.settings;

import org.boostwright.core.AnalogChannel;
import org.jspecify.annotations.Nullable;

/**
 * The analogue sensors.
 *
 * @param channels one entry per {@link AnalogChannel}, null where not fitted; MAP and THROTTLE are
 *     always fitted
 * @param mapLocation where the pressure sensor sits
 * @param lifeChangeKpa how far manifold pressure must move from ambient after the engine starts
 *     before control may become ready, kPa: a fall where the sensor sees vacuum, a rise elsewhere
 * @param mapNoiseKpa declared noise floor of the pressure signal, standard deviation, kPa
 * @param ambientKpaAbs ambient pressure to assume until one has been measured, kPa absolute; NaN
 *     when there is none and control waits for a measurement
 */
public record SensorSettings(
    @Nullable AnalogSensor[] channels,
    MapLocation mapLocation,
    double lifeChangeKpa,
    double mapNoiseKpa,
    double ambientKpaAbs) {

  /** The sensor of a channel, null where not fitted. */
  public @Nullable AnalogSensor channel(AnalogChannel channel) {
    return channels[channel.ordinal()];
  }
}
