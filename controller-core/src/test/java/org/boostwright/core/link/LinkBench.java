package org.boostwright.core.link;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.List;
import org.boostwright.core.AnalogChannel;
import org.boostwright.core.Controller;
import org.boostwright.core.Inputs;
import org.boostwright.core.Outputs;
import org.boostwright.core.TestSettings;
import org.boostwright.core.settings.Settings;

/** Both ends and a wire with a delay in stepped time; the rig's side is a hand-made car. */
final class LinkBench {
  static final long MILLI = 1_000_000L;

  /** Something the wire does to a frame on its way; returns what arrives, perhaps nothing. */
  interface Wire {
    List<byte[]> carry(byte[] frame);
  }

  private static final class Flying {
    final byte[] bytes;
    final long dueNanos;

    Flying(byte[] bytes, long dueNanos) {
      this.bytes = bytes;
      this.dueNanos = dueNanos;
    }
  }

  long nowNanos = 5_000_000_000L;
  final Controller controller;
  ControllerEnd controllerEnd = new ControllerEnd(nowNanos, 1, 0x1122L);
  RigEnd rigEnd = new RigEnd(nowNanos - 77_000_123L, 2, 0x3344L);
  final Inputs car = new Inputs();
  final Inputs seen = new Inputs();
  final Outputs outputs = new Outputs();
  Wire toController = List::of;
  Wire toRig = List::of;
  long delayNanos = 300_000L;
  long lastRoundTripNanos;
  double lastRigDuty;
  final List<Integer> echoes = new ArrayList<>();

  private final ArrayDeque<Flying> down = new ArrayDeque<>();
  private final ArrayDeque<Flying> up = new ArrayDeque<>();
  private boolean heartbeat;

  double mapVolts;
  double throttleVolts;
  double engineRpm;
  private double shownRpm;
  private double revolutions;
  private long tick;

  LinkBench(Settings settings) {
    controller = new Controller(settings);
    car.keyOn = true;
    car.permit = true;
    car.coilFeed = true;
  }

  /** One tick of both ends; the rig's is 2 ms before the controller's. */
  void tick() {
    tick++;
    rigTick();
    nowNanos += 2 * MILLI;
    deliver();
    controllerEnd.read(nowNanos, seen);
    controller.step(nowNanos, seen, outputs);
    if (controllerEnd.writeHello(nowNanos)) {
      send(controllerEnd.frame(), toRig, up);
    }
    heartbeat ^= outputs.heartbeatPermitted;
    controllerEnd.write(nowNanos, outputs, 30.0, heartbeat, false);
    send(controllerEnd.frame(), toRig, up);
    nowNanos += 3 * MILLI;
    deliver();
  }

  private void rigTick() {
    long rigNow = nowNanos;
    car.sample(AnalogChannel.MAP, mapVolts + 0.002 * (tick % 5 - 2), rigNow - 150_000L);
    car.sample(AnalogChannel.THROTTLE, throttleVolts, rigNow - 90_000L);
    if (engineRpm > 0.0) {
      // An engine changes its speed by 15000 1/min per s at most.
      shownRpm = shownRpm == 0.0 ? engineRpm : Math.min(engineRpm, shownRpm + 15_000.0 * 0.005);
      double perSecond = shownRpm / 60.0 * 2.0;
      double before = revolutions;
      revolutions += perSecond * 0.005;
      if (Math.floor(revolutions) > Math.floor(before)) {
        car.engineSeen = true;
        car.enginePeriodNanos = 1e9 / perSecond;
        car.enginePulseNanos =
            rigNow - (long) (1e9 * (revolutions - Math.floor(revolutions)) / perSecond);
      }
    }
    if (rigEnd.writeHello(rigNow)) {
      send(rigEnd.frame(), toController, down);
    }
    rigEnd.write(rigNow, car);
    send(rigEnd.frame(), toController, down);
  }

  private void send(FrameWriter frame, Wire wire, ArrayDeque<Flying> to) {
    byte[] bytes = java.util.Arrays.copyOf(frame.wire(), frame.wireLength());
    for (byte[] arriving : wire.carry(bytes)) {
      to.add(new Flying(arriving, nowNanos + delayNanos));
    }
  }

  private void deliver() {
    while (!down.isEmpty() && down.peek().dueNanos <= nowNanos) {
      Flying flying = down.remove();
      controllerEnd.receive(flying.bytes, flying.bytes.length, flying.dueNanos);
    }
    while (!up.isEmpty() && up.peek().dueNanos <= nowNanos) {
      Flying flying = up.remove();
      rigEnd.receive(
          flying.bytes,
          flying.bytes.length,
          flying.dueNanos,
          (frame, arrived, tick, roundTrip) -> {
            lastRoundTripNanos = roundTrip;
            lastRigDuty = frame.outputs.dutyFraction;
            echoes.add(frame.echo);
          });
    }
  }

  /** Key on with the engine stopped, idle, full throttle. */
  void driveToBoost() {
    mapVolts = TestSettings.mapVolts(100.0);
    throttleVolts = TestSettings.throttleVolts(0.0);
    run(3.0);
    engineRpm = 900.0;
    mapVolts = TestSettings.mapVolts(40.0);
    throttleVolts = TestSettings.throttleVolts(8.0);
    run(1.0);
    engineRpm = 4000.0;
    mapVolts = TestSettings.mapVolts(170.0);
    throttleVolts = TestSettings.throttleVolts(100.0);
    run(1.0);
  }

  void run(double seconds) {
    long ticks = Math.round(seconds / 0.005);
    for (long i = 0; i < ticks; i++) {
      tick();
    }
  }
}
