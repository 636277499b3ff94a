package org.boostwright.rig.replay.csv;

/**
 * A place where the recording starts again: the logger paused or its clock was set back.
 *
 * @param row first row after it, from 0
 * @param line line of that row in the file, from 1
 * @param seconds length of the pause, s; NaN where the clock was set back and nobody knows
 */
public record Pause(int row, int line, double seconds) {}
