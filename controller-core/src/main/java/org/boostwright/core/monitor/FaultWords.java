package org.boostwright.core.monitor;

/**
 * What a fault means and what to look at, for people: the live page, reports and the chapter on
 * when something is wrong say the same.
 *
 * @param meaning what was seen, as a short sentence
 * @param next what to look at first
 */
public record FaultWords(String meaning, String next) {

  /** The words of a fault. */
  public static FaultWords of(FaultCode code) {
    return switch (code) {
      case INTERNAL -> words("An error in the program.", "Keep the recording and report it.");
      case TICK_LATE ->
          words(
              "Three ticks in a row came late.",
              "Too little computer: end other programs, start drive by its service.");
      case MAP_SIGNAL_LOW ->
          words(
              "The pressure signal is below its range: wire open or shorted to ground.",
              "Plug, signal wire and ground of the pressure sensor.");
      case MAP_SIGNAL_HIGH ->
          words(
              "The pressure signal is above its range: shorted to supply or ground open.",
              "Plug, signal wire and ground of the pressure sensor.");
      case MAP_NOT_A_NUMBER ->
          words("The pressure reading is no number.", "Keep the recording and report it.");
      case MAP_STALE ->
          words("No new pressure sample in time.", "Converter, its wires and its supply.");
      case MAP_FROZEN ->
          words("The pressure reading does not move at all.", "Sensor, its hose, the converter.");
      case MAP_JUMPS ->
          words("The pressure jumps faster than any engine.", "Loose contact at the sensor.");
      case MAP_NOISY ->
          words("The pressure is far noisier than declared.", "Ground and shield of the sensor.");
      case MAP_AMBIENT_MISMATCH ->
          words(
              "With the engine stopped the sensor does not read the air's pressure.",
              "Calibration in the settings, sensor, a hose that holds pressure.");
      case MAP_FALL_UNEXPLAINED ->
          words(
              "Pressure fell although the throttle stayed open.",
              "The hose to the sensor, a charge pipe that came off.");
      case MAP_FLAT_AT_AMBIENT ->
          words(
              "The pressure stays at the air's although engine and throttle say otherwise.",
              "The hose to the sensor: off, split or pinched.");
      case OVERBOOST ->
          words(
              "Pressure went over the overboost limit.",
              "Hoses to the actuator, wastegate, base duty in that place of the table.");
      case OVERBOOST_REPEATED ->
          words(
              "Over the limit three times.",
              "Stop driving it. Hoses, wastegate and table before the next start.");
      case VALVE_NO_EFFECT ->
          words(
              "The valve is at rest and pressure still climbs.",
              "Hose off the actuator, wastegate stuck shut, valve stuck. Foot off, do not drive.");
      case COIL_FEEDBACK ->
          words("The coil does not do what it is told.", "Coil plug, driver, feedback wire.");
      case OUTPUTS_WRONG ->
          words("The outputs do not read back as commanded.", "Pins, wiring, another program.");
      case THROTTLE_SIGNAL ->
          words("The throttle signal is outside its range.", "Plug and wires of the sensor.");
      case THROTTLE_STALE ->
          words("No new throttle sample in time.", "Converter, its wires and its supply.");
      case THROTTLE_AGAINST_PEDAL ->
          words("Throttle open with the pedal closed.", "Throttle stuck, or a sensor.");
      case PEDAL_SIGNAL ->
          words("The pedal signal is outside its range.", "Plug and wires of the pedal sensor.");
      case ENGINE_SPEED_LOST ->
          words("Engine-speed pulses stopped while it ran.", "Pick-up, its wire and ground.");
      case ENGINE_SPEED_JUMPS ->
          words("Engine speed doubles or halves at once.", "Pick-up, threshold, pulses per turn.");
      case SUPPLY_LOW -> words("The supply voltage is low.", "Battery, charging, fuse, ground.");
      case SUPPLY_SIGNAL ->
          words("The supply voltage cannot be read.", "The divider and its wire.");
      case PERMIT_OPEN ->
          words("The permit input is open.", "What the external safety device has to say.");
      case INTAKE_AIR_SIGNAL ->
          words("The intake air temperature cannot be read.", "Plug and wires of the sensor.");
      case BAROMETER_SIGNAL -> words("The barometer cannot be read.", "Its wires.");
      case AMBIENT_IN_DOUBT ->
          words(
              "The air's pressure was measured long ago.",
              "Key on with the engine stopped for two seconds measures it again.");
      case SPOOL_NOT_RISING ->
          words(
              "Pressure does not build although the gate is held shut.",
              "Supply hose to the valve, charge-air leak, exhaust leak before the turbo.");
      case TARGET_OUT_OF_REACH ->
          words(
              "The target is above what the turbo gives here.",
              "Lower the target in that place, or look for a leak.");
      case TARGET_LIMITED ->
          words(
              "The target is reduced: altitude, heat or gear.",
              "Nothing; it protects. Low air pressure near home: the pressure sensor reads low.");
    };
  }

  private static FaultWords words(String meaning, String next) {
    return new FaultWords(meaning, next);
  }
}
