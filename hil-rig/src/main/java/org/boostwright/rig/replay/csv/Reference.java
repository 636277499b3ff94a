package org.boostwright.rig.replay.csv;

/** What a pressure is counted from. */
public enum Reference {
  /** From vacuum. */
  ABSOLUTE("absolute"),
  /** From the ambient pressure the import is told, or the standard atmosphere. */
  GAUGE("gauge");

  private final String label;

  Reference(String label) {
    this.label = label;
  }

  /** As written in mapping files and reports. */
  public String label() {
    return label;
  }
}
