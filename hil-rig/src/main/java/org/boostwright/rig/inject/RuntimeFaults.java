package org.boostwright.rig.inject;

import java.util.ArrayList;
import java.util.List;
import org.boostwright.core.monitor.FaultCode;
import org.boostwright.rig.link.LineFaults;

/** Rows E2, E3, L1, T1 and T2: power, outputs, link, time, the program itself. */
final class RuntimeFaults {
  private final List<FaultKind> kinds = new ArrayList<>();

  private RuntimeFaults() {}

  static List<FaultKind> all() {
    RuntimeFaults all = new RuntimeFaults();
    all.power();
    all.outputs();
    all.link();
    all.time();
    return all.kinds;
  }

  private void power() {
    kinds.add(
        FaultKind.of("e2_brown_out", "battery voltage falls", Site.OTHER_INPUT)
            .amount("voltage", "V", 5.0, 10.5, 8.0)
            .allows(FaultCode.SUPPLY_LOW, FaultCode.SUPPLY_SIGNAL, FaultCode.COIL_FEEDBACK)
            .done(
                (at, amount) -> at.car().sensors().batteryVolts = amount,
                at -> at.car().sensors().batteryVolts = 14.0));
    kinds.add(
        FaultKind.of("e2_power_cut", "controller loses power and boots anew", Site.TIME)
            .momentary()
            .restWithin(0.005)
            .allows(FaultCode.AMBIENT_IN_DOUBT)
            .done((at, amount) -> at.powerCut(), at -> {}));
  }

  private void outputs() {
    kinds.add(
        FaultKind.of("e3_outputs_wrong", "somebody else drives the PWM", Site.SWITCHES)
            .restWithin(0.020)
            .reports(FaultCode.OUTPUTS_WRONG)
            .done(
                (at, amount) -> at.tamper().outputsWrong = true,
                at -> at.tamper().outputsWrong = false));
    kinds.add(
        FaultKind.of("p1_permit_open", "external safety device opens the permit", Site.SWITCHES)
            .done(
                (at, amount) -> at.tamper().permitOpen = true,
                at -> at.tamper().permitOpen = false));
    kinds.add(
        FaultKind.of("e2_key_off", "key off for a moment at speed", Site.SWITCHES)
            .restWithin(0.005)
            .done(
                (at, amount) -> at.car().sensors().keyOn = false,
                at -> at.car().sensors().keyOn = true));
  }

  private void link(String id, String words, LineFaults.Kind kind) {
    kinds.add(
        FaultKind.of(id, words, Site.MAP_INPUT)
            .restWithin(0.100)
            .reports(FaultCode.MAP_STALE)
            .allows(
                FaultCode.THROTTLE_STALE,
                FaultCode.SUPPLY_SIGNAL,
                FaultCode.INTAKE_AIR_SIGNAL,
                FaultCode.ENGINE_SPEED_LOST,
                FaultCode.ENGINE_SPEED_JUMPS)
            .done((at, amount) -> at.line().set(kind), at -> at.line().set(LineFaults.Kind.NONE)));
  }

  private void link() {
    link("l1_silent", "link silent", LineFaults.Kind.SILENT);
    link("l1_corrupt", "every frame corrupted", LineFaults.Kind.CORRUPT);
    link("l1_repeat", "the same frame again and again", LineFaults.Kind.REPEAT);
    link("l1_reorder", "frames in reverse order by eight", LineFaults.Kind.REORDER);
    link("l1_delay", "frames 150 ms late", LineFaults.Kind.DELAY);
    link("l1_noise", "random bytes instead of frames", LineFaults.Kind.NOISE);
  }

  private void time() {
    kinds.add(
        FaultKind.of("t1_late_ticks", "every tick late", Site.TIME)
            .amount("late by", "ms", 2.5, 60.0, 10.0)
            .restWithin(0.200)
            .reports(FaultCode.TICK_LATE, FaultCode.MAP_STALE)
            .allows(FaultCode.MAP_JUMPS)
            .done((at, amount) -> at.late(amount * 1e-3), at -> at.late(0.0)));
    kinds.add(
        FaultKind.of("t2_hang", "control program stands still", Site.TIME)
            .stoppable(Stoppable.BY_HEARTBEAT)
            .restWithin(0.100)
            .allows(FaultCode.TICK_LATE, FaultCode.MAP_STALE, FaultCode.THROTTLE_STALE)
            .done((at, amount) -> at.hang(true), at -> at.hang(false)));
  }
}
