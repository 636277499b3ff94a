package org.boostwright.core.settings;

/**
 * Spool strategy: hold the wastegate shut while pressure climbs, hand over in time.
 *
 * @param enabled off: base duty from the start
 * @param leadSeconds hand over when MAP + lead * rate reaches the target, s
 * @param timeLimitSeconds longest time the wastegate is held shut in one go, s
 * @param minRiseKpaPerSecond slowest rise that counts as spooling, kPa/s
 */
public record SpoolSettings(
    boolean enabled, double leadSeconds, double timeLimitSeconds, double minRiseKpaPerSecond) {}
