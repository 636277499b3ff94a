package org.boostwright.rig.replay.csv;

/** What a signal measures; decides which units fit it. */
public enum Quantity {
  /** Imported as kPa absolute. */
  PRESSURE("pressure"),
  /** Imported as degC. */
  TEMPERATURE("temperature"),
  /** Imported as km/h. */
  SPEED("road speed"),
  /** Imported as percent. */
  SHARE("percentage"),
  /** Imported as volts. */
  VOLTAGE("voltage"),
  /** Imported as 1/min. */
  ENGINE_SPEED("engine speed");

  private final String words;

  Quantity(String words) {
    this.words = words;
  }

  /** As shown to people. */
  public String words() {
    return words;
  }
}
