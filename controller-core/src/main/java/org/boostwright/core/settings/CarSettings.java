package org.boostwright.core.settings;

/**
 * The car and its speed signals.
 *
 * @param name shown in reports
 * @param cylinders number of cylinders, 1 to 12
 * @param pulsesPerRevolution engine-speed pulses per crankshaft revolution: 0.5, 1, 2, 3 or 4
 * @param redlineRpm highest engine speed the driver uses, 1/min; also the plausibility bound (1.25
 *     times this)
 * @param idleRpm engine speed above which the engine counts as running, 1/min
 * @param roadPulsesPerKm road-speed pulses per kilometre; 0 when no road speed is wired
 * @param gearRpmPerKmh engine speed divided by road speed in each forward gear, first gear first;
 *     empty when gears are not told apart
 */
public record CarSettings(
    String name,
    int cylinders,
    double pulsesPerRevolution,
    double redlineRpm,
    double idleRpm,
    double roadPulsesPerKm,
    double[] gearRpmPerKmh) {}
