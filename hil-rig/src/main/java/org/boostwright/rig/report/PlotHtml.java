package org.boostwright.rig.report;

import com.fasterxml.jackson.core.JsonFactory;
import com.fasterxml.jackson.core.JsonGenerator;
import java.io.IOException;
import java.io.StringWriter;
import java.io.UncheckedIOException;
import java.math.BigDecimal;
import java.math.MathContext;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.boostwright.rig.result.Plot;
import org.boostwright.rig.result.SafeText;
import org.boostwright.rig.result.Units;

/**
 * The markup around each plot and the data its script draws, one panel for each unit.
 *
 * <p>Lowest, highest and last value of every line also stand in a table, for readers who see no
 * canvas.
 */
final class PlotHtml {
  private static final MathContext SIX_DIGITS = new MathContext(6);
  private static final int COLOURS = 6;
  private static final String[][] TOOLS = {
    {"in", "Closer"},
    {"out", "Wider"},
    {"left", "Left"},
    {"right", "Right"},
    {"all", "All"}
  };

  private final DisplayUnits units;

  PlotHtml(DisplayUnits units) {
    this.units = units;
  }

  /** How the plots are handled, once for all of them. */
  void help(Html html) {
    html.element(
        "p",
        "help",
        "Drag across a plot to look closer, double-click for all of it. Keys on a plot: left"
            + " and right move the reading, + and - zoom, 0 shows all. A name below a plot hides"
            + " its line.");
  }

  /** The figure of one plot. */
  void figure(Html html, Plot plot) {
    Map<String, List<Plot.Line>> panels = panels(plot);
    html.raw("<figure class=\"plot\"").attribute("id", "plot-" + plot.id()).raw(">\n");
    html.element("h3", "", plot.title()).raw("\n<div class=\"panels\" tabindex=\"0\" role=\"img\"");
    html.attribute("aria-label", plot.title() + ": " + spokenSummary(plot)).raw(">\n");
    for (String unit : panels.keySet()) {
      html.raw("<div>").element("p", "panel-unit", units.label(unit));
      html.raw("<div class=\"panel-canvas\"></div></div>\n");
    }
    html.raw("</div>\n");
    html.element("p", "help", plot.xLabel() + ", " + units.label(plot.xUnit()));
    legend(html, panels);
    bands(html, plot);
    html.raw("<div class=\"tools\">");
    for (String[] tool : TOOLS) {
      html.raw("<button type=\"button\"").attribute("data-act", tool[0]).raw(">");
      html.text(tool[1]).raw("</button>");
    }
    html.raw("<span class=\"window\"></span> <span class=\"at\"></span></div>\n");
    numbers(html, plot);
    html.raw("</figure>\n");
  }

  private void legend(Html html, Map<String, List<Plot.Line>> panels) {
    html.raw("<ul class=\"legend\">");
    int p = 0;
    int colour = 0;
    for (Map.Entry<String, List<Plot.Line>> panel : panels.entrySet()) {
      int k = 0;
      for (Plot.Line line : panel.getValue()) {
        html.raw("<li><button type=\"button\" aria-pressed=\"true\"");
        html.attribute("data-panel", Integer.toString(p)).attribute("data-line", "" + k).raw(">");
        html.raw("<span")
            .attribute("class", "swatch " + line.stroke().word() + " k" + colour++ % COLOURS);
        html.raw("></span>").text(line.label() + " ").raw("<output></output> ");
        html.text(units.label(panel.getKey())).raw("</button></li>");
        k++;
      }
      p++;
    }
    html.raw("</ul>\n");
  }

  private static void bands(Html html, Plot plot) {
    Set<String> labels = new LinkedHashSet<>();
    plot.bands().forEach(b -> labels.add(b.label()));
    if (!labels.isEmpty()) {
      html.element("p", "bands", "Strip above the plot: " + String.join(", ", labels));
    }
  }

  private void numbers(Html html, Plot plot) {
    html.raw("<details><summary>Numbers of this plot</summary><div class=\"wide\"><table>");
    html.raw("<thead><tr><th scope=\"col\">Line</th><th scope=\"col\" class=\"n\">Lowest</th>");
    html.raw("<th scope=\"col\" class=\"n\">Highest</th><th scope=\"col\" class=\"n\">Last</th>");
    html.raw("<th scope=\"col\">Unit</th></tr></thead><tbody>\n");
    for (Plot.Line line : plot.lines()) {
      double[] range = range(line.y());
      html.raw("<tr>").raw("<th scope=\"row\">").text(line.label()).raw("</th>");
      for (double value : range) {
        html.element("td", "n", units.number(value, line.unit()));
      }
      html.element("td", "", units.label(line.unit())).raw("</tr>\n");
    }
    for (Plot.Limit limit : plot.limits()) {
      String value = units.number(limit.value(), limit.unit());
      html.raw("<tr><th scope=\"row\">").text("limit: " + limit.label()).raw("</th>");
      html.element("td", "n", value).element("td", "n", value).element("td", "n", value);
      html.element("td", "", units.label(limit.unit())).raw("</tr>\n");
    }
    html.raw("</tbody></table></div></details>\n");
  }

  private String spokenSummary(Plot plot) {
    List<String> parts = new ArrayList<>();
    for (Plot.Line line : plot.lines()) {
      double[] range = range(line.y());
      parts.add(
          line.label()
              + " from "
              + units.number(range[0], line.unit())
              + " to "
              + units.text(range[1], line.unit()));
    }
    return String.join("; ", parts);
  }

  /** Lowest, highest and last finite value; NaN where there is none. */
  private static double[] range(double[] values) {
    double low = Double.NaN;
    double high = Double.NaN;
    double last = Double.NaN;
    for (double value : values) {
      if (Double.isFinite(value)) {
        low = value < low || Double.isNaN(low) ? value : low;
        high = value > high || Double.isNaN(high) ? value : high;
        last = value;
      }
    }
    return new double[] {low, high, last};
  }

  /** Lines by unit, in the order in which the units first come up. */
  private static Map<String, List<Plot.Line>> panels(Plot plot) {
    Map<String, List<Plot.Line>> panels = new LinkedHashMap<>();
    for (Plot.Line line : plot.lines()) {
      panels.computeIfAbsent(line.unit(), u -> new ArrayList<>()).add(line);
    }
    return panels;
  }

  /** The data of all plots, safe inside a script element. */
  String data(List<Plot> plots) {
    StringWriter text = new StringWriter();
    try (JsonGenerator out = new JsonFactory().createGenerator(text)) {
      out.writeStartArray();
      for (Plot plot : plots) {
        plot(out, plot);
      }
      out.writeEndArray();
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
    return text.toString().replace("<", "\\u003c").replace("\u2028", "\\u2028");
  }

  private void plot(JsonGenerator out, Plot plot) throws IOException {
    out.writeStartObject();
    out.writeStringField("id", SafeText.visible(plot.id()));
    out.writeStringField("xLabel", SafeText.visible(plot.xLabel()));
    out.writeStringField("xUnit", SafeText.visible(units.label(plot.xUnit())));
    numbers(out, "x", plot.x(), plot.xUnit());
    out.writeArrayFieldStart("bands");
    for (Plot.Band band : plot.bands()) {
      out.writeStartObject();
      out.writeStringField("label", SafeText.visible(band.label()));
      number(out, "from", units.value(band.from(), plot.xUnit()));
      number(out, "to", units.value(band.to(), plot.xUnit()));
      out.writeEndObject();
    }
    out.writeEndArray();
    out.writeArrayFieldStart("panels");
    int colour = 0;
    for (Map.Entry<String, List<Plot.Line>> panel : panels(plot).entrySet()) {
      panel(out, panel.getKey(), panel.getValue(), plot.limits(), colour);
      colour += panel.getValue().size();
    }
    out.writeEndArray();
    out.writeEndObject();
  }

  private void panel(
      JsonGenerator out,
      String unit,
      List<Plot.Line> lines,
      List<Plot.Limit> limits,
      int firstColour)
      throws IOException {
    int colour = firstColour;
    out.writeStartObject();
    out.writeBooleanField("percent", units.label(unit).equals(Units.PERCENT));
    out.writeArrayFieldStart("limits");
    for (Plot.Limit limit : limits) {
      if (limit.unit().equals(unit)) {
        out.writeStartObject();
        out.writeStringField("label", SafeText.visible(limit.label()));
        number(out, "value", units.value(limit.value(), unit));
        out.writeEndObject();
      }
    }
    out.writeEndArray();
    out.writeArrayFieldStart("lines");
    for (Plot.Line line : lines) {
      out.writeStartObject();
      out.writeStringField("label", SafeText.visible(line.label()));
      out.writeStringField("stroke", line.stroke().word());
      out.writeNumberField("colour", colour++ % COLOURS);
      numbers(out, "y", line.y(), unit);
      out.writeEndObject();
    }
    out.writeEndArray();
    out.writeEndObject();
  }

  private void numbers(JsonGenerator out, String name, double[] values, String unit)
      throws IOException {
    out.writeArrayFieldStart(name);
    for (double value : values) {
      number(out, units.value(value, unit));
    }
    out.writeEndArray();
  }

  private static void number(JsonGenerator out, String name, double value) throws IOException {
    out.writeFieldName(name);
    number(out, value);
  }

  private static void number(JsonGenerator out, double value) throws IOException {
    if (Double.isFinite(value)) {
      out.writeNumber(new BigDecimal(value).round(SIX_DIGITS).doubleValue());
    } else {
      out.writeNull();
    }
  }
}
