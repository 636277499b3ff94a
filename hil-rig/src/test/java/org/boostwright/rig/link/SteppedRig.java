package org.boostwright.rig.link;

import java.util.ArrayDeque;
import java.util.Arrays;
import org.boostwright.core.Controller;
import org.boostwright.core.Inputs;
import org.boostwright.core.Outputs;
import org.boostwright.core.link.ChunkQueue;
import org.boostwright.core.link.ControllerEnd;
import org.boostwright.core.settings.Settings;
import org.boostwright.core.state.Permission;
import org.boostwright.rig.plant.Atmosphere;
import org.boostwright.rig.plant.PlantParams;
import org.boostwright.rig.plant.VirtualCar;

/**
 * The rig's own loop and driver in stepped time, with the real controller at the other end of a
 * cable without a delay, or with one.
 */
final class SteppedRig implements RigClock {
  private static final long TICK = Controller.TICK_NANOS;

  private static final class Flying {
    final byte[] bytes;
    final long dueNanos;

    Flying(byte[] bytes, long dueNanos) {
      this.bytes = bytes;
      this.dueNanos = dueNanos;
    }
  }

  /** Way of every frame in either direction, ns. */
  long cableNanos = 200_000L;

  /** The controller's ticks begin this much late, ns. */
  long controllerLateNanos;

  /** Whether the controller's duty goes out as it wants it; false holds full duty at rest. */
  boolean obeys = true;

  final Controller controller;
  final VirtualCar car;
  final SerialWires wires;
  final RigLoop loop;
  final RoadDriver driver;
  final FaultBench bench;

  private final ChunkQueue toRig = new ChunkQueue(64, 1024);
  private final ArrayDeque<Flying> up = new ArrayDeque<>();
  private final ArrayDeque<Flying> down = new ArrayDeque<>();
  private final ControllerEnd end;
  private final Inputs inputs = new Inputs();
  private final Outputs outputs = new Outputs();
  private long nowNanos = 1_000_000_000L;
  private long controllerNanos = nowNanos + TICK;
  private boolean level;

  SteppedRig(Settings settings) {
    controller = new Controller(settings, Permission.FULL);
    end = new ControllerEnd(nowNanos, 1, 2L);
    car =
        new VirtualCar(
            PlantParams.PROJECT_CAR.withPwmHz(settings.valve().frequencyHz()),
            Atmosphere.at(0.0, 20.0),
            5L);
    wires =
        new SerialWires(
            (bytes, length) ->
                down.add(new Flying(Arrays.copyOf(bytes, length), nowNanos + cableNanos)),
            toRig,
            () -> "",
            () -> {},
            nowNanos,
            2L,
            3L);
    loop = new RigLoop(wires, new VirtualCarSide(car), new WireObserver(), this);
    driver = new RoadDriver(loop, car);
    bench = new FaultBench(loop, car, driver, wires, null);
  }

  @Override
  public long nanoTime() {
    return nowNanos;
  }

  @Override
  public void sleepUntil(long nanos) {
    while (controllerNanos + controllerLateNanos <= nanos) {
      nowNanos = controllerNanos + controllerLateNanos;
      controllerTick();
      controllerNanos += TICK;
    }
    nowNanos = Math.max(nowNanos, nanos);
    while (!up.isEmpty() && up.peek().dueNanos <= nowNanos) {
      Flying frame = up.remove();
      toRig.put(frame.bytes, frame.bytes.length, frame.dueNanos);
    }
  }

  private void controllerTick() {
    while (!down.isEmpty() && down.peek().dueNanos <= nowNanos) {
      Flying frame = down.remove();
      end.receive(frame.bytes, frame.bytes.length, frame.dueNanos);
    }
    if (!end.read(nowNanos, inputs)) {
      inputs.coilEnergised = false;
    }
    controller.step(nowNanos, inputs, outputs);
    if (!obeys) {
      outputs.dutyFraction = 0.5;
    }
    if (end.writeHello(nowNanos)) {
      send();
    }
    if (end.peer().present(nowNanos)) {
      level ^= outputs.heartbeatPermitted;
      end.write(nowNanos, outputs, controller.settings().valve().frequencyHz(), level, false);
      send();
    }
  }

  private void send() {
    byte[] bytes = Arrays.copyOf(end.frame().wire(), end.frame().wireLength());
    up.add(new Flying(bytes, nowNanos + cableNanos));
  }
}
