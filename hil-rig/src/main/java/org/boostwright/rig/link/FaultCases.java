package org.boostwright.rig.link;

import static org.boostwright.rig.link.FaultCase.codes;

import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import org.boostwright.core.AnalogChannel;
import org.boostwright.core.monitor.FaultCode;
import org.boostwright.rig.link.FaultCase.Reaction;
import org.boostwright.rig.plant.Atmosphere;
import org.boostwright.rig.plant.ValveFaults;
import org.boostwright.rig.plant.WireFaults;

/** The fault list's rows on sensors (S), link (L), time (T) and valve (P) as cases for the rig. */
final class FaultCases {
  private static final double REST_MILLIS = 40.0;
  private static final double HOSE_MILLIS = 100.0;
  private static final double LINK_MILLIS = 100.0;
  private static final double GATE_MILLIS = 100.0;

  /** Cases of the short form: one of each kind. */
  static final List<String> SHORT =
      List.of("l1_silent", "s1_map_open", "s3_map_to_supply", "t2_frozen", "t2_killed");

  /** Beyond three periods a sample is old; then the tick, and the frame that says so, ms. */
  private static final double AFTER_STALE_MILLIS = 12.0;

  private final List<FaultCase> cases = new ArrayList<>();
  private final double staleMillis;

  private FaultCases(double mapRefreshMillis) {
    staleMillis = 3.0 * mapRefreshMillis + AFTER_STALE_MILLIS;
  }

  /**
   * All cases.
   *
   * @param withProgram also those that freeze or kill the controller's program
   * @param mapRefreshMillis declared time between pressure samples, ms
   */
  static List<FaultCase> all(boolean withProgram, double mapRefreshMillis) {
    FaultCases all = new FaultCases(mapRefreshMillis);
    all.sensorCases();
    all.otherSensorCases();
    all.linkCases();
    all.valveCases();
    if (withProgram) {
      all.timeCases();
    }
    return List.copyOf(all.cases);
  }

  private void mapWire(
      String id, String text, WireFaults.Wire wire, FaultCode code, FaultCase.Effect effect) {
    cases.add(
        new FaultCase(
            id,
            text,
            Reaction.REST,
            REST_MILLIS,
            codes(code),
            codes(FaultCode.MAP_JUMPS, FaultCode.MAP_FALL_UNEXPLAINED),
            b -> b.faults().wire(AnalogChannel.MAP).wire = wire,
            effect,
            b -> b.faults().wire(AnalogChannel.MAP).clear()));
  }

  private void map(
      String id,
      String text,
      double within,
      Set<FaultCode> expected,
      FaultCase.Step inject,
      FaultCase.Effect effect) {
    cases.add(
        new FaultCase(
            id,
            text,
            Reaction.REST,
            within,
            expected,
            codes(FaultCode.MAP_JUMPS, FaultCode.MAP_NOISY),
            inject,
            effect,
            b -> {
              b.faults().wire(AnalogChannel.MAP).clear();
              b.faults().mapHoseOff = false;
            }));
  }

  private void sensorCases() {
    mapWire(
        "s1_map_open",
        "pressure sensor wire open",
        WireFaults.Wire.OPEN,
        FaultCode.MAP_SIGNAL_LOW,
        b -> b.volts(AnalogChannel.MAP) < 0.2);
    mapWire(
        "s2_map_to_ground",
        "pressure sensor short to ground",
        WireFaults.Wire.SHORT_TO_GROUND,
        FaultCode.MAP_SIGNAL_LOW,
        b -> b.volts(AnalogChannel.MAP) < 0.2);
    mapWire(
        "s3_map_to_supply",
        "pressure sensor short to supply, reported as the sensor",
        WireFaults.Wire.SHORT_TO_SUPPLY,
        FaultCode.MAP_SIGNAL_HIGH,
        b -> b.volts(AnalogChannel.MAP) > 4.8);
    map(
        "s4_map_frozen",
        "pressure reading frozen in range",
        100.0,
        codes(FaultCode.MAP_FROZEN),
        b -> b.faults().wire(AnalogChannel.MAP).frozen = true,
        b -> b.faults().wire(AnalogChannel.MAP).frozen);
    map(
        "s6_map_noise",
        "five times the rated noise on the pressure",
        Double.NaN,
        codes(FaultCode.MAP_NOISY),
        b -> b.faults().wire(AnalogChannel.MAP).noiseFactor = 5.0,
        b -> b.faults().wire(AnalogChannel.MAP).noiseFactor == 5.0);
    for (int pct : new int[] {30, 90}) {
      map(
          "s7_map_intermittent_" + pct,
          "loose contact of the pressure sensor, " + pct + " % open",
          Double.NaN,
          codes(FaultCode.MAP_SIGNAL_LOW),
          b -> b.faults().wire(AnalogChannel.MAP).intermittentFraction = pct * 0.01,
          b -> b.faults().wire(AnalogChannel.MAP).intermittentFraction > 0.0);
    }
    map(
        "s8_map_jump",
        "pressure leaps within its range and stays",
        REST_MILLIS,
        codes(FaultCode.MAP_JUMPS),
        b -> b.faults().wire(AnalogChannel.MAP).replacedVolts = 1.0,
        b -> Math.abs(b.volts(AnalogChannel.MAP) - 1.0) < 0.01);
    map(
        "s9_map_stale",
        "pressure samples no longer renewed",
        staleMillis,
        codes(FaultCode.MAP_STALE),
        b -> b.faults().wire(AnalogChannel.MAP).stale = true,
        b -> b.faults().wire(AnalogChannel.MAP).stale);
    number("s10_map_nan", "pressure channel gives no number", Double.NaN);
    number("s10_map_infinite", "pressure channel gives infinity", Double.POSITIVE_INFINITY);
    map(
        "b1_map_no_answer",
        "converter does not answer for the pressure",
        staleMillis,
        codes(FaultCode.MAP_STALE),
        b -> b.faults().wire(AnalogChannel.MAP).noAnswer = true,
        b -> !b.inputs().answered[AnalogChannel.MAP.ordinal()]);
    map(
        "s11_hose_off",
        "pressure hose off the sensor",
        HOSE_MILLIS,
        codes(FaultCode.MAP_FALL_UNEXPLAINED),
        b -> b.faults().mapHoseOff = true,
        b -> b.outputs().mapKpaAbs < b.car().mapKpaAbs() - 20.0);
  }

  private void number(String id, String text, double volts) {
    int map = AnalogChannel.MAP.ordinal();
    cases.add(
        new FaultCase(
            id,
            text,
            Reaction.REST,
            REST_MILLIS,
            codes(FaultCode.MAP_NOT_A_NUMBER),
            codes(),
            b -> b.loop().spoil(inputs -> inputs.volts[map] = volts),
            b -> !Double.isFinite(b.inputs().volts[map]),
            b -> b.loop().spoil(inputs -> {})));
  }

  private void otherSensorCases() {
    cases.add(
        new FaultCase(
            "s12_throttle_open",
            "throttle sensor wire open: rest",
            Reaction.REST,
            100.0,
            codes(FaultCode.THROTTLE_SIGNAL),
            codes(),
            b -> b.faults().wire(AnalogChannel.THROTTLE).wire = WireFaults.Wire.OPEN,
            b -> b.volts(AnalogChannel.THROTTLE) < 0.2,
            b -> b.faults().wire(AnalogChannel.THROTTLE).clear()));
    cases.add(
        new FaultCase(
            "s12_intake_air_open",
            "intake air sensor wire open: substitute",
            Reaction.REPORTED,
            Double.NaN,
            codes(FaultCode.INTAKE_AIR_SIGNAL),
            codes(),
            b -> b.faults().wire(AnalogChannel.INTAKE_AIR).wire = WireFaults.Wire.OPEN,
            b -> b.volts(AnalogChannel.INTAKE_AIR) > 4.8,
            b -> b.faults().wire(AnalogChannel.INTAKE_AIR).clear()));
    cases.add(
        new FaultCase(
            "s12_supply_open",
            "supply voltage wire open: low while the filter empties, then substitute",
            Reaction.REST,
            100.0,
            codes(FaultCode.SUPPLY_SIGNAL, FaultCode.SUPPLY_LOW),
            codes(),
            b -> b.faults().wire(AnalogChannel.SUPPLY).wire = WireFaults.Wire.OPEN,
            b -> b.volts(AnalogChannel.SUPPLY) < 0.1,
            b -> b.faults().wire(AnalogChannel.SUPPLY).clear()));
    tach("s13_tach_lost", "engine-speed signal lost", codes(FaultCode.ENGINE_SPEED_LOST), 0.0);
    tach("s13_tach_doubled", "engine speed doubled", codes(FaultCode.ENGINE_SPEED_JUMPS), 2.0);
    tach("s13_tach_halved", "engine speed halved", codes(FaultCode.ENGINE_SPEED_JUMPS), 0.5);
    cases.add(
        new FaultCase(
            "s14_climb",
            "air of 2000 m while the engine runs: no new ambient is taken",
            Reaction.REPORTED,
            Double.NaN,
            codes(),
            codes(),
            b -> {
              for (int i = 1; i <= 100; i++) {
                b.car().setAtmosphere(Atmosphere.at(20.0 * i, 20.0));
                b.loop().run(0.03);
              }
            },
            b -> b.outputs().ambientKpaAbs > 95.0 && b.car().ambientKpaAbs() < 85.0,
            b -> b.car().setAtmosphere(Atmosphere.at(0.0, 20.0))));
  }

  private void tach(String id, String text, Set<FaultCode> expected, double factor) {
    cases.add(
        new FaultCase(
            id,
            text,
            Reaction.REST,
            Double.NaN,
            expected,
            codes(FaultCode.ENGINE_SPEED_LOST, FaultCode.ENGINE_SPEED_JUMPS),
            b -> {
              b.faults().tach.lost = factor == 0.0;
              b.faults().tach.factor = factor == 0.0 ? 1.0 : factor;
            },
            b -> b.faults().tach.lost || b.faults().tach.factor != 1.0,
            b -> b.faults().tach.clear()));
  }

  private void link(String id, String text, LineFaults.Kind kind) {
    cases.add(
        new FaultCase(
            id,
            text,
            Reaction.REST,
            LINK_MILLIS,
            codes(FaultCode.MAP_STALE),
            codes(
                FaultCode.THROTTLE_STALE,
                FaultCode.SUPPLY_SIGNAL,
                FaultCode.INTAKE_AIR_SIGNAL,
                FaultCode.ENGINE_SPEED_LOST),
            b -> b.wires().faults().set(kind),
            b -> b.wires().faults().affected() > 0L,
            b -> b.wires().faults().set(LineFaults.Kind.NONE)));
  }

  private void linkCases() {
    link("l1_silent", "link silent", LineFaults.Kind.SILENT);
    link("l1_corrupt", "every frame corrupted", LineFaults.Kind.CORRUPT);
    link("l1_repeat", "the same frame again and again", LineFaults.Kind.REPEAT);
    link("l1_reorder", "frames in reverse order by eight", LineFaults.Kind.REORDER);
    link("l1_delay", "frames 150 ms late", LineFaults.Kind.DELAY);
    link("l1_noise", "random bytes instead of frames", LineFaults.Kind.NOISE);
  }

  private void valveCases() {
    cases.add(
        new FaultCase(
            "p2_actuator_hose_off",
            "hose off the actuator: overboost, then no effect of the valve",
            Reaction.REST,
            Double.NaN,
            codes(FaultCode.VALVE_NO_EFFECT),
            codes(FaultCode.OVERBOOST, FaultCode.OVERBOOST_REPEATED),
            b -> b.faults().valve.actuatorHoseOff = true,
            b -> b.car().mapKpaAbs() > 200.0,
            b -> b.faults().valve.clear()));
    cases.add(
        new FaultCase(
            "p4_stuck_energised",
            "valve spool stuck where it vents the actuator",
            Reaction.REST,
            Double.NaN,
            codes(FaultCode.VALVE_NO_EFFECT),
            codes(FaultCode.OVERBOOST, FaultCode.OVERBOOST_REPEATED),
            b -> b.faults().valve.stuck = ValveFaults.Stuck.ENERGISED,
            b -> b.car().mapKpaAbs() > 200.0,
            b -> b.faults().valve.clear()));
  }

  private void timeCases() {
    cases.add(
        new FaultCase(
            "t1_late_ticks",
            "program held up for 14 ms again and again",
            Reaction.REST,
            Double.NaN,
            codes(FaultCode.TICK_LATE, FaultCode.MAP_STALE),
            codes(FaultCode.THROTTLE_STALE),
            b -> {
              for (int i = 0; i < 12; i++) {
                b.program().freeze();
                b.loop().run(0.015);
                b.program().thaw();
                b.loop().run(0.005);
              }
            },
            b -> b.outputs().lateTicks >= 3L,
            b -> {}));
    cases.add(
        new FaultCase(
            "t2_frozen",
            "controller's program frozen",
            Reaction.SUPPLY_OPEN,
            GATE_MILLIS,
            codes(),
            codes(FaultCode.TICK_LATE, FaultCode.MAP_STALE, FaultCode.THROTTLE_STALE),
            b -> b.program().freeze(),
            b -> b.outputs().coilSupplyClosed,
            b -> b.program().thaw()));
    cases.add(
        new FaultCase(
            "t2_killed",
            "controller's program killed with full boost",
            Reaction.SUPPLY_OPEN,
            GATE_MILLIS,
            codes(),
            codes(),
            b -> b.program().kill(),
            b -> !b.program().alive() && b.outputs().coilSupplyClosed,
            b -> {}));
  }
}
