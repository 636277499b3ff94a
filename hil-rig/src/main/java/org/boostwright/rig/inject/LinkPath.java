package org.boostwright.rig.inject;

import org.boostwright.core.Inputs;
import org.boostwright.core.Outputs;
import org.boostwright.core.link.ControllerEnd;
import org.boostwright.core.link.RigEnd;
import org.boostwright.rig.link.LineFaults;

/**
 * The serial link between car and controller in stepped time: the same frames, checksums, sequence
 * numbers and ages as on a wire, and the same faults as on one.
 *
 * <p>The line itself takes no time, so that a sound link changes nothing but what a frame can carry.
 */
final class LinkPath {
  private static final double PWM_HZ = 30.0;

  private final Inputs delivered = new Inputs();
  private final LineFaults line;
  private final RigEnd rig;
  private final ControllerEnd controller;
  private boolean level;
  private long nowNanos;

  LinkPath(long nowNanos, long seed) {
    rig = new RigEnd(nowNanos, 1, 0L);
    controller = new ControllerEnd(nowNanos, 2, 0L);
    line = new LineFaults(seed, this::toController);
  }

  private void toController(byte[] bytes, int length) {
    controller.receive(bytes, length, nowNanos);
  }

  /** Sends one tick's inputs over the line; what arrives stands in {@code inputs} afterwards. */
  void carry(long now, Inputs inputs, Outputs outputs) {
    nowNanos = now;
    greet();
    // The controller's frame of the tick before, which the rig echoes.
    controller.write(now, outputs, PWM_HZ, level, false);
    level = !level;
    rig.receive(
        controller.frame().wire(),
        controller.frame().wireLength(),
        now,
        (frame, arrivedNanos, tickNanos, roundTripNanos) -> {});
    rig.write(now, inputs);
    line.send(rig.frame().wire(), rig.frame().wireLength(), now);
    controller.read(now, delivered);
    inputs.copyFrom(delivered);
  }

  private void greet() {
    if (rig.writeHello(nowNanos)) {
      controller.receive(rig.frame().wire(), rig.frame().wireLength(), nowNanos);
    }
    if (controller.writeHello(nowNanos)) {
      rig.receive(
          controller.frame().wire(),
          controller.frame().wireLength(),
          nowNanos,
          (frame, arrivedNanos, tickNanos, roundTripNanos) -> {});
    }
  }

  /** What is wrong with the line. */
  LineFaults line() {
    return line;
  }
}
