package org.boostwright.rig.wiring.spice;

import java.util.LinkedHashMap;
import java.util.Map;

/** The hardware requirements by id, each with the faults it answers; the safety case names them. */
public final class Requirements {
  /** Words by id, in order. */
  public static final Map<String, String> ALL = all();

  private Requirements() {}

  private static Map<String, String> all() {
    Map<String, String> all = new LinkedHashMap<>();
    all.put(
        "HW-01",
        "No coil current while the computer boots, with pins floating or pulled up (E2, E3).");
    all.put(
        "HW-02",
        "Heartbeat stuck low: coil supply open after 30 to 100 ms, over tolerances and temperature (T2).");
    all.put("HW-03", "Heartbeat stuck high: the same (T2).");
    all.put(
        "HW-04",
        "The same with the low-side switch shorted; a stray edge does not hold the supply closed (E1, T2).");
    all.put(
        "HW-05",
        "Enable pin low opens the coil supply at once, without waiting for the heartbeat (all rest states).");
    all.put("HW-06", "Permit loop open: coil supply open, without software.");
    all.put("HW-07", "Spring-only switch open: coil without current.");
    all.put(
        "HW-08",
        "Low-side switch below 80 % of its rating at 16 V and in a load dump, with each clamp.");
    all.put("HW-09", "Release time of the coil per clamp as published.");
    all.put(
        "HW-10",
        "Valve times follow from coil current, pick-up and drop-out; they are the virtual car's within 1 ms.");
    all.put(
        "HW-11", "The pin's voltage closes the switch fully; a hot coil on 9 V still picks up.");
    all.put("HW-12", "Losses of switch and coil at every duty.");
    all.put("HW-13", "Coil feedback tells current from none (E1).");
    all.put("HW-14", "Engine-cut contact open at boot and at rest, drops out in time.");
    all.put(
        "HW-15",
        "Load dump, jump start, reversed battery and a shorted sensor supply leave the computer alive (E2).");
    all.put("HW-16", "Pressure input: filter corner and error, hot and cold.");
    all.put("HW-17", "An open signal wire falls past its threshold within 19 ms (S1).");
    all.put(
        "HW-18",
        "Every way to wire the pressure sensor wrong reads as a fault or is refused at key-on (S1, S2, S3).");
    all.put(
        "HW-19",
        "16 V, or 1 V below ground, on any sensor wire stays within the converter's limits (S3).");
    all.put(
        "HW-20",
        "Thermistor and supply readings agree with the default settings; open and short read outside them (S12).");
    all.put(
        "HW-21",
        "Tach pulses of 5 to 16 V, noisy and with shifted ground: none lost, none added (S13).");
    all.put(
        "HW-22",
        "Primary of an ignition coil, 400 V: one pulse per ignition, parts within their ratings (S13).");
    all.put(
        "HW-23",
        "A tap changes the engine computer's reading by less than 0.25 % of 5 V, with and without power.");
    all.put("HW-24", "The computer's bus pins never see 5 V.");
    return all;
  }
}
