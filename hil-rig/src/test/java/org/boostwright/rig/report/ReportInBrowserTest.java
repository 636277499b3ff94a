package org.boostwright.rig.report;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.util.List;
import org.boostwright.core.settings.UnitSettings;
import org.boostwright.rig.result.HeatTable;
import org.boostwright.rig.result.Result;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.openqa.selenium.By;
import org.openqa.selenium.Keys;
import org.openqa.selenium.WebElement;

/** Opens the page from disk in a real browser; skipped where none is installed. */
class ReportInBrowserTest {
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

  private static void open(Result result) throws Exception {
    Path page = folder.resolve("report.html");
    HtmlReport.write(page, result);
    browser.get(page.toUri().toString());
  }

  private static void assertConsoleIsSilent() {
    assertThat(browser.console()).isEmpty();
  }

  @Test
  void plotsAreDrawnAndTheConsoleStaysSilent() throws Exception {
    open(SampleResults.pull(UnitSettings.KPA_ABSOLUTE));
    assertThat(browser.find("#plot-pull").getDomAttribute("data-drawn"))
        .isEqualTo("2");
    Object blueDots =
        browser.script(
            "const c = document.querySelector('#plot-pull canvas');"
                + "const d = c.getContext('2d').getImageData(0, 0, c.width, c.height).data;"
                + "let n = 0;"
                + "for (let i = 0; i < d.length; i += 4)"
                + "  if (d[i] === 0 && d[i + 1] === 114 && d[i + 2] === 178 && d[i + 3] === 255) n++;"
                + "return n;");
    // The pressure line alone is some 900 dots wide at two dots of thickness.
    assertThat((Long) blueDots).isGreaterThan(500L);
    assertConsoleIsSilent();
  }

  @Test
  void keysMoveTheReadingAndZoom() throws Exception {
    open(SampleResults.pull(UnitSettings.KPA_ABSOLUTE));
    WebElement plot = browser.find("#plot-pull .panels");
    plot.sendKeys(Keys.ARROW_RIGHT);
    // Index 1200 of the sample: 6.0 s, where the duty is 41 + 4 sin(6) = 39.88.
    assertThat(browser.find("#plot-pull .at").getText())
        .isEqualTo("time 6.00 s, controlling");
    assertThat(
            browser.find("#plot-pull button[data-panel='1'] output")
                .getText())
        .isEqualTo("39.9");
    plot.sendKeys("+");
    assertThat(browser.find("#plot-pull .window").getText())
        .isEqualTo("Shown: 3.00 to 9.00 s");
    plot.sendKeys("0");
    assertThat(browser.find("#plot-pull .window").getText())
        .isEqualTo("Shown: 0 to 12.0 s");
    assertConsoleIsSilent();
  }

  @Test
  void heatTableShowsTheNumbersOfTheResult() throws Exception {
    Result result = SampleResults.pull(UnitSettings.KPA_ABSOLUTE);
    open(result);
    HeatTable table = result.tables().get(0);
    List<WebElement> rows = browser.all("#table-base_duty tbody tr");
    assertThat(rows).hasSize(table.rows().length);
    for (int r = 0; r < rows.size(); r++) {
      List<WebElement> cells = rows.get(r).findElements(By.tagName("td"));
      assertThat(cells).hasSize(table.columns().length);
      for (int c = 0; c < cells.size(); c++) {
        String text = cells.get(c).getText();
        double value = table.values()[r][c];
        if (Double.isNaN(value)) {
          assertThat(text).isEqualTo("–");
        } else {
          assertThat(Double.parseDouble(text)).isEqualTo(value);
        }
      }
    }
  }

  @Test
  void phoneWidthNeedsNoSidewaysScrolling() throws Exception {
    browser.phone();
    open(SampleResults.pull(UnitSettings.KPA_ABSOLUTE));
    Object width = browser.script("return document.documentElement.scrollWidth;");
    browser.desktop();
    assertThat(width).isEqualTo(390L);
  }

  @Test
  void hostileTextsRunNothing() throws Exception {
    open(SampleResults.hostile());
    assertThat(browser.driver().getTitle()).doesNotContain("owned\n").startsWith("Boostwright ");
    assertThat(browser.all("img")).isEmpty();
    assertConsoleIsSilent();
  }
}
