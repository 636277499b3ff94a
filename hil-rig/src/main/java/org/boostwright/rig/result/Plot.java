package org.boostwright.rig.result;

import java.util.List;

/**
 * Lines over one common x axis. A report draws the lines of each unit in a panel of their own, one
 * below the other, all with the same x.
 *
 * @param id snake_case name, unique within a result
 * @param title what is seen, in words
 * @param xLabel meaning of x
 * @param xUnit unit of x
 * @param x rising x values
 * @param lines the lines
 * @param limits horizontal limit lines
 * @param bands stretches of x that belong together, such as the safety states
 */
public record Plot(
    String id,
    String title,
    String xLabel,
    String xUnit,
    double[] x,
    List<Line> lines,
    List<Limit> limits,
    List<Band> bands) {

  /**
   * One line.
   *
   * @param id snake_case name, unique within the plot
   * @param label name in the legend
   * @param unit see {@link Units}
   * @param stroke how it is drawn
   * @param y one value for each x; NaN leaves a gap
   */
  public record Line(String id, String label, String unit, Stroke stroke, double[] y) {}

  /** A horizontal limit in the panel of its unit. */
  public record Limit(String label, String unit, double value) {}

  /** A named stretch of x, from inclusive to exclusive. */
  public record Band(String label, double from, double to) {}

  /** How a line is drawn, so that it can be told apart without colour. */
  public enum Stroke {
    SOLID("solid"),
    DASHED("dashed"),
    DOTTED("dotted"),
    /** Points only, not joined. */
    POINTS("points");

    private final String word;

    Stroke(String word) {
      this.word = word;
    }

    /** As written in JSON. */
    public String word() {
      return word;
    }
  }

  /** Checks that every line has one value for each x. */
  public Plot {
    lines = List.copyOf(lines);
    limits = List.copyOf(limits);
    bands = List.copyOf(bands);
    for (Line line : lines) {
      if (line.y().length != x.length) {
        throw new IllegalArgumentException(
            "line "
                + line.id()
                + " of plot "
                + id
                + " has "
                + line.y().length
                + " values for "
                + x.length
                + " places on the x axis");
      }
    }
  }
}
