package org.boostwright.core.bench.model;

/**
 * A settled mean for the fit.
 *
 * @param frequencyHz PWM frequency, Hz
 * @param dutyFraction duty, inside the window
 * @param meanKpaAbs mean pressure of the line, kPa absolute
 * @param sigmaKpa its standard deviation, kPa
 */
public record MeanPoint(
    double frequencyHz, double dutyFraction, double meanKpaAbs, double sigmaKpa) {}
