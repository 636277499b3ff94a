package org.boostwright.rig.result;

import java.util.List;

/**
 * What happened when, one row for each case, against the time each case is allowed: a fault taking
 * effect, confirmed, at rest.
 *
 * @param id snake_case name, unique within a result
 * @param title what is seen, in words
 * @param unit unit of every time, see {@link Units}; 0 is where each row begins
 * @param rows one for each case
 */
public record TimeLine(String id, String title, String unit, List<Row> rows) {

  /**
   * One case.
   *
   * @param label what it is
   * @param marks what happened, each with its time; a case needs at least one
   * @param limit longest time allowed to the last mark; NaN when there is none
   */
  public record Row(String label, List<Mark> marks, double limit) {
    /** Copies the marks and checks that there is one. */
    public Row {
      marks = List.copyOf(marks);
      if (marks.isEmpty()) {
        throw new IllegalArgumentException("row " + label + " has no mark");
      }
    }

    /** What became of it: the last mark against the limit. */
    public Judgement judgement() {
      return Measurement.judge(marks.get(marks.size() - 1).at(), Double.NaN, limit);
    }
  }

  /**
   * Something that happened.
   *
   * @param label what, in a word or two; the same word in every row gets the same sign
   * @param at when; NaN when it never came
   */
  public record Mark(String label, double at) {}

  /** Copies the rows. */
  public TimeLine {
    rows = List.copyOf(rows);
  }
}
