package org.boostwright.core.bench;

import java.util.Locale;

/** The bench procedures, in the order in which they run. */
public enum BenchStep {
  AMBIENT("air off: what the sensor calls ambient"),
  CLICK("coil on and off in a countable pattern, without air"),
  REST("coil off: the actuator line must see the supply"),
  POLARITY("does energising lower the pressure, and more duty lower it more"),
  LEAK("supply shut: how fast the line loses its pressure"),
  RESPONSE("time to vent and to fill"),
  EDGES("both edges of the duty window at two frequencies"),
  SWEEP("duty up and down at one frequency: mean, ripple, hysteresis"),
  FREQUENCY("a few duties over 15 to 60 Hz"),
  ACTUATOR("the actuator alone: cracking, full stroke, holding, preload");

  private final String words;

  BenchStep(String words) {
    this.words = words;
  }

  /** Name on the command line. */
  public String id() {
    return name().toLowerCase(Locale.ROOT);
  }

  /** What it does, for people. */
  public String words() {
    return words;
  }
}
