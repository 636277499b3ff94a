package org.boostwright.core.settings;

import org.boostwright.core.table.Table2d;

/**
 * One car's whole settings, immutable and validated as a whole before anything runs.
 *
 * <p>All pressures in here are kPa absolute and all duties fractions, whatever units the file was
 * written in; {@link #units} only says how to show them.
 *
 * @param car the car and its speed signals
 * @param units how people want pressures shown
 * @param sensors analogue inputs, {@link SensorSettings}
 * @param valve the three-port valve and its proven window
 * @param target boost target, kPa absolute over throttle percent (rows) and 1/min (columns)
 * @param baseDuty base duty, 0 to 1 over throttle percent (rows) and 1/min (columns)
 * @param limits what is never exceeded
 * @param feedback pressure feedback (PID trim)
 * @param spool spool strategy
 * @param optional which optional inputs and outputs are fitted
 */
public record Settings(
    CarSettings car,
    UnitSettings units,
    SensorSettings sensors,
    ValveSettings valve,
    Table2d target,
    Table2d baseDuty,
    LimitSettings limits,
    FeedbackSettings feedback,
    SpoolSettings spool,
    OptionalWires optional) {}
