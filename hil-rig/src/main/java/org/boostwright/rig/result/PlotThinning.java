package org.boostwright.rig.result;

import java.util.ArrayList;
import java.util.BitSet;
import java.util.List;

/**
 * Leaves out places of a long plot so that every line keeps its shape: the x axis is cut into
 * stretches of equally many places, and of each stretch stay the first place and, for every line,
 * its lowest and its highest value and both ends of every gap.
 *
 * <p>Values and times are never changed or averaged; a spike of one sample stays where it was. The
 * idea of keeping the extremes of each stretch is old practice of plotting (for example U. Jugel et
 * al., <i>M4: A Visualization-Oriented Time Series Data Aggregation</i>, PVLDB 7(10), 2014).
 */
public final class PlotThinning {
  /** A plot with no more places than this is left as it is: five minutes at 200 Hz. */
  public static final int WHOLE_UP_TO = 60_000;

  private static final int STRETCHES = 8_000;

  private PlotThinning() {}

  /** The plot itself, or one with fewer places. */
  public static Plot thin(Plot plot) {
    return plot.x().length <= WHOLE_UP_TO ? plot : thin(plot, STRETCHES);
  }

  /** The plot with the extremes of that many stretches. */
  static Plot thin(Plot plot, int stretches) {
    int places = plot.x().length;
    BitSet kept = new BitSet(places);
    for (int s = 0; s < stretches; s++) {
      int from = (int) ((long) places * s / stretches);
      int to = (int) ((long) places * (s + 1) / stretches);
      if (from < to) {
        kept.set(from);
        for (Plot.Line line : plot.lines()) {
          keepExtremes(line.y(), from, to, kept);
        }
      }
    }
    kept.set(places - 1);
    int[] index = kept.stream().toArray();
    List<Plot.Line> lines = new ArrayList<>();
    for (Plot.Line line : plot.lines()) {
      lines.add(
          new Plot.Line(
              line.id(), line.label(), line.unit(), line.stroke(), pick(line.y(), index)));
    }
    return new Plot(
        plot.id(),
        plot.title(),
        plot.xLabel(),
        plot.xUnit(),
        pick(plot.x(), index),
        lines,
        plot.limits(),
        plot.bands());
  }

  private static void keepExtremes(double[] y, int from, int to, BitSet kept) {
    int low = -1;
    int high = -1;
    for (int i = from; i < to; i++) {
      boolean gap = Double.isNaN(y[i]);
      if (i > 0 && gap != Double.isNaN(y[i - 1])) {
        kept.set(i - 1);
        kept.set(i);
      }
      if (gap) {
        continue;
      }
      low = low < 0 || y[i] < y[low] ? i : low;
      high = high < 0 || y[i] > y[high] ? i : high;
    }
    if (low >= 0) {
      kept.set(low);
      kept.set(high);
    }
  }

  private static double[] pick(double[] values, int[] index) {
    double[] picked = new double[index.length];
    for (int i = 0; i < index.length; i++) {
      picked[i] = values[index[i]];
    }
    return picked;
  }
}
