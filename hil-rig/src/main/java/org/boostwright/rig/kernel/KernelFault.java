package org.boostwright.rig.kernel;

import java.io.IOException;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Set;
import org.boostwright.core.AnalogChannel;
import org.boostwright.core.monitor.FaultCode;
import org.boostwright.rig.plant.CarFaults;
import org.boostwright.rig.plant.WireFaults;

/**
 * A fault injected at boost, in the kernel or on the wires, and what must come of it.
 *
 * @param id stable name, its row in the fault list first
 * @param text what it is, for people
 * @param rests everything must go off, and stay off where a fault is expected
 * @param withinMillis longest time to it in guest time, ms; generous, as no tight time is asserted
 *     under emulation; NaN for none
 * @param expected faults of which at least one must be in the recording
 * @param allowed faults that cannot be told apart from it, or follow from it
 * @param inject brings it about
 * @param clear takes it back
 * @param keptSeconds how long it is kept up after rest, s: until it has been reported
 */
record KernelFault(
    String id,
    String text,
    boolean rests,
    double withinMillis,
    Set<FaultCode> expected,
    Set<FaultCode> allowed,
    Step inject,
    Step clear,
    double keptSeconds) {

  KernelFault(
      String id,
      String text,
      boolean rests,
      double withinMillis,
      Set<FaultCode> expected,
      Set<FaultCode> allowed,
      Step inject,
      Step clear) {
    this(id, text, rests, withinMillis, expected, allowed, inject, clear, KEPT_SECONDS);
  }

  /** Something done to the bench. */
  interface Step {
    void run() throws IOException;
  }

  private static final double WIRE_MILLIS = 100.0;
  private static final double BUS_MILLIS = 150.0;
  private static final double KEPT_SECONDS = 0.1;

  /** All of them. */
  static List<KernelFault> all(KernelRig rig, CarFaults faults) {
    List<KernelFault> all = new ArrayList<>();
    WireFaults map = faults.wire(AnalogChannel.MAP);
    bus(all, rig, "b1_nak", "converter does not acknowledge", GuestOrders.NAK);
    bus(all, rig, "b1_hang", "a transfer hangs until the adapter gives up", GuestOrders.HANG);
    bus(all, rig, "b1_stuck", "a conversion does not end", GuestOrders.STUCK);
    bus(all, rig, "b1_wrong_chip", "another chip answers", GuestOrders.WRONG_CHIP);
    wire(
        all,
        "s1_map_open",
        "pressure sensor wire open",
        FaultCode.MAP_SIGNAL_LOW,
        () -> map.wire = WireFaults.Wire.OPEN,
        map::clear);
    wire(
        all,
        "s2_map_to_ground",
        "pressure sensor short to ground",
        FaultCode.MAP_SIGNAL_LOW,
        () -> map.wire = WireFaults.Wire.SHORT_TO_GROUND,
        map::clear);
    wire(
        all,
        "s3_map_to_supply",
        "pressure sensor short to supply",
        FaultCode.MAP_SIGNAL_HIGH,
        () -> map.wire = WireFaults.Wire.SHORT_TO_SUPPLY,
        map::clear);
    wire(
        all,
        "s4_map_frozen",
        "pressure reading frozen in range",
        FaultCode.MAP_FROZEN,
        () -> map.frozen = true,
        map::clear);
    all.add(
        new KernelFault(
            "s13_tach_lost",
            "no engine-speed pulses",
            true,
            Double.NaN,
            EnumSet.of(FaultCode.ENGINE_SPEED_LOST),
            EnumSet.of(FaultCode.ENGINE_SPEED_JUMPS),
            () -> faults.tach.lost = true,
            faults.tach::clear,
            0.5));
    WireFaults throttle = faults.wire(AnalogChannel.THROTTLE);
    wire(
        all,
        "s12_throttle_open",
        "throttle sensor wire open",
        FaultCode.THROTTLE_SIGNAL,
        () -> throttle.wire = WireFaults.Wire.OPEN,
        throttle::clear);
    all.add(storm(rig));
    all.add(lateTicks(rig));
    all.add(
        new KernelFault(
            "t3_clock_step",
            "wall clock steps by a day",
            false,
            Double.NaN,
            Set.of(),
            Set.of(),
            () -> rig.shell().type("date -s @$(($(date +%s) + 86400))"),
            () -> {}));
    all.add(secondProcess(rig));
    return List.copyOf(all);
  }

  /** The coil is on whenever its supply is closed; what is locked stays so until key-off. */
  static KernelFault driverStuckOn(CarFaults faults) {
    return new KernelFault(
        "e1_driver_stuck_on",
        "driver stuck on: seen on the feedback wire",
        true,
        BUS_MILLIS,
        EnumSet.of(FaultCode.COIL_FEEDBACK),
        Set.of(),
        () -> faults.valve.driverStuckOn = true,
        faults.valve::clear);
  }

  /** Another program before the tick, and behind the kernel's threads, 14 ms of every 15 or so. */
  private static KernelFault lateTicks(KernelRig rig) {
    return new KernelFault(
        "t1_late_ticks",
        "every tick late: another program before it",
        true,
        Double.NaN,
        EnumSet.of(FaultCode.TICK_LATE),
        EnumSet.of(
            FaultCode.MAP_STALE,
            FaultCode.THROTTLE_STALE,
            FaultCode.SUPPLY_SIGNAL,
            FaultCode.INTAKE_AIR_SIGNAL),
        () ->
            rig.shell()
                .type(
                    "chrt -f 45 bash -c 'for i in {1..10}; do e=$((${EPOCHREALTIME/./} + 14000));"
                        + " while ((${EPOCHREALTIME/./} < e)); do :; done; sleep 0.001; done' &"),
        () -> {},
        0.3);
  }

  /**
   * The first thing any start does is coil off, whoever drives; the driving one rests that tick.
   */
  private static KernelFault secondProcess(KernelRig rig) {
    return new KernelFault(
        "e3_second_process",
        "the program is started a second time while it drives",
        true,
        Double.NaN,
        Set.of(),
        Set.of(),
        () ->
            rig.shell()
                .type("JAVA_TOOL_OPTIONS=-Xint /data/start driver --version >/dev/null 2>&1 &"),
        () -> {});
  }

  private static void bus(
      List<KernelFault> to, KernelRig rig, String id, String text, int kernelFault) {
    to.add(
        new KernelFault(
            id,
            text,
            true,
            BUS_MILLIS,
            EnumSet.of(FaultCode.MAP_STALE),
            EnumSet.of(
                FaultCode.THROTTLE_STALE, FaultCode.SUPPLY_SIGNAL, FaultCode.INTAKE_AIR_SIGNAL),
            () -> rig.orders().faults |= kernelFault,
            () -> rig.orders().faults &= ~kernelFault));
  }

  private static void wire(
      List<KernelFault> to, String id, String text, FaultCode code, Step inject, Step clear) {
    to.add(
        new KernelFault(
            id,
            text,
            true,
            WIRE_MILLIS,
            EnumSet.of(code),
            EnumSet.of(FaultCode.MAP_JUMPS, FaultCode.MAP_FALL_UNEXPLAINED),
            inject,
            clear));
  }

  /** Twenty thousand edges a second on the engine-speed line: whatever comes, never over-driven. */
  private static KernelFault storm(KernelRig rig) {
    return new KernelFault(
        "gpio_storm",
        "a storm of edges on the engine-speed line",
        true,
        Double.NaN,
        EnumSet.of(FaultCode.ENGINE_SPEED_LOST, FaultCode.ENGINE_SPEED_JUMPS),
        EnumSet.of(FaultCode.TICK_LATE, FaultCode.MAP_STALE),
        () -> {
          rig.orders().pulseLine[GuestOrders.STORM] = rig.pins().tach();
          rig.orders().halfNanos[GuestOrders.STORM] = 25_000L;
        },
        () -> rig.orders().halfNanos[GuestOrders.STORM] = 0L);
  }
}
