package org.boostwright.rig.result;

/** What became of one measurement. "Not measured" is never "passed". */
public enum Judgement {
  /** Within its limits. */
  PASSED("passed"),
  /** Outside its limits. */
  FAILED("failed"),
  /** It has limits but could not be measured; the command fails. */
  NOT_MEASURED("not measured"),
  /** It has no limits: for information. */
  NOT_JUDGED("not judged");

  private final String word;

  Judgement(String word) {
    this.word = word;
  }

  /** As written in JSON and shown to people. */
  public String word() {
    return word;
  }

  /** True when it makes the whole command fail. */
  public boolean fails() {
    return this == FAILED || this == NOT_MEASURED;
  }
}
