package org.boostwright.pi.io;

import java.io.IOException;
import org.boostwright.core.Inputs;
import org.boostwright.core.settings.OptionalWires;
import org.boostwright.core.settings.PinSettings;
import org.jspecify.annotations.Nullable;

/**
 * Key, permit, selector, spring-only and coil-feedback inputs, as far as they are wired. High means
 * on, closed, high boost, coil current. A switch that cannot be read reads as off.
 */
final class Switches implements AutoCloseable {
  private final @Nullable InputLine key;
  private final @Nullable InputLine permit;
  private final @Nullable InputLine selector;
  private final @Nullable InputLine springOnly;
  private final @Nullable InputLine feedback;

  Switches(Hardware hardware, PinSettings pins, OptionalWires wires) throws IOException {
    key = open(hardware, wires.keyInput(), pins.key(), "key");
    permit = open(hardware, wires.permitInput(), pins.permit(), "permit");
    selector = open(hardware, wires.boostSelector(), pins.boostSelector(), "boost selector");
    springOnly =
        open(hardware, wires.springOnlySense(), pins.springOnlySense(), "spring-only switch");
    feedback = open(hardware, wires.coilFeedback(), pins.coilFeedback(), "coil feedback");
  }

  private static @Nullable InputLine open(Hardware hardware, boolean wired, int pin, String name)
      throws IOException {
    return wired && pin != PinSettings.NOT_WIRED ? hardware.input(pin, name) : null;
  }

  void read(Inputs inputs) {
    inputs.keyOn = level(key, true);
    inputs.permit = level(permit, true);
    inputs.highBoost = level(selector, true);
    inputs.coilFeed = level(springOnly, true);
    inputs.coilEnergised = level(feedback, false);
  }

  private static boolean level(@Nullable InputLine line, boolean unwired) {
    if (line == null) {
      return unwired;
    }
    try {
      return line.get();
    } catch (IOException e) {
      return false;
    }
  }

  @Override
  public void close() {
    for (InputLine line : new InputLine[] {key, permit, selector, springOnly, feedback}) {
      if (line != null) {
        line.close();
      }
    }
  }
}
