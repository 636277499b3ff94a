package org.boostwright.core.bench;

/** Why a session stopped before its end; the coil is off in every case. */
public enum AbortReason {
  ASKED("stopped by hand", "start again when ready"),
  SENSOR_LOST(
      "the line sensor gave no sample for 100 ms", "check the sensor's plug and the converter"),
  SENSOR_RANGE("the line sensor reads outside -20 to 800 kPa", "check its plug and calibration"),
  PRESSURE("the line is above the bench's pressure limit", "shut the air, lower the regulator"),
  COIL_HOT(
      "the coil's computed temperature passed 110 degC",
      "let it cool for ten minutes; measure its" + " resistance"),
  REFUSED(
      "the controller keeps the coil off: the engine is not known to be stopped, or a fault is there",
      "engine off, air off, wait three seconds and start again; './boostwright check' and the live"
          + " status name a fault"),
  LATE("the program was not called for 250 ms while the coil was driven", "free the machine"),
  INTERNAL("an error in the program", "report it with the log");

  private final String words;
  private final String next;

  AbortReason(String words, String next) {
    this.words = words;
    this.next = next;
  }

  /** What happened. */
  public String words() {
    return words;
  }

  /** What to do. */
  public String next() {
    return next;
  }
}
