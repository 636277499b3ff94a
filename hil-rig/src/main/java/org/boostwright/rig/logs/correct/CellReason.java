package org.boostwright.rig.logs.correct;

/** Why a cell was moved or left. */
public enum CellReason {
  RAISED("pressure was below target"),
  LOWERED("pressure was above target"),
  FITS("within 1 kPa of what is wanted"),
  LIMITED_BY_STEP("would go further, but not in one session"),
  LIMITED_BY_PREDICTION("a larger rise might go more than 5 kPa over target"),
  LIMITED_BY_CEILING("stands at the duty ceiling or the top of the valve's window"),
  NOT_RAISED_TOO_FEW_PULLS("wants more, but too few pulls agree"),
  NOT_RAISED_DOUBT("wants more, but duty was at a limit or a fault casts doubt"),
  NEVER_VISITED("never visited: follows its neighbours a little"),
  AT_REST("no base duty here and nothing was seen: left at the spring");

  private final String words;

  CellReason(String words) {
    this.words = words;
  }

  /** As shown to people. */
  public String words() {
    return words;
  }
}
