package org.boostwright.rig.inject;

import java.util.ArrayList;
import java.util.List;
import org.boostwright.core.monitor.FaultCode;
import org.boostwright.rig.plant.PortSwap;
import org.boostwright.rig.plant.ValveFaults;

/** Rows S13, S14, P and E1: speed signals, ambient, valve, hoses, actuator, turbo side, coil. */
final class CarFaultKinds {
  private static final FaultCode[] NO_EFFECT = {
    FaultCode.OVERBOOST, FaultCode.VALVE_NO_EFFECT, FaultCode.OVERBOOST_REPEATED
  };
  private static final FaultCode[] WEAK = {
    FaultCode.SPOOL_NOT_RISING, FaultCode.TARGET_OUT_OF_REACH
  };

  private final List<FaultKind> kinds = new ArrayList<>();

  private CarFaultKinds() {}

  static List<FaultKind> all() {
    CarFaultKinds all = new CarFaultKinds();
    all.speeds();
    all.hoses();
    all.valve();
    all.turboSide();
    all.coil();
    return all.kinds;
  }

  private void speeds() {
    kinds.add(
        FaultKind.of("s13_tach_lost", "engine-speed signal lost", Site.PULSES)
            .restWithin(0.500)
            .reports(FaultCode.ENGINE_SPEED_LOST)
            .allows(FaultCode.ENGINE_SPEED_JUMPS)
            .done(
                (at, amount) -> at.faults().tach.lost = true, at -> at.faults().tach.lost = false));
    kinds.add(
        FaultKind.of("s13_tach_factor", "engine-speed signal doubled or halved", Site.PULSES)
            .amount("factor on the pulses", "1", 0.5, 2.0, 2.0)
            .allows(FaultCode.ENGINE_SPEED_JUMPS, FaultCode.ENGINE_SPEED_LOST)
            .done(
                (at, amount) -> at.faults().tach.factor = amount,
                at -> at.faults().tach.factor = 1.0));
    kinds.add(
        FaultKind.of("s13_tach_drops", "engine-speed pulses swallowed at random", Site.PULSES)
            .amount("share swallowed", "0..1", 0.05, 0.8, 0.3)
            .allows(FaultCode.ENGINE_SPEED_JUMPS, FaultCode.ENGINE_SPEED_LOST)
            .done(
                (at, amount) -> at.faults().tach.droppedFraction = amount,
                at -> at.faults().tach.droppedFraction = 0.0));
    kinds.add(
        FaultKind.of("s14_climb", "climb or descent without key-off", Site.CAR)
            .amount("altitude afterwards", "m", 200.0, 3000.0, 2000.0)
            .allows(FaultCode.AMBIENT_IN_DOUBT, FaultCode.OVERBOOST, FaultCode.OVERBOOST_REPEATED)
            .done((at, amount) -> at.climbTo(amount), FaultyRun::stayHere));
  }

  private void uncontrollable(String id, String words, FaultKind.On on, FaultKind.Off off) {
    kinds.add(
        FaultKind.of(id, words, Site.CAR)
            .stoppable(Stoppable.ONLY_BY_ENGINE_CUT)
            .allows(NO_EFFECT)
            .allows(FaultCode.MAP_NOISY)
            .done(on, off));
  }

  private void hoses() {
    uncontrollable(
        "p2_actuator_hose_off",
        "hose off the actuator",
        (at, amount) -> at.faults().valve.actuatorHoseOff = true,
        at -> at.faults().valve.actuatorHoseOff = false);
    uncontrollable(
        "p2_wastegate_shut",
        "wastegate stuck shut",
        (at, amount) -> at.faults().wastegateStuckLift = 0.0,
        at -> at.faults().wastegateStuckLift = Double.NaN);
    kinds.add(
        FaultKind.of("p2_wastegate_stuck", "wastegate stuck part open", Site.CAR)
            .amount("lift", "0..1", 0.05, 1.0, 0.5)
            .stoppable(Stoppable.ONLY_BY_ENGINE_CUT)
            .allows(NO_EFFECT)
            .allows(WEAK)
            .done(
                (at, amount) -> at.faults().wastegateStuckLift = amount,
                at -> at.faults().wastegateStuckLift = Double.NaN));
    uncontrollable(
        "p3_supply_hose_off",
        "hose off the valve's supply: the actuator never sees boost",
        (at, amount) -> at.faults().valve.supplyHoseOff = true,
        at -> at.faults().valve.supplyHoseOff = false);
    kinds.add(
        FaultKind.of("p3_actuator_leak", "leak in the actuator's line", Site.CAR)
            .amount("leak over the valve's own passage", "1", 0.02, 1.0, 0.3)
            .stoppable(Stoppable.ONLY_BY_ENGINE_CUT)
            .allows(NO_EFFECT)
            .done(
                (at, amount) -> at.faults().valve.leakConductance = amount * 0.9e-8,
                at -> at.faults().valve.leakConductance = 0.0));
    kinds.add(
        FaultKind.of("p3_vent_blocked", "vent of the valve blocked", Site.CAR)
            .amount("open share left", "0..1", 0.0, 0.5, 0.0)
            .allows(WEAK)
            .done(
                (at, amount) -> at.faults().valve.ventOpen = amount,
                at -> at.faults().valve.ventOpen = 1.0));
    kinds.add(
        FaultKind.of("p3_charge_leak", "leak between intercooler and throttle", Site.CAR)
            .amount("area", "mm2", 20.0, 1000.0, 200.0)
            .allows(WEAK)
            .allows(FaultCode.MAP_FALL_UNEXPLAINED)
            .done(
                (at, amount) -> at.faults().chargeLeakM2 = amount * 1e-6,
                at -> at.faults().chargeLeakM2 = 0.0));
    kinds.add(
        FaultKind.of("p3_supply_throttled", "supply hose of the valve squashed", Site.CAR)
            .amount("open share left", "0..1", 0.05, 0.8, 0.3)
            .stoppable(Stoppable.ONLY_BY_ENGINE_CUT)
            .allows(NO_EFFECT)
            .done(
                (at, amount) -> at.faults().valve.supplyOpen = amount,
                at -> at.faults().valve.supplyOpen = 1.0));
  }

  private void valve() {
    uncontrollable(
        "p4_stuck_energised",
        "valve spool stuck where it vents the actuator",
        (at, amount) -> at.faults().valve.stuck = ValveFaults.Stuck.ENERGISED,
        at -> at.faults().valve.stuck = ValveFaults.Stuck.FREE);
    kinds.add(
        FaultKind.of("p4_stuck_at_rest", "valve spool stuck at rest", Site.COIL)
            .allows(WEAK)
            .done(
                (at, amount) -> at.faults().valve.stuck = ValveFaults.Stuck.AT_REST,
                at -> at.faults().valve.stuck = ValveFaults.Stuck.FREE));
    kinds.add(
        FaultKind.of("p4_slow", "valve spool slow both ways", Site.COIL)
            .amount("factor on its delays", "1", 1.2, 4.0, 2.0)
            .allows(WEAK)
            .allows(FaultCode.OVERBOOST, FaultCode.OVERBOOST_REPEATED)
            .done(
                (at, amount) -> at.faults().valve.slowFactor = amount,
                at -> at.faults().valve.slowFactor = 1.0));
    uncontrollable(
        "p5_ports_swapped",
        "actuator and vent exchanged at the valve after the bench",
        (at, amount) -> at.faults().valve.portSwap = PortSwap.ACTUATOR_WITH_VENT,
        at -> at.faults().valve.portSwap = PortSwap.NONE);
    kinds.add(
        FaultKind.of("p5_polarity", "coil driven the wrong way round", Site.COIL)
            .stoppable(Stoppable.BY_SUPPLY_SWITCH)
            .allows(FaultCode.COIL_FEEDBACK)
            .allows(NO_EFFECT)
            .allows(WEAK)
            .done(
                (at, amount) -> at.car().setPwmInverted(true),
                at -> at.car().setPwmInverted(false)));
    kinds.add(
        FaultKind.of("p5_frequency", "coil driven at another frequency", Site.COIL)
            .amount("frequency", "Hz", 15.0, 60.0, 60.0)
            .allows(FaultCode.COIL_FEEDBACK, FaultCode.OVERBOOST, FaultCode.OVERBOOST_REPEATED)
            .allows(WEAK)
            .done(
                (at, amount) -> at.car().setPwmHz(amount),
                at -> at.car().setPwmHz(at.car().params().pwmHz())));
  }

  private void turboSide() {
    uncontrollable(
        "p6_recirculation_shut",
        "recirculation valve stuck shut",
        (at, amount) -> at.faults().recirculationStuck = 0.0,
        at -> at.faults().recirculationStuck = Double.NaN);
    kinds.add(
        FaultKind.of("p6_recirculation_open", "recirculation valve stuck open", Site.CAR)
            .allows(WEAK)
            .allows(FaultCode.MAP_FALL_UNEXPLAINED)
            .done(
                (at, amount) -> at.faults().recirculationStuck = 1.0,
                at -> at.faults().recirculationStuck = Double.NaN));
  }

  private void coil() {
    kinds.add(
        FaultKind.of("e1_coil_open", "coil or its wire broken", Site.COIL)
            .reports(FaultCode.COIL_FEEDBACK)
            .allows(WEAK)
            .done(
                (at, amount) -> at.faults().valve.coilOpen = true,
                at -> at.faults().valve.coilOpen = false));
    kinds.add(
        FaultKind.of("e1_coil_short", "coil shorted", Site.COIL)
            .allows(FaultCode.COIL_FEEDBACK)
            .allows(WEAK)
            .done(
                (at, amount) -> at.faults().valve.coilShort = true,
                at -> at.faults().valve.coilShort = false));
    kinds.add(
        FaultKind.of("e1_driver_on", "low-side driver conducts always", Site.SPOOL)
            .stoppable(Stoppable.BY_SUPPLY_SWITCH)
            .reports(FaultCode.COIL_FEEDBACK)
            .allows(NO_EFFECT)
            .done(
                (at, amount) -> at.faults().valve.driverStuckOn = true,
                at -> at.faults().valve.driverStuckOn = false));
    kinds.add(
        FaultKind.of("e1_supply_switch_closed", "coil supply switch welded", Site.COIL)
            .stoppable(Stoppable.BY_DRIVER)
            .allows(FaultCode.COIL_FEEDBACK)
            .done(
                (at, amount) -> at.faults().valve.supplySwitchStuckClosed = true,
                at -> at.faults().valve.supplySwitchStuckClosed = false));
  }
}
