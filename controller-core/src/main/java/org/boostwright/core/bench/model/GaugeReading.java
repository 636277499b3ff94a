package org.boostwright.core.bench.model;

/**
 * One gauge reading by eye.
 *
 * @param frequencyHz PWM frequency, Hz
 * @param dutyFraction duty, 0 to 1
 * @param kpaGauge what the needle showed, kPa gauge
 * @param resolutionKpa smallest step the person can read, kPa
 */
public record GaugeReading(
    double frequencyHz, double dutyFraction, double kpaGauge, double resolutionKpa) {}
