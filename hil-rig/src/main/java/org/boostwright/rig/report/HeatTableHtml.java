package org.boostwright.rig.report;

import org.boostwright.rig.result.HeatTable;

/** A table shaded in ten steps of one hue; the number in each cell stays the message. */
final class HeatTableHtml {
  private static final int STEPS = 10;

  private final DisplayUnits units;

  HeatTableHtml(DisplayUnits units) {
    this.units = units;
  }

  void figure(Html html, HeatTable table) {
    double[] range = range(table.values());
    html.raw("<figure class=\"heat-table\"").attribute("id", "table-" + table.id()).raw(">");
    html.element("h3", "", table.title()).raw("\n<div class=\"wide\"><table class=\"heat\">");
    html.raw("<caption>").element("span", "", caption(table)).raw("</caption>");
    html.raw("<thead><tr>");
    html.raw("<td></td>");
    for (double column : table.columns()) {
      html.raw("<th scope=\"col\">").text(units.number(column, table.columnUnit())).raw("</th>");
    }
    html.raw("</tr></thead><tbody>\n");
    for (int r = 0; r < table.rows().length; r++) {
      html.raw("<tr><th scope=\"row\">").text(units.number(table.rows()[r], table.rowUnit()));
      html.raw("</th>");
      for (double value : table.values()[r]) {
        html.element("td", shade(value, range), units.number(value, table.unit()));
      }
      html.raw("</tr>\n");
    }
    html.raw("</tbody></table></div></figure>\n");
  }

  private String caption(HeatTable table) {
    return axis("Values", table.unit())
        + "; rows: "
        + axis(table.rowLabel(), table.rowUnit())
        + "; columns: "
        + axis(table.columnLabel(), table.columnUnit());
  }

  private String axis(String label, String unit) {
    String shown = units.label(unit);
    return shown.isEmpty() ? label : label + " (" + shown + ")";
  }

  private static String shade(double value, double[] range) {
    if (!Double.isFinite(value)) {
      return "empty";
    }
    // Changes up and down are shaded by their size, so that nothing stands out where nothing is.
    boolean signed = range[0] < 0.0;
    double low = signed ? 0.0 : range[0];
    double span = (signed ? Math.max(range[1], -range[0]) : range[1]) - low;
    double size = (signed ? Math.abs(value) : value) - low;
    int step = span > 0.0 ? (int) Math.min(STEPS - 1, STEPS * size / span) : 0;
    return "h" + step;
  }

  /** Lowest and highest of the numbers that are shaded. */
  private static double[] range(double[][] values) {
    double low = Double.POSITIVE_INFINITY;
    double high = Double.NEGATIVE_INFINITY;
    for (double[] row : values) {
      for (double value : row) {
        if (Double.isFinite(value)) {
          low = Math.min(low, value);
          high = Math.max(high, value);
        }
      }
    }
    return new double[] {low, high};
  }
}
