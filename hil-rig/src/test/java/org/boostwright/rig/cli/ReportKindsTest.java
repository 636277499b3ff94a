package org.boostwright.rig.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.stream.Stream;
import org.assertj.core.data.Offset;
import org.boostwright.rig.report.Browser;
import org.boostwright.rig.report.DisplayUnits;
import org.boostwright.rig.result.HeatTable;
import org.boostwright.rig.result.Plot;
import org.boostwright.rig.result.Result;
import org.boostwright.rig.result.ResultJson;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
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
      "const c = arguments[0], d = c.getContext('2d').getImageData(0, 0, c.width, c.height).data;"
          + "const n = {};"
          + "for (let i = 0; i < d.length; i += 4) if (d[i + 3] === 255) {"
          + "  const k = d[i] + ',' + d[i + 1] + ',' + d[i + 2]; n[k] = (n[k] || 0) + 1; }"
          + "const want = arguments[1].map(name => {"
          + "  const hex = getComputedStyle(document.documentElement).getPropertyValue(name).trim();"
          + "  return [1, 3, 5].map(i => parseInt(hex.slice(i, i + 2), 16)).join(','); });"
          + "return want.map(k => n[k] || 0);";

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
        List.of("demo"));
  }

  @ParameterizedTest
  @MethodSource("kinds")
  void opensDrawsZoomsAndHoldsTheNumbers(List<String> words) throws Exception {
    Path run = Files.createTempDirectory(folder, "run");
    List<String> line = new ArrayList<>(words);
    line.addAll(List.of("--out", run.toString(), "--quiet"));
    StringWriter err = new StringWriter();
    int exit =
        Boostwright.run(
            new Terminal(
                new PrintWriter(new StringWriter()), new PrintWriter(err), false, false),
            line.toArray(String[]::new));
    assertThat(exit).as(err.toString()).isLessThan(2);
    browser.get(run.resolve(RunFolder.REPORT).toUri().toString());
    Result result = ResultJson.read(run.resolve(RunFolder.RESULT));
    assertThat(result.series()).isNotEmpty();
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
    assertThat(browser.console()).isEmpty();
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
          // Shown with at least three digits.
          assertThat(Double.parseDouble(text))
              .isCloseTo(value, Offset.offset(0.0005 * Math.abs(value) + 1e-9));
        }
      }
    }
  }
}
