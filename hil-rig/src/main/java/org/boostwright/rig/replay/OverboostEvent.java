package org.boostwright.rig.replay;

/**
 * One overboost.
 *
 * @param seconds when it was confirmed, since the first row of the log, s
 * @param line line of the log that was the newest then
 * @param peakKpaAbs highest manifold pressure while it lasted, kPa absolute
 */
public record OverboostEvent(double seconds, int line, double peakKpaAbs) {}
