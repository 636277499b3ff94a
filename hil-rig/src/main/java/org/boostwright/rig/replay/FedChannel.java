package org.boostwright.rig.replay;

import org.boostwright.core.AnalogChannel;
import org.boostwright.core.settings.AnalogSensor;

/**
 * What was fed into one analogue channel.
 *
 * @param channel the channel
 * @param header header of the column it came from
 * @param sensor the sensor as replayed: resolution, refresh and noise of the recording
 * @param samples samples fed
 * @param clipped samples outside what the sensor can show, fed as the end of its range
 */
public record FedChannel(
    AnalogChannel channel, String header, AnalogSensor sensor, long samples, long clipped) {}
