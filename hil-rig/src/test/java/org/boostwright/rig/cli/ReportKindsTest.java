package org.boostwright.rig.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.assertj.core.data.Offset;
import org.boostwright.core.link.Line;
import org.boostwright.core.settings.Settings;
import org.boostwright.core.settings.file.SettingsDigest;
import org.boostwright.rig.link.CaseOutcome;
import org.boostwright.rig.link.RigPlan;
import org.boostwright.rig.link.RigReport;
import org.boostwright.rig.link.SteppedReport;
import org.boostwright.rig.report.Browser;
import org.boostwright.rig.report.DisplayUnits;
import org.boostwright.rig.report.HtmlReport;
import org.boostwright.rig.result.HeatTable;
import org.boostwright.rig.result.Plot;
import org.boostwright.rig.result.Result;
import org.boostwright.rig.result.ResultBuilder;
import org.boostwright.rig.result.ResultJson;
import org.boostwright.rig.result.TimeLine;
import org.boostwright.rig.scenario.ProjectCarSettings;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.openqa.selenium.By;
import org.openqa.selenium.Keys;
import org.openqa.selenium.WebElement;
import org.openqa.selenium.interactions.Actions;

/**
 * The report of every kind of run, made by the real command, in a real browser: opens from disk
 * with a silent console, every plot is drawn and can be zoomed by mouse and by keys, every table
 * holds the numbers of the result.
 */
class ReportKindsTest {
  /** Dots of one line on a canvas, at least: a flat line over a fifth of a phone's width. */
  private static final long DOTS = 100;

  private static final String COLOURED =
      "const c = arguments[0], d = c.getContext('2d').getImageData(0, 0, c.width,"
          + " c.height).data;const n = {};for (let i = 0; i < d.length; i += 4) if (d[i + 3] ==="
          + " 255) {  const k = d[i] + ',' + d[i + 1] + ',' + d[i + 2]; n[k] = (n[k] || 0) + 1;"
          + " }const want = arguments[1].map(name => {  const hex ="
          + " getComputedStyle(document.documentElement).getPropertyValue(name).trim();  return [1,"
          + " 3, 5].map(i => parseInt(hex.slice(i, i + 2), 16)).join(','); });return want.map(k =>"
          + " n[k] || 0);";

  /** Share of the track at which the middle of each mark stands. */
  private static final String PLACES =
      "const track = arguments[0].querySelector('svg').getBoundingClientRect();"
          + "return [...arguments[0].querySelectorAll('.mark > *')].map(m => {"
          + " const r = m.getBoundingClientRect();"
          + " return ((r.left + r.right) / 2 - track.left) / track.width; });";

  private static final Path SCENARIO =
      Path.of(
          System.getProperty("boostwright.root", "."), "hil-rig", "scenarios", "s1_map_open.toml");

  @TempDir static Path folder;
  private static Browser browser;

  @BeforeAll
  static void openBrowser() {
    browser = Browser.open(folder);
  }

  @AfterAll
  static void closeBrowser() {
    if (browser != null) {
      browser.close();
    }
  }

  /** One command line for each kind of report. */
  static Stream<List<String>> kinds() throws Exception {
    return Stream.of(
        List.of("pull", "--to-rpm", "3600"),
        List.of("bench", "--steps", "ambient,click,rest,polarity,edges,sweep"),
        List.of("replay", HostileLogs.sound(folder.resolve("drive.csv")).toString()),
        List.of("replay", HostileLogs.write(folder.resolve("hostile.csv")).toString()),
        correct(),
        List.of("gains", "--cars", "20", pull(1), pull(2)),
        List.of("faults", "--runs", "40"),
        List.of("faults", "--scenario", SCENARIO.toString()),
        List.of("demo"));
  }

  private static List<String> correct() {
    return List.of("correct", pull(1), pull(2), pull(3));
  }

  /** The log of a virtual pull, driven once. */
  private static String pull(int seed) {
    Path to = folder.resolve("pull-" + seed);
    if (!Files.exists(to)) {
      run(to, List.of("pull", "--seed", Integer.toString(seed)));
    }
    return to.resolve("log.csv").toString();
  }

  @ParameterizedTest
  @MethodSource("kinds")
  void opensDrawsZoomsAndHoldsTheNumbers(List<String> words) throws Exception {
    Path run = Files.createTempDirectory(folder, "run");
    run(run, words);
    look(run.resolve(RunFolder.REPORT), ResultJson.read(run.resolve(RunFolder.RESULT)));
  }

  /** The rig's own command needs two programs and real time; its report does not. */
  @Test
  void rigReportOpensAndShowsEveryReactionAgainstItsLimit() throws Exception {
    Settings settings = ProjectCarSettings.load();
    RigReport report = SteppedReport.run(settings);
    RigPlan plan =
        new RigPlan(
            Optional.empty(),
            Line.DEFAULT_BAUD,
            List.of(),
            folder,
            settings,
            SettingsDigest.of(settings),
            0.0,
            report.outcomes().stream().map(CaseOutcome::id).toList(),
            List.of(),
            1L,
            folder);
    ResultBuilder builder = new ResultBuilder("rig").settingsDigest(plan.settingsDigest()).seed(1L);
    RigResult.add(builder, plan, report);
    Result result = builder.build();
    assertThat(result.timeLines()).hasSize(1);
    assertThat(result.timeLines().get(0).rows()).isNotEmpty();
    HtmlReport.write(folder.resolve("rig.html"), result);
    look(folder.resolve("rig.html"), result);
  }

  private static void run(Path to, List<String> words) {
    List<String> line = new ArrayList<>(words);
    line.addAll(List.of("--out", to.toString(), "--quiet"));
    StringWriter err = new StringWriter();
    int exit =
        Boostwright.run(
            new Terminal(new PrintWriter(new StringWriter()), new PrintWriter(err), false, false),
            line.toArray(String[]::new));
    assertThat(exit).as(err.toString()).isLessThan(2);
  }

  private static void look(Path page, Result result) {
    browser.get(page.toUri().toString());
    assertThat(browser.find("h1").getText()).isNotBlank();
    assertThat(browser.find("#next").getText()).isEqualTo("What to do next");
    assertThat(result.series().size() + result.tables().size() + result.timeLines().size())
        .isPositive();
    List<WebElement> figures = browser.all("figure.plot");
    assertThat(figures).hasSameSizeAs(result.series());
    for (int i = 0; i < figures.size(); i++) {
      everyLineIsDrawn(figures.get(i), result.series().get(i));
    }
    for (int i = 0; i < figures.size(); i++) {
      zooms(figures.get(i), result.series().get(i));
    }
    for (HeatTable table : result.tables()) {
      holdsTheNumbers(table, new DisplayUnits(result.units()));
    }
    for (TimeLine line : result.timeLines()) {
      marksEveryTime(line);
    }
    assertThat(browser.console()).isEmpty();
  }

  private static void marksEveryTime(TimeLine line) {
    List<WebElement> rows = browser.all("#time-line-" + line.id() + " tbody tr");
    assertThat(rows).hasSameSizeAs(line.rows());
    for (int r = 0; r < rows.size(); r++) {
      TimeLine.Row row = line.rows().get(r);
      WebElement track = rows.get(r).findElement(By.cssSelector(".track"));
      long finite = row.marks().stream().filter(m -> Double.isFinite(m.at())).count();
      assertThat(track.findElements(By.cssSelector(".mark"))).hasSize((int) finite);
      assertThat(track.findElements(By.cssSelector(".limit")))
          .hasSize(Double.isNaN(row.limit()) ? 0 : 1);
      // The marks stand in the order of their times, on the track.
      List<?> places = (List<?>) browser.script(PLACES, track);
      double[] at = row.marks().stream().mapToDouble(TimeLine.Mark::at).toArray();
      double[] seen = places.stream().mapToDouble(x -> ((Number) x).doubleValue()).toArray();
      for (int m = 0; m < seen.length && finite == at.length; m++) {
        assertThat(seen[m]).isBetween(-1e-6, 1.0);
        assertThat(seen[m] / seen[0]).isCloseTo(at[m] / at[0], Offset.offset(0.05 * at[m] / at[0]));
      }
    }
  }

  private static void everyLineIsDrawn(WebElement figure, Plot plot) {
    List<WebElement> canvases = figure.findElements(By.tagName("canvas"));
    List<String> units = plot.lines().stream().map(Plot.Line::unit).distinct().toList();
    assertThat(canvases).as(plot.id()).hasSameSizeAs(units);
    int colour = 0;
    for (int p = 0; p < units.size(); p++) {
      String unit = units.get(p);
      List<Plot.Line> lines = plot.lines().stream().filter(l -> l.unit().equals(unit)).toList();
      List<String> names = new ArrayList<>();
      for (int k = 0; k < lines.size(); k++) {
        names.add("--c" + colour++ % 6);
      }
      List<?> dots = (List<?>) browser.script(COLOURED, canvases.get(p), names);
      for (int k = 0; k < lines.size(); k++) {
        boolean anything = Arrays.stream(lines.get(k).y()).filter(Double::isFinite).count() > 1;
        // Later lines may cover earlier ones that run in the same place.
        if (anything && k == lines.size() - 1) {
          assertThat((Long) dots.get(k)).as("%s: %s", plot.id(), lines.get(k)).isGreaterThan(DOTS);
        }
      }
      assertThat(dots.stream().mapToLong(n -> (Long) n).sum()).as(plot.id()).isGreaterThan(DOTS);
    }
  }

  private static void zooms(WebElement figure, Plot plot) {
    WebElement host = figure.findElement(By.className("panels"));
    WebElement over = figure.findElement(By.cssSelector(".u-over"));
    WebElement window = figure.findElement(By.className("window"));
    String whole = window.getText();
    browser.script("arguments[0].scrollIntoView({block: 'center'});", over);
    int wide = over.getSize().getWidth();
    new Actions(browser.driver())
        .moveToElement(over, -wide / 4, 0)
        .clickAndHold()
        .moveToElement(over, wide / 4, 0)
        .release()
        .perform();
    double full = plot.x()[plot.x().length - 1] - plot.x()[0];
    double[] shown = shown(window.getText());
    assertThat(shown[1] - shown[0])
        .as("%s dragged: %s", plot.id(), window.getText())
        .isBetween(0.45 * full, 0.55 * full);
    host.sendKeys("0");
    assertThat(window.getText()).isEqualTo(whole);
    host.sendKeys("+");
    shown = shown(window.getText());
    assertThat(shown[1] - shown[0]).as(plot.id()).isBetween(0.45 * full, 0.55 * full);
    host.sendKeys("0", Keys.ARROW_RIGHT);
    assertThat(figure.findElement(By.className("at")).getText()).isNotBlank();
  }

  private static double[] shown(String text) {
    String[] words = text.split(" ");
    return new double[] {Double.parseDouble(words[1]), Double.parseDouble(words[3])};
  }

  private static void holdsTheNumbers(HeatTable table, DisplayUnits units) {
    List<WebElement> rows = browser.all("#table-" + table.id() + " tbody tr");
    assertThat(rows).hasSize(table.rows().length);
    for (int r = 0; r < rows.size(); r++) {
      List<WebElement> cells = rows.get(r).findElements(By.tagName("td"));
      assertThat(cells).hasSize(table.columns().length);
      for (int c = 0; c < cells.size(); c++) {
        double value = units.value(table.values()[r][c], table.unit());
        String text = cells.get(c).getText();
        if (Double.isNaN(value)) {
          assertThat(text).isEqualTo("–");
        } else {
          // Three digits, or a tenth of the unit.
          assertThat(Double.parseDouble(text))
              .isCloseTo(value, Offset.offset(Math.max(0.0501, 0.0005 * Math.abs(value))));
        }
      }
    }
  }
}
