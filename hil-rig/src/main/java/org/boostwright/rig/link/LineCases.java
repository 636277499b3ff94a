package org.boostwright.rig.link;

import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import org.boostwright.core.monitor.FaultCode;
import org.boostwright.rig.link.FaultCase.Place;
import org.boostwright.rig.link.FaultCase.Reaction;

/** Rows L1, T1 and T2 of the fault list: the serial line and the controller's program. */
final class LineCases {
  private static final double LINK_MILLIS = 100.0;
  private static final double GATE_MILLIS = 100.0;
  private static final int HOLD_UPS = 12;
  private static final int LATE_IN_A_ROW = 3;

  private LineCases() {}

  /** The line's cases. */
  static List<FaultCase> line() {
    List<FaultCase> cases = new ArrayList<>();
    cases.add(line("l1_silent", "link silent", LineFaults.Kind.SILENT));
    cases.add(line("l1_corrupt", "every frame corrupted", LineFaults.Kind.CORRUPT));
    cases.add(line("l1_repeat", "the same frame again and again", LineFaults.Kind.REPEAT));
    cases.add(line("l1_reorder", "frames in reverse order by sixteen", LineFaults.Kind.REORDER));
    cases.add(line("l1_delay", "frames 150 ms late", LineFaults.Kind.DELAY));
    cases.add(line("l1_noise", "random bytes instead of frames", LineFaults.Kind.NOISE));
    return cases;
  }

  private static FaultCase line(String id, String text, LineFaults.Kind kind) {
    return FaultCase.of(id, text)
        .at(Place.LINE)
        .within(LINK_MILLIS)
        .reports(FaultCode.MAP_STALE)
        .mayReport(
            FaultCode.THROTTLE_STALE,
            FaultCode.SUPPLY_SIGNAL,
            FaultCode.INTAKE_AIR_SIGNAL,
            FaultCode.ENGINE_SPEED_LOST)
        .injected(b -> b.wires().faults().set(kind), b -> b.wires().faults().affected() > 0L)
        .cleared(b -> b.wires().faults().set(LineFaults.Kind.NONE));
  }

  /** Cases that freeze or kill a program the rig has started. */
  static List<FaultCase> program() {
    List<FaultCase> cases = new ArrayList<>();
    cases.add(
        FaultCase.of("t1_late_ticks", "program held up for 15 ms again and again")
            .at(Place.PROGRAM)
            .reports(FaultCode.TICK_LATE, FaultCode.MAP_STALE)
            .mayReport(
                FaultCode.THROTTLE_STALE, FaultCode.SUPPLY_SIGNAL, FaultCode.INTAKE_AIR_SIGNAL)
            .injected(
                LineCases::holdUp, b -> b.loop().observer().mostLateInARow() >= LATE_IN_A_ROW));
    cases.add(
        FaultCase.of("t2_frozen", "controller's program frozen")
            .at(Place.PROGRAM)
            .must(Reaction.SUPPLY_OPEN)
            .within(GATE_MILLIS)
            .mayReport(FaultCode.TICK_LATE, FaultCode.MAP_STALE, FaultCode.THROTTLE_STALE)
            .injected(b -> b.program().freeze(), b -> b.outputs().coilSupplyClosed)
            .cleared(b -> b.program().thaw()));
    cases.add(
        FaultCase.of("t2_killed", "controller's program killed with full boost")
            .at(Place.PROGRAM)
            .must(Reaction.SUPPLY_OPEN)
            .within(GATE_MILLIS)
            .injected(
                b -> b.program().kill(),
                b -> !b.program().alive() && b.outputs().coilSupplyClosed));
    return cases;
  }

  /** Lets one tick through at a time, in the middle between two starts: late every time. */
  private static void holdUp(FaultBench bench) throws IOException {
    for (int i = 0; i < HOLD_UPS; i++) {
      bench.program().freeze();
      bench.loop().run(0.015);
      bench.loop().waitInTick(0.002);
      bench.program().thaw();
    }
  }
}
