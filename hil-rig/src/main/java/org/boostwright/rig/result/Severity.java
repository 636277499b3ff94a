package org.boostwright.rig.result;

/** How much a finding matters. */
public enum Severity {
  /** Good to know. */
  NOTE("note"),
  /** Look at it before going further; does not fail the command. */
  CAUTION("caution"),
  /** Must be put right; fails the command. */
  PROBLEM("problem");

  private final String word;

  Severity(String word) {
    this.word = word;
  }

  /** As written in JSON and shown to people. */
  public String word() {
    return word;
  }
}
