package org.boostwright.core.monitor;

/**
 * Answers for somebody at the roadside without a laptop: how the lamp blinks, what to check in
 * order, and whether to drive on. Plain words for the live page, the card and the guide.
 */
public final class Roadside {
  private Roadside() {}

  /** Times the lamp blinks for a fault; the same for faults that are looked for in one place. */
  public static int blinks(FaultCode code) {
    return switch (code) {
      case OVERBOOST, OVERBOOST_REPEATED -> 1;
      case MAP_SIGNAL_LOW,
          MAP_SIGNAL_HIGH,
          MAP_NOT_A_NUMBER,
          MAP_STALE,
          MAP_FROZEN,
          MAP_JUMPS,
          MAP_NOISY,
          MAP_AMBIENT_MISMATCH,
          MAP_FALL_UNEXPLAINED,
          MAP_FLAT_AT_AMBIENT,
          BAROMETER_SIGNAL,
          AMBIENT_IN_DOUBT ->
          2;
      case THROTTLE_SIGNAL, THROTTLE_STALE, THROTTLE_AGAINST_PEDAL, PEDAL_SIGNAL -> 3;
      case ENGINE_SPEED_LOST, ENGINE_SPEED_JUMPS -> 4;
      case VALVE_NO_EFFECT,
          COIL_FEEDBACK,
          OUTPUTS_WRONG,
          SPOOL_NOT_RISING,
          TARGET_OUT_OF_REACH,
          TARGET_LIMITED ->
          5;
      case SUPPLY_LOW, SUPPLY_SIGNAL, INTAKE_AIR_SIGNAL -> 6;
      case INTERNAL, TICK_LATE -> 7;
      case PERMIT_OPEN -> 8;
    };
  }

  /** What is wrong, for a number of blinks. */
  public static String wrong(int blinks) {
    return switch (blinks) {
      case 1 -> "boost went over the limit";
      case 2 -> "pressure sensor, its wire or its hose";
      case 3 -> "throttle or pedal sensor";
      case 4 -> "engine speed signal";
      case 5 -> "the valve has no effect, or its wire or driver is at fault";
      case 6 -> "supply voltage or a temperature sensor";
      case 7 -> "the controller itself";
      case 8 -> "the external safety device (mixture, knock, oil) says no";
      default -> "unknown";
    };
  }

  /** What to check, in order, for a number of blinks. */
  public static String order(int blinks) {
    return switch (blinks) {
      case 1 ->
          "actuator hose (on, whole, not melted), actuator rod (moves by hand, clip on), source"
              + " hose from the compressor, pressure sensor and its hose, valve (clicks with the"
              + " key on)";
      case 2 -> "hose to the pressure sensor, its plug, its wire, its 5 V supply";
      case 3 -> "plug and wire of the throttle sensor, floor mat and cable";
      case 4 -> "plug and wire of the engine-speed signal";
      case 5 ->
          "actuator hose, actuator rod, source hose, vent hose not blocked, valve's plug, coil"
              + " fuse";
      case 6 -> "battery and alternator, fuses, plugs of supply and air temperature";
      case 7 -> "key off for ten seconds and on again; plugs of the controller";
      case 8 -> "what the external safety device itself shows";
      default -> "every plug and hose";
    };
  }

  /** Whether to drive on at spring pressure, for a number of blinks. */
  public static String driveOn(int blinks) {
    return switch (blinks) {
      case 1 ->
          "only if hose and rod are sound, and gently: below half throttle, because a loose hose"
              + " lets boost rise without limit even with the valve off";
      case 5 ->
          "only if the actuator hose and rod are sound; then at spring pressure, no full throttle";
      case 8 -> "no, not under load, before you know what it saw";
      default -> "yes, at spring pressure: the coil is off and stays off";
    };
  }

  /** What to check in order for a fault. */
  public static String order(FaultCode code) {
    return order(blinks(code));
  }
}
