package org.boostwright.core.settings;

import org.boostwright.core.AnalogChannel;
import org.boostwright.core.table.Table2d;
import org.jspecify.annotations.Nullable;

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
 * @param demand what the rows of both tables are read with: {@link AnalogChannel#THROTTLE} or
 *     {@link AnalogChannel#PEDAL}
 * @param actuator the wastegate actuator
 * @param pins pins of the Raspberry Pi; null when the file names none, which is enough for anything
 *     but driving a valve from its pins
 * @param converter analogue-to-digital converter on the Pi; null when the file names none
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
    OptionalWires optional,
    AnalogChannel demand,
    ActuatorSettings actuator,
    @Nullable PinSettings pins,
    @Nullable ConverterSettings converter) {

  /** Settings whose tables are read with the throttle, without pins and with an unknown spring. */
  public Settings(
      CarSettings car,
      UnitSettings units,
      SensorSettings sensors,
      ValveSettings valve,
      Table2d target,
      Table2d baseDuty,
      LimitSettings limits,
      FeedbackSettings feedback,
      SpoolSettings spool,
      OptionalWires optional) {
    this(
        car,
        units,
        sensors,
        valve,
        target,
        baseDuty,
        limits,
        feedback,
        spool,
        optional,
        AnalogChannel.THROTTLE,
        ActuatorSettings.UNKNOWN_SPRING,
        null,
        null);
  }

  /** The same settings with other sensors. */
  public Settings withSensors(SensorSettings other) {
    return new Settings(
        car,
        units,
        other,
        valve,
        target,
        baseDuty,
        limits,
        feedback,
        spool,
        optional,
        demand,
        actuator,
        pins,
        converter);
  }
}
