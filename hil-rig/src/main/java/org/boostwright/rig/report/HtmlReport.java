package org.boostwright.rig.report;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import org.boostwright.core.settings.file.AtomicFile;
import org.boostwright.rig.result.Finding;
import org.boostwright.rig.result.HeatTable;
import org.boostwright.rig.result.Judgement;
import org.boostwright.rig.result.Measurement;
import org.boostwright.rig.result.Plot;
import org.boostwright.rig.result.Result;
import org.boostwright.rig.result.Severity;
import org.boostwright.rig.result.TimeLine;

/**
 * Renders a {@link Result} as one HTML page: verdict first, then what to do, then what was
 * measured.
 *
 * <p>The page needs no network and no server. Numbers are shown in the units the result asks for.
 */
public final class HtmlReport {
  private final Result result;
  private final DisplayUnits units;
  private final Html html = new Html();

  private HtmlReport(Result result) {
    this.result = result;
    this.units = new DisplayUnits(result.units());
  }

  /** The page as text. */
  public static String render(Result result) {
    return new HtmlReport(result).page();
  }

  /** Writes the page; a reader sees the old one or the new one, never half of either. */
  public static void write(Path file, Result result) throws IOException {
    AtomicFile.write(file, render(result).getBytes(StandardCharsets.UTF_8));
  }

  private String page() {
    String style = PageAssets.style();
    String library = PageAssets.library();
    String script = PageAssets.script();
    html.raw("<!DOCTYPE html>\n<html lang=\"en\">\n<head>\n<meta charset=\"utf-8\">\n<meta");
    html.attribute("http-equiv", "Content-Security-Policy");
    html.attribute("content", PageAssets.policy(style, library, script));
    html.raw(">\n<meta name=\"viewport\" content=\"width=device-width, initial-scale=1\">\n");
    html.element("title", "", "Boostwright " + result.command() + ": " + result.verdict().word());
    html.raw("\n<style>").raw(style).raw("</style>\n</head>\n<body>\n");
    html.raw("<a class=\"skip\" href=\"#next\">Skip to what to do next</a>\n<main>\n");
    top();
    next();
    cautions();
    plots();
    timeLines();
    measured();
    tables();
    findings();
    provenance();
    html.raw("</main>\n");
    if (!result.series().isEmpty()) {
      // The licence goes with the library; a comment may not hold two hyphens in a row.
      html.raw("<!-- uPlot\n").text(PageAssets.libraryLicence().replace("--", "- -")).raw("-->\n");
      html.raw("<script type=\"application/json\" id=\"plot-data\">");
      html.raw(new PlotHtml(units).data(result.series())).raw("</script>\n");
      html.raw("<script>").raw(library).raw("</script>\n");
      html.raw("<script>").raw(script).raw("</script>\n");
    }
    return html.raw("</body>\n</html>\n").toString();
  }

  private void top() {
    html.raw("<header").attribute("class", "top " + result.verdict().word()).raw(">");
    html.element("p", "what", "Boostwright " + result.version() + " · " + result.command());
    html.element("h1", "", sentence(result.headline()));
    html.element("p", "word", Words.of(result.verdict()));
    html.raw("</header>\n");
  }

  private void next() {
    html.raw("<section><h2 id=\"next\">What to do next</h2>\n");
    List<Finding> steps = bySeverity().stream().filter(f -> !f.next().isBlank()).toList();
    if (steps.isEmpty()) {
      html.element("p", "", "Nothing in this run asks for action.");
    } else {
      html.raw("<ol class=\"next\">\n");
      for (Finding step : steps) {
        html.raw("<li>")
            .text(sentence(step.next()))
            .element("span", "why", step.text())
            .raw("</li>\n");
      }
      html.raw("</ol>");
    }
    html.raw("</section>\n");
  }

  private void cautions() {
    if (result.cautions().isEmpty()) {
      return;
    }
    html.raw("<section class=\"caution\"><h3>Caution</h3><ul>\n");
    for (String caution : result.cautions()) {
      html.element("li", "", caution).raw("\n");
    }
    html.raw("</ul></section>\n");
  }

  private void plots() {
    if (result.series().isEmpty()) {
      return;
    }
    html.raw("<section><h2>Plots</h2>\n<noscript><p>The curves need JavaScript; the numbers do ");
    html.raw("not.</p></noscript>\n");
    PlotHtml plots = new PlotHtml(units);
    plots.help(html);
    for (Plot plot : result.series()) {
      plots.figure(html, plot);
    }
    html.raw("</section>\n");
  }

  private void timeLines() {
    if (result.timeLines().isEmpty()) {
      return;
    }
    html.raw("<section><h2>Time-lines</h2>\n");
    TimeLineHtml lines = new TimeLineHtml(units);
    for (TimeLine line : result.timeLines()) {
      lines.figure(html, line);
    }
    html.raw("</section>\n");
  }

  private void measured() {
    if (result.measurements().isEmpty()) {
      return;
    }
    html.raw("<section><h2>Measured</h2><table class=\"measured\"><thead><tr>");
    html.raw("<th scope=\"col\">What</th><th scope=\"col\" class=\"n\">Value</th>");
    html.raw("<th scope=\"col\" class=\"n\">Allowed</th><th scope=\"col\">Verdict</th>");
    html.raw("</tr></thead><tbody>\n");
    for (Measurement m : result.measurements()) {
      html.raw("<tr><td>").text(m.text()).raw("<code class=\"id\">").text(m.id());
      html.raw("</code></td><td class=\"n\" data-head=\"Value\">").text(value(m));
      boolean judged = m.judgement() != Judgement.NOT_JUDGED;
      html.raw("</td><td data-head=\"Allowed\"").attribute("class", judged ? "n" : "n none");
      html.raw(">").text(units.allowed(m)).raw("</td><td");
      html.raw(judged ? ">" : " class=\"none\">");
      Words.judgement(html, m.judgement());
      html.raw("</td></tr>\n");
    }
    html.raw("</tbody></table></section>\n");
  }

  private void tables() {
    if (result.tables().isEmpty()) {
      return;
    }
    html.raw("<section><h2>Tables</h2>\n");
    HeatTableHtml heat = new HeatTableHtml(units);
    for (HeatTable table : result.tables()) {
      heat.figure(html, table);
    }
    html.raw("</section>\n");
  }

  private void findings() {
    if (result.findings().isEmpty()) {
      return;
    }
    html.raw("<section><h2>Found</h2>\n");
    for (Finding f : bySeverity()) {
      String level = f.severity() == Severity.CAUTION ? "caution-level" : f.severity().word();
      html.raw("<div").attribute("class", "finding " + level).raw("><span class=\"sev\">");
      html.text(f.severity().word()).raw("</span> ").element("code", "", f.code());
      html.element("p", "", f.text());
      if (!f.next().isBlank()) {
        html.element("p", "", "Next: " + f.next());
      }
      html.raw("</div>\n");
    }
    html.raw("</section>\n");
  }

  private void provenance() {
    html.raw("<section><h2>Where this comes from</h2><dl>\n");
    result.settingsDigest().ifPresent(digest -> pair("fingerprint of the settings", digest));
    result.seed().ifPresent(seed -> pair("seed", Long.toString(seed)));
    for (Map.Entry<String, String> entry : result.provenance().entrySet()) {
      pair(entry.getKey(), entry.getValue());
    }
    for (Map.Entry<String, String> entry : result.files().entrySet()) {
      pair("file: " + entry.getKey(), entry.getValue());
    }
    html.raw("</dl></section>\n<footer>");
    html.text("Pressures are shown in " + result.units().label() + " unless a number says ");
    html.text("otherwise. The result file holds them in kPa.").raw("</footer>\n");
  }

  /** As it stands alone on the page: with a capital. */
  private static String sentence(String text) {
    return text.isEmpty()
        ? text
        : text.substring(0, 1).toUpperCase(Locale.ROOT) + text.substring(1);
  }

  private void pair(String name, String text) {
    html.element("dt", "", name).element("dd", "", text).raw("\n");
  }

  private List<Finding> bySeverity() {
    return result.findings().stream()
        .sorted(Comparator.comparing(Finding::severity).reversed())
        .toList();
  }

  private String value(Measurement m) {
    return units.text(m.value(), m.unit());
  }
}
