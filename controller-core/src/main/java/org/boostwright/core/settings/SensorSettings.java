package org.boostwright.core.settings;

import java.util.Arrays;
import java.util.Objects;
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
 * @param ambientKpaAbs ambient pressure to assume until one has been measured, and that of the
 *     lowest place the car is driven; kPa absolute. NaN when there is none: control waits for a
 *     measurement, and that place is at sea level
 */
@SuppressWarnings("ArrayRecordComponent") // copied on the way in and out
public record SensorSettings(
    @Nullable AnalogSensor[] channels,
    MapLocation mapLocation,
    double lifeChangeKpa,
    double mapNoiseKpa,
    double ambientKpaAbs) {

  /**
   * Takes its own copy of the array.
   *
   * @throws IllegalArgumentException when the array does not have one place per channel
   */
  public SensorSettings {
    if (channels.length != AnalogChannel.COUNT) {
      throw new IllegalArgumentException(
          AnalogChannel.COUNT + " analogue channels, not " + channels.length);
    }
    channels = channels.clone();
  }

  /** A copy; inside the tick use {@link #channel}, which allocates nothing. */
  @Override
  public @Nullable AnalogSensor[] channels() {
    return channels.clone();
  }

  /** The sensor of a channel, null where not fitted. */
  public @Nullable AnalogSensor channel(AnalogChannel channel) {
    return channels[channel.ordinal()];
  }

  @Override
  public boolean equals(@Nullable Object other) {
    return other instanceof SensorSettings that
        && Arrays.equals(channels, that.channels)
        && mapLocation == that.mapLocation
        && Double.compare(lifeChangeKpa, that.lifeChangeKpa) == 0
        && Double.compare(mapNoiseKpa, that.mapNoiseKpa) == 0
        && Double.compare(ambientKpaAbs, that.ambientKpaAbs) == 0;
  }

  @Override
  public int hashCode() {
    return Objects.hash(
        Arrays.hashCode(channels), mapLocation, lifeChangeKpa, mapNoiseKpa, ambientKpaAbs);
  }
}
