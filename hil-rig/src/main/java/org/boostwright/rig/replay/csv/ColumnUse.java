package org.boostwright.rig.replay.csv;

/**
 * A column that is read: where it is and how its numbers become base units.
 *
 * @param signal what it is
 * @param cell place in the row, from 0
 * @param header header text
 * @param unit unit of the numbers
 * @param unitAssumed true when neither header nor mapping says the unit
 * @param gauge true when the pressure is counted from ambient
 * @param declared what the mapping declares about it
 */
record ColumnUse(
    LogSignal signal,
    int cell,
    String header,
    LogUnit unit,
    boolean unitAssumed,
    boolean gauge,
    ColumnMapping declared) {}
