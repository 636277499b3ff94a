package org.boostwright.rig.result;

/** How a whole command ended; decides its exit code. */
public enum Verdict {
  /** Everything that was judged is within its limits. */
  PASSED("passed"),
  /** At least one measurement or finding says no. */
  FAILED("failed"),
  /** The command did not do what was asked, because doing it would not be safe or make sense. */
  REFUSED("refused");

  private final String word;

  Verdict(String word) {
    this.word = word;
  }

  /** As written in JSON and shown to people. */
  public String word() {
    return word;
  }
}
