package org.boostwright.core.settings;

import org.boostwright.core.table.Curve;

/**
 * The three-port valve. Energised vents the actuator: the only supported sense, because only then
 * is a dead coil safe.
 *
 * @param frequencyHz PWM frequency, 10 to 100 Hz
 * @param windowLowDuty lower edge of the proven duty window, 0 to 1: below it the valve never vents
 * @param windowHighDuty upper edge, 0 to 1: above it the valve never supplies
 * @param commandToDuty duty over the 0..1 valve command inside the window; rises from {@code
 *     windowLowDuty} at 0 to {@code windowHighDuty} at 1
 * @param coilOhms coil resistance, ohm
 */
public record ValveSettings(
    double frequencyHz,
    double windowLowDuty,
    double windowHighDuty,
    Curve commandToDuty,
    double coilOhms) {}
