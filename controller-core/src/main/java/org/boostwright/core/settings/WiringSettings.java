package org.boostwright.core.settings;

/**
 * The values of the circuit between car and computer, as far as numbers follow from them.
 *
 * <p>Whatever a settings file leaves out has the value of the project's own circuit, {@link
 * #DEFAULT}. The coil's resistance stands in {@link ValveSettings}. Nothing in the controller
 * depends on these: they are there so that a wrong part is found on paper.
 *
 * @param converterSupplyVolts supply of the analogue-to-digital converter: no input may go beyond,
 *     V
 * @param map pressure-sensor input
 * @param coil the valve's coil and what releases it
 * @param driver low-side switch of the coil
 * @param heartbeat the gate that holds the coil supply closed
 */
public record WiringSettings(
    double converterSupplyVolts, PressureInput map, Coil coil, Driver driver, Heartbeat heartbeat) {

  /** The project's own circuit. */
  public static final WiringSettings DEFAULT =
      new WiringSettings(
          5.0,
          new PressureInput(5.0, true, 51e3, 0.0, 0.0, 5600.0, 680e-9),
          new Coil(0.1, 0.2, 0.0933, 1.6e-3, 2.8e-3, Clamp.DIODE, 0.8),
          new Driver(3.3, 1.5, 60.0, 0.15, 4700.0, 2.0, 33.0),
          new Heartbeat(105e3, 330e-9, 470e-9, 8.2, 0.8, 1.5));

  /**
   * From the pressure sensor's wire to the converter: bias to ground, perhaps a buffer, perhaps a
   * divider, a filter.
   *
   * @param sensorSupplyVolts supply of the sensor, V
   * @param buffered a follower stands between wire and filter, so that the filter's capacitor is
   *     driven whatever the wire does
   * @param biasOhms from the wire to ground, so that an open wire reads as a known rail, ohm
   * @param dividerTopOhms from the wire or buffer to the divider's tap, ohm; 0 without a divider
   * @param dividerBottomOhms from the tap to ground, ohm; 0 without a divider
   * @param filterOhms from the tap to the filter's capacitor, ohm
   * @param filterFarads the filter's capacitor, F
   */
  public record PressureInput(
      double sensorSupplyVolts,
      boolean buffered,
      double biasOhms,
      double dividerTopOhms,
      double dividerBottomOhms,
      double filterOhms,
      double filterFarads) {}

  /** What takes the coil's current when the low-side switch opens. */
  public enum Clamp {
    /** Nothing: the switch itself breaks down. */
    NONE,
    /** A diode across the coil. */
    DIODE,
    /** A diode and a Zener diode across the coil. */
    ZENER,
    /** A suppressor diode from the switch's drain to ground. */
    TVS
  }

  /**
   * The valve's coil.
   *
   * @param henries inductance, H
   * @param pickUpAmps current at which the spool leaves its rest, A
   * @param dropOutAmps current at which it falls back, A
   * @param spoolOnSeconds travel after pick-up, s
   * @param spoolOffSeconds travel after drop-out, s
   * @param clamp what takes the current
   * @param clampVolts diode and Zener: volts across the coil; TVS: volts from drain to ground, V
   */
  public record Coil(
      double henries,
      double pickUpAmps,
      double dropOutAmps,
      double spoolOnSeconds,
      double spoolOffSeconds,
      Clamp clamp,
      double clampVolts) {}

  /**
   * Low-side switch of the coil.
   *
   * @param gateDriveVolts what the computer's pin delivers, V
   * @param thresholdMaxVolts highest gate threshold of the data sheet, V
   * @param drainRatingVolts highest drain-source voltage of the data sheet, V
   * @param onOhms resistance when on at that gate drive, ohm
   * @param pullDownOhms from gate to ground, ohm; 0 when there is none
   * @param fuseAmps fuse of the coil feed, A
   * @param loadDumpVolts what the supply's suppressor lets through in a load dump, V
   */
  public record Driver(
      double gateDriveVolts,
      double thresholdMaxVolts,
      double drainRatingVolts,
      double onOhms,
      double pullDownOhms,
      double fuseAmps,
      double loadDumpVolts) {}

  /**
   * Charge pump of the heartbeat gate.
   *
   * @param bleedOhms empties the reservoir, ohm
   * @param reservoirFarads the reservoir, F
   * @param couplingFarads the coupling capacitor, F
   * @param pumpVolts swing of the pump, V
   * @param thresholdMinVolts lowest gate threshold of the transistor on the reservoir, V
   * @param thresholdMaxVolts highest one, V
   */
  public record Heartbeat(
      double bleedOhms,
      double reservoirFarads,
      double couplingFarads,
      double pumpVolts,
      double thresholdMinVolts,
      double thresholdMaxVolts) {}
}
