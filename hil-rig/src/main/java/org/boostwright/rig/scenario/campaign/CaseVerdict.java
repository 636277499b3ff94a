package org.boostwright.rig.scenario.campaign;

/** What became of one run. */
public enum CaseVerdict {
  /** Within every rule. */
  SAFE("safe"),
  /** Too much pressure, or the coil fed after the reaction time. */
  UNSAFE("unsafe"),
  /** A rule that holds in every tick was broken. */
  BROKEN("broken"),
  /** Nothing the coil does could stop it: reported apart, with its peak. */
  APART("apart"),
  /** A fault was never seen to take effect: says nothing. */
  INVALID("invalid");

  private final String word;

  CaseVerdict(String word) {
    this.word = word;
  }

  /** As written in files. */
  public String word() {
    return word;
  }

  /** The verdict with this word. */
  static CaseVerdict of(String word) {
    for (CaseVerdict verdict : values()) {
      if (verdict.word.equals(word)) {
        return verdict;
      }
    }
    throw new IllegalArgumentException("'" + word + "' is no verdict");
  }
}
