package org.boostwright.rig.link;

import java.util.ArrayList;
import java.util.List;
import org.boostwright.core.AnalogChannel;
import org.boostwright.core.monitor.FaultCode;
import org.boostwright.rig.link.FaultCase.Reaction;
import org.boostwright.rig.plant.Atmosphere;
import org.boostwright.rig.plant.ValveFaults;
import org.boostwright.rig.plant.WireFaults;

/** Rows S12 to S14, P2 and P4 of the fault list: the other sensors, the speeds, air and valve. */
final class CarCases {
  private static final double SLOW_MILLIS = 100.0;

  private CarCases() {}

  /**
   * The cases.
   *
   * @param pedal a pedal sensor is fitted beside the throttle's
   */
  static List<FaultCase> of(boolean pedal) {
    List<FaultCase> cases = new ArrayList<>();
    cases.add(
        open("s12_throttle_open", "throttle sensor wire open: rest", AnalogChannel.THROTTLE, 0.2)
            .within(SLOW_MILLIS)
            .reports(FaultCode.THROTTLE_SIGNAL));
    if (pedal) {
      cases.add(stuckThrottle());
    }
    cases.add(
        FaultCase.of("s12_intake_air_open", "intake air sensor wire open: substitute")
            .must(Reaction.REPORTED)
            .reports(FaultCode.INTAKE_AIR_SIGNAL)
            .injected(
                b -> b.faults().wire(AnalogChannel.INTAKE_AIR).wire = WireFaults.Wire.OPEN,
                b -> b.volts(AnalogChannel.INTAKE_AIR) > 4.8)
            .cleared(b -> b.faults().wire(AnalogChannel.INTAKE_AIR).clear()));
    cases.add(
        open(
                "s12_supply_open",
                "supply voltage wire open: low while the filter empties, then substitute",
                AnalogChannel.SUPPLY,
                0.1)
            .within(SLOW_MILLIS)
            .reports(FaultCode.SUPPLY_SIGNAL, FaultCode.SUPPLY_LOW));
    tach(cases, "s13_tach_lost", "engine-speed signal lost", FaultCode.ENGINE_SPEED_LOST, 0.0);
    tach(cases, "s13_tach_doubled", "engine speed doubled", FaultCode.ENGINE_SPEED_JUMPS, 2.0);
    tach(cases, "s13_tach_halved", "engine speed halved", FaultCode.ENGINE_SPEED_JUMPS, 0.5);
    cases.add(climb());
    valve(cases);
    return cases;
  }

  private static FaultCase open(String id, String text, AnalogChannel channel, double belowVolts) {
    return FaultCase.of(id, text)
        .injected(
            b -> b.faults().wire(channel).wire = WireFaults.Wire.OPEN,
            b -> b.volts(channel) < belowVolts)
        .cleared(b -> b.faults().wire(channel).clear());
  }

  private static FaultCase stuckThrottle() {
    return FaultCase.of("s12_throttle_stuck", "throttle stuck open with the pedal released: rest")
        .reports(FaultCode.THROTTLE_AGAINST_PEDAL)
        .injected(
            b -> {
              b.faults().throttleStuckPct = 100.0;
              b.car().setThrottlePct(0.0);
            },
            b -> b.car().throttlePct() > 90.0)
        .cleared(b -> b.faults().throttleStuckPct = Double.NaN);
  }

  private static void tach(
      List<FaultCase> cases, String id, String text, FaultCode code, double factor) {
    cases.add(
        FaultCase.of(id, text)
            .reports(code)
            .mayReport(FaultCode.ENGINE_SPEED_LOST, FaultCode.ENGINE_SPEED_JUMPS)
            .injected(
                b -> {
                  b.faults().tach.lost = factor == 0.0;
                  b.faults().tach.factor = factor == 0.0 ? 1.0 : factor;
                },
                b -> b.faults().tach.lost || b.faults().tach.factor != 1.0)
            .cleared(b -> b.faults().tach.clear()));
  }

  private static FaultCase climb() {
    return FaultCase.of("s14_climb", "air of 2000 m while the engine runs: no new ambient is taken")
        .must(Reaction.NOTHING)
        .injected(
            b -> {
              for (int i = 1; i <= 100; i++) {
                b.car().setAtmosphere(Atmosphere.at(20.0 * i, 20.0));
                b.loop().run(0.03);
              }
            },
            b -> b.outputs().ambientKpaAbs > 95.0 && b.car().ambientKpaAbs() < 85.0)
        .cleared(b -> b.car().setAtmosphere(Atmosphere.at(0.0, 20.0)));
  }

  private static void valve(List<FaultCase> cases) {
    cases.add(
        FaultCase.of(
                "p2_actuator_hose_off",
                "hose off the actuator: overboost, then no effect of the valve")
            .reports(FaultCode.VALVE_NO_EFFECT)
            .mayReport(FaultCode.OVERBOOST, FaultCode.OVERBOOST_REPEATED)
            .injected(
                b -> b.faults().valve.actuatorHoseOff = true, b -> b.car().mapKpaAbs() > 200.0)
            .cleared(b -> b.faults().valve.clear()));
    cases.add(
        FaultCase.of("p4_stuck_energised", "valve spool stuck where it vents the actuator")
            .reports(FaultCode.VALVE_NO_EFFECT)
            .mayReport(FaultCode.OVERBOOST, FaultCode.OVERBOOST_REPEATED)
            .injected(
                b -> b.faults().valve.stuck = ValveFaults.Stuck.ENERGISED,
                b -> b.car().mapKpaAbs() > 200.0)
            .cleared(b -> b.faults().valve.clear()));
  }
}
