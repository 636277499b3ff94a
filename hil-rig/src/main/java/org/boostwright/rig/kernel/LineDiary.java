package org.boostwright.rig.kernel;

import java.util.Arrays;
import org.boostwright.rig.link.HeartbeatGate;

/** Levels of the output lines with the time of their last change, and the heartbeat's gate. */
final class LineDiary {
  private static final int LINES = 28;

  private final int heartbeatLine;
  private final boolean[] level = new boolean[LINES];
  private final boolean[] output = new boolean[LINES];
  private HeartbeatGate gate = new HeartbeatGate();
  private long highFirst;

  LineDiary(int heartbeatLine) {
    this.heartbeatLine = heartbeatLine;
  }

  /** The machine was reset: every line is an input. */
  void boot() {
    Arrays.fill(level, false);
    Arrays.fill(output, false);
    gate = new HeartbeatGate();
  }

  /** Takes an event; those of the PWM are not its business. */
  void take(KernelEvent event) {
    if (event.kind() == KernelEvent.Kind.LINE_FREE && event.number() < LINES) {
      output[event.number()] = false;
    }
    boolean line =
        event.kind() == KernelEvent.Kind.LINE_SET || event.kind() == KernelEvent.Kind.LINE_OUTPUT;
    if (!line || event.number() >= LINES) {
      return;
    }
    int number = event.number();
    if (event.kind() == KernelEvent.Kind.LINE_OUTPUT) {
      output[number] = true;
      highFirst += event.on() ? 1L : 0L;
    }
    level[number] = event.on();
    if (number == heartbeatLine) {
      gate.level(event.on(), event.nanos());
    }
  }

  /** Level of an output line. */
  boolean high(int line) {
    return level[line];
  }

  /** True while a program holds the line as an output. */
  boolean output(int line) {
    return output[line];
  }

  /** Lines that began as outputs with a high level: none must. */
  long highFirst() {
    return highFirst;
  }

  /** The coil supply's heartbeat gate. */
  HeartbeatGate gate() {
    return gate;
  }
}
