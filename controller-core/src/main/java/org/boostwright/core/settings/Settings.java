package org.boostwright.core.settings;

import org.boostwright.core.AnalogChannel;
import org.boostwright.core.table.Curve;
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
 * @param wiring values of the circuit between car and computer; only checks use them
 * @param demand what the rows of both tables are read with: {@link AnalogChannel#THROTTLE} or
 *     {@link AnalogChannel#PEDAL}
 * @param actuator the wastegate actuator
 * @param exhaustHelp how much of the actuator's work the exhaust takes over where the air is
 *     thinner, kPa at the actuator for each kPa of ambient pressure below the standard atmosphere,
 *     over engine speed; base duty is corrected with it
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
    WiringSettings wiring,
    AnalogChannel demand,
    ActuatorSettings actuator,
    Curve exhaustHelp,
    @Nullable PinSettings pins,
    @Nullable ConverterSettings converter) {

  /** Exhaust help where the file names none: the valve's share of the diaphragm's area. */
  public static final Curve DEFAULT_EXHAUST_HELP = Curve.constant(0.2);

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
        WiringSettings.DEFAULT,
        AnalogChannel.THROTTLE,
        ActuatorSettings.UNKNOWN_SPRING,
        DEFAULT_EXHAUST_HELP,
        null,
        null);
  }

  /** The same with other sensors. */
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
        wiring,
        demand,
        actuator,
        exhaustHelp,
        pins,
        converter);
  }

  /** The same with another target table. */
  public Settings withTarget(Table2d other) {
    return new Settings(
        car,
        units,
        sensors,
        valve,
        other,
        baseDuty,
        limits,
        feedback,
        spool,
        optional,
        wiring,
        demand,
        actuator,
        exhaustHelp,
        pins,
        converter);
  }

  /** The same with another base duty table. */
  public Settings withBaseDuty(Table2d other) {
    return new Settings(
        car,
        units,
        sensors,
        valve,
        target,
        other,
        limits,
        feedback,
        spool,
        optional,
        wiring,
        demand,
        actuator,
        exhaustHelp,
        pins,
        converter);
  }

  /** The same with other limits. */
  public Settings withLimits(LimitSettings other) {
    return new Settings(
        car,
        units,
        sensors,
        valve,
        target,
        baseDuty,
        other,
        feedback,
        spool,
        optional,
        wiring,
        demand,
        actuator,
        exhaustHelp,
        pins,
        converter);
  }

  /** The same with another pressure feedback. */
  public Settings withFeedback(FeedbackSettings other) {
    return new Settings(
        car,
        units,
        sensors,
        valve,
        target,
        baseDuty,
        limits,
        other,
        spool,
        optional,
        wiring,
        demand,
        actuator,
        exhaustHelp,
        pins,
        converter);
  }

  /** The same with another spool strategy. */
  public Settings withSpool(SpoolSettings other) {
    return new Settings(
        car,
        units,
        sensors,
        valve,
        target,
        baseDuty,
        limits,
        feedback,
        other,
        optional,
        wiring,
        demand,
        actuator,
        exhaustHelp,
        pins,
        converter);
  }

  /** The same with other wires. */
  public Settings withOptional(OptionalWires other) {
    return new Settings(
        car,
        units,
        sensors,
        valve,
        target,
        baseDuty,
        limits,
        feedback,
        spool,
        other,
        wiring,
        demand,
        actuator,
        exhaustHelp,
        pins,
        converter);
  }
}
