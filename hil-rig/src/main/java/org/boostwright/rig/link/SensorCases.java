package org.boostwright.rig.link;

import java.util.ArrayList;
import java.util.List;
import org.boostwright.core.AnalogChannel;
import org.boostwright.core.monitor.FaultCode;
import org.boostwright.core.settings.AnalogSensor;
import org.boostwright.core.state.Waiting;
import org.boostwright.rig.link.FaultCase.Effect;
import org.boostwright.rig.link.FaultCase.Reaction;
import org.boostwright.rig.link.FaultCase.Start;
import org.boostwright.rig.link.FaultCase.Step;
import org.boostwright.rig.plant.ProjectCar;
import org.boostwright.rig.plant.WireFaults;

/** Rows S1 to S11 and B1 of the fault list: the pressure sensor, its wire, hose and converter. */
final class SensorCases {
  private static final double REST_MILLIS = 40.0;
  private static final double HOSE_MILLIS = 100.0;
  private static final double WATCH_SECONDS = 3.0;

  /** A sample is old beyond three periods; the tick that finds it so may be the next. */
  private static final double TICK_MILLIS = 5.0;

  private SensorCases() {}

  /** The cases; a coarse or slow sensor is exempt from those that need its noise to be seen. */
  static List<FaultCase> of(AnalogSensor map) {
    List<FaultCase> cases = new ArrayList<>();
    wires(cases);
    if (map.frozenIsWatched()) {
      noise(cases);
    }
    readings(cases);
    numbers(cases);
    ages(cases, 3.0 * map.refreshMillis() + TICK_MILLIS);
    hose(cases);
    return cases;
  }

  private static WireFaults map(FaultBench bench) {
    return bench.faults().wire(AnalogChannel.MAP);
  }

  private static double mapVolts(FaultBench bench) {
    return bench.volts(AnalogChannel.MAP);
  }

  private static FaultCase map(String id, String text, Step inject, Effect effect) {
    return FaultCase.of(id, text).injected(inject, effect).cleared(b -> map(b).clear());
  }

  private static FaultCase wire(String id, String text, WireFaults.Wire wire, Effect effect) {
    return map(id, text, b -> map(b).wire = wire, effect)
        .within(REST_MILLIS)
        .mayReport(FaultCode.MAP_JUMPS, FaultCode.MAP_FALL_UNEXPLAINED);
  }

  private static void wires(List<FaultCase> cases) {
    cases.add(
        wire(
                "s1_map_open",
                "pressure sensor wire open",
                WireFaults.Wire.OPEN,
                b -> mapVolts(b) < 0.2)
            .reports(FaultCode.MAP_SIGNAL_LOW));
    cases.add(
        wire(
                "s2_map_to_ground",
                "pressure sensor short to ground",
                WireFaults.Wire.SHORT_TO_GROUND,
                b -> mapVolts(b) < 0.2)
            .reports(FaultCode.MAP_SIGNAL_LOW));
    cases.add(
        wire(
                "s3_map_to_supply",
                "pressure sensor short to supply, reported as the sensor",
                WireFaults.Wire.SHORT_TO_SUPPLY,
                b -> mapVolts(b) > 4.8)
            .reports(FaultCode.MAP_SIGNAL_HIGH));
  }

  private static void noise(List<FaultCase> cases) {
    cases.add(
        map(
                "s4_map_frozen",
                "pressure reading frozen in range",
                b -> map(b).frozen = true,
                b -> map(b).frozen)
            .within(100.0)
            .reports(FaultCode.MAP_FROZEN));
    cases.add(
        map(
                "s6_map_noise",
                "five times the rated noise on the pressure",
                b -> map(b).noiseFactor = 5.0,
                b -> map(b).noiseFactor == 5.0)
            .reports(FaultCode.MAP_NOISY)
            .mayReport(FaultCode.MAP_JUMPS));
  }

  private static void readings(List<FaultCase> cases) {
    cases.add(
        map(
                "s5_map_offset",
                "pressure sensor 25 kPa too high, seen at key-on with the engine stopped",
                b -> {
                  b.car().sensors().keyOn = false;
                  map(b).offsetVolts = 25.0 * ProjectCar.mapVoltsPerKpa();
                  b.loop().run(0.3);
                  b.car().sensors().keyOn = true;
                },
                b -> mapVolts(b) > ProjectCar.mapVolts(120.0))
            .from(Start.STOPPED)
            .must(Reaction.REPORTED)
            .reports(FaultCode.MAP_AMBIENT_MISMATCH)
            .mayReport(FaultCode.MAP_JUMPS));
    cases.add(
        map(
                "s6_map_rated_noise",
                "rated noise and intake pulsation: no trip",
                b -> b.loop().run(WATCH_SECONDS),
                b -> map(b).noiseFactor == 1.0)
            .must(Reaction.NOTHING));
    for (int pct : new int[] {10, 30, 90}) {
      cases.add(
          map(
                  "s7_map_intermittent_" + pct,
                  "loose contact of the pressure sensor, " + pct + " % open",
                  b -> map(b).intermittentFraction = pct * 0.01,
                  b -> map(b).intermittentFraction > 0.0)
              .reports(FaultCode.MAP_SIGNAL_LOW)
              .mayReport(FaultCode.MAP_JUMPS, FaultCode.MAP_NOISY));
    }
    cases.add(
        map(
                "s8_map_jump",
                "pressure leaps within its range and stays",
                b -> map(b).replacedVolts = 1.0,
                b -> Math.abs(mapVolts(b) - 1.0) < 0.01)
            .within(REST_MILLIS)
            .reports(FaultCode.MAP_JUMPS)
            .mayReport(
                FaultCode.MAP_NOISY, FaultCode.MAP_FROZEN, FaultCode.MAP_FALL_UNEXPLAINED));
  }

  private static void numbers(List<FaultCase> cases) {
    number(cases, "s10_map_nan", "pressure channel gives no number", Double.NaN);
    number(cases, "s10_map_infinite", "pressure channel gives infinity", Double.POSITIVE_INFINITY);
  }

  private static void number(List<FaultCase> cases, String id, String text, double volts) {
    int map = AnalogChannel.MAP.ordinal();
    cases.add(
        FaultCase.of(id, text)
            .within(REST_MILLIS)
            .reports(FaultCode.MAP_NOT_A_NUMBER)
            .injected(
                b -> b.loop().spoil(inputs -> inputs.volts[map] = volts),
                b -> !Double.isFinite(b.inputs().volts[map]))
            .cleared(b -> b.loop().spoil(inputs -> {})));
  }

  private static void ages(List<FaultCase> cases, double staleMillis) {
    cases.add(
        map(
                "s9_map_stale",
                "pressure samples no longer renewed",
                b -> map(b).stale = true,
                b -> map(b).stale)
            .within(staleMillis)
            .reports(FaultCode.MAP_STALE));
    cases.add(
        map(
                "b1_map_no_answer",
                "converter does not answer for the pressure",
                b -> map(b).noAnswer = true,
                b -> !b.inputs().answered[AnalogChannel.MAP.ordinal()])
            .within(staleMillis)
            .reports(FaultCode.MAP_STALE));
  }

  private static void hose(List<FaultCase> cases) {
    cases.add(
        FaultCase.of("s11_hose_off", "pressure hose off the sensor")
            .within(HOSE_MILLIS)
            .reports(FaultCode.MAP_FALL_UNEXPLAINED)
            .mayReport(FaultCode.MAP_JUMPS, FaultCode.MAP_NOISY)
            .injected(
                b -> b.faults().mapHoseOff = true,
                b -> b.outputs().mapKpaAbs < b.car().mapKpaAbs() - 20.0)
            .cleared(b -> b.faults().mapHoseOff = false));
    cases.add(
        FaultCase.of("s11_no_life", "pressure hose off since before the start: never ready")
            .from(Start.STOPPED)
            .must(Reaction.NEVER_READY)
            .injected(
                b -> {
                  b.faults().mapHoseOff = true;
                  b.driver().startEngine();
                  b.driver().fullThrottle(2.0);
                },
                b -> b.outputs().waiting == Waiting.SENSOR_LIFE)
            .cleared(b -> b.faults().mapHoseOff = false));
  }
}
