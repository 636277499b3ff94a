package org.boostwright.rig.report;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.boostwright.rig.result.TimeLine;

/**
 * A time-line as a table: a drawn track for the eye, the same times in words beside it. All rows
 * share one scale; every kind of mark has its own shape besides its own colour.
 */
final class TimeLineHtml {
  /** Shapes around the origin, in the order in which kinds of marks first come up. */
  private static final List<String> SHAPES =
      List.of(
          "<circle r=\"5\"/>",
          "<rect x=\"-5\" y=\"-5\" width=\"10\" height=\"10\"/>",
          "<path d=\"M0-7 7 0 0 7-7 0Z\"/>",
          "<path d=\"M0-6 6 5H-6Z\"/>",
          "<path d=\"M-6-5H6L0 6Z\"/>",
          "<path d=\"M-5-5 5 5M5-5-5 5\"/>");

  private static final double ROOM = 1.06;

  private final DisplayUnits units;

  TimeLineHtml(DisplayUnits units) {
    this.units = units;
  }

  void figure(Html html, TimeLine line) {
    List<String> kinds = kinds(line);
    boolean limited = line.rows().stream().anyMatch(row -> !Double.isNaN(row.limit()));
    double longest = longest(line) * ROOM;
    html.raw("<figure class=\"time-line\"").attribute("id", "time-line-" + line.id()).raw(">");
    html.element("h3", "", line.title()).raw("\n<p class=\"help\">");
    for (int k = 0; k < kinds.size(); k++) {
      html.raw("<span class=\"kind\"><svg width=\"18\" height=\"18\" aria-hidden=\"true\">");
      mark(html, k, "50%", "50%");
      html.raw("</svg> ").text(kinds.get(k)).raw("</span> ");
    }
    if (limited) {
      html.raw("<span class=\"kind\"><svg width=\"18\" height=\"18\" aria-hidden=\"true\">");
      limit(html, "50%");
      html.raw("</svg> limit</span> ");
    }
    html.text("The track is " + units.text(longest, line.unit()) + " long.").raw("</p>\n");
    html.raw("<table class=\"measured\"><thead><tr><th scope=\"col\">Case</th>");
    html.raw("<th scope=\"col\" class=\"track\">Course</th><th scope=\"col\">Times</th>");
    if (limited) {
      html.raw("<th scope=\"col\" class=\"n\">Allowed</th><th scope=\"col\">Verdict</th>");
    }
    html.raw("</tr></thead><tbody>\n");
    for (TimeLine.Row row : line.rows()) {
      row(html, line, row, kinds, longest);
      if (limited) {
        String none = Double.isNaN(row.limit()) ? " none" : "";
        html.raw("<td data-head=\"Allowed\"").attribute("class", "n" + none).raw(">");
        html.text(units.text(row.limit(), line.unit())).raw("</td><td");
        html.attribute("class", none.strip()).raw(">");
        Words.judgement(html, row.judgement());
        html.raw("</td>");
      }
      html.raw("</tr>\n");
    }
    html.raw("</tbody></table></figure>\n");
  }

  private void row(Html html, TimeLine line, TimeLine.Row row, List<String> kinds, double longest) {
    html.raw("<tr><th scope=\"row\">").text(row.label()).raw("</th><td class=\"track\">");
    html.raw("<svg width=\"100%\" height=\"22\" aria-hidden=\"true\">");
    html.raw("<line class=\"rail\" x1=\"0\" x2=\"100%\" y1=\"50%\" y2=\"50%\"/>");
    if (row.limit() >= 0.0) {
      limit(html, percent(row.limit() / longest));
    }
    List<String> times = new ArrayList<>();
    boolean several = row.marks().size() > 1;
    for (TimeLine.Mark m : row.marks()) {
      if (Double.isFinite(m.at())) {
        int kind = kinds.indexOf(m.label());
        // Above and below the rail, so that two at the same time are both seen.
        String y = !several ? "50%" : kind % 2 == 0 ? "27%" : "73%";
        mark(html, kind, percent(m.at() / longest), y);
      }
      String at = Double.isFinite(m.at()) ? units.text(m.at(), line.unit()) : "never";
      times.add(m.label() + " " + at);
    }
    html.raw("</svg></td><td class=\"times\">").text(String.join(", ", times)).raw("</td>");
  }

  private static void mark(Html html, int kind, String x, String y) {
    int shape = Math.min(kind, SHAPES.size() - 1);
    html.raw("<svg overflow=\"visible\"").attribute("x", x).attribute("y", y);
    html.attribute("class", "mark m" + shape).raw(">").raw(SHAPES.get(shape)).raw("</svg>");
  }

  private static void limit(Html html, String x) {
    html.raw("<line class=\"limit\" y1=\"0\" y2=\"100%\"");
    html.attribute("x1", x).attribute("x2", x).raw("/>");
  }

  private static String percent(double fraction) {
    return String.format(Locale.ROOT, "%.2f%%", 100.0 * Math.max(0.0, fraction));
  }

  private static List<String> kinds(TimeLine line) {
    List<String> kinds = new ArrayList<>();
    for (TimeLine.Row row : line.rows()) {
      for (TimeLine.Mark mark : row.marks()) {
        if (!kinds.contains(mark.label())) {
          kinds.add(mark.label());
        }
      }
    }
    return kinds;
  }

  /** Longest time or limit of all rows; 1 where there is none. */
  private static double longest(TimeLine line) {
    double longest = 0.0;
    for (TimeLine.Row row : line.rows()) {
      longest = row.limit() > longest ? row.limit() : longest;
      for (TimeLine.Mark mark : row.marks()) {
        longest = mark.at() > longest && Double.isFinite(mark.at()) ? mark.at() : longest;
      }
    }
    return longest > 0.0 ? longest : 1.0;
  }
}
