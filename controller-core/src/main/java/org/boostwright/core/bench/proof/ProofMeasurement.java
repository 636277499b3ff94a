package org.boostwright.core.bench.proof;

/**
 * One measured number of a proof.
 *
 * @param id dotted snake_case name
 * @param value the number
 * @param unit its unit
 * @param low lower end of its 95 % interval, NaN when there is none
 * @param high upper end, NaN when there is none
 */
public record ProofMeasurement(String id, double value, String unit, double low, double high) {}
