package org.boostwright.rig.report;

import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.logging.Level;
import org.openqa.selenium.By;
import org.openqa.selenium.WebElement;
import org.openqa.selenium.chrome.ChromeDriver;
import org.openqa.selenium.chrome.ChromeDriverService;
import org.openqa.selenium.chrome.ChromeOptions;
import org.openqa.selenium.logging.LogEntry;
import org.openqa.selenium.logging.LogType;
import org.openqa.selenium.logging.LoggingPreferences;

/** Debian's Chromium without a window, for tests of pages; no network of its own. */
public final class Browser implements AutoCloseable {
  private static final Path CHROMIUM = Path.of("/usr/bin/chromium");
  private static final Path DRIVER = Path.of("/usr/bin/chromedriver");

  private final ChromeDriver driver;

  private Browser(ChromeDriver driver) {
    this.driver = driver;
  }

  /** Opens it with a new profile below a folder; the calling test is skipped where it is absent. */
  public static Browser open(Path folder) {
    assumeTrue(
        Files.isExecutable(CHROMIUM) && Files.isExecutable(DRIVER),
        "no chromium and chromedriver in /usr/bin: apt install chromium chromium-driver");
    LoggingPreferences logs = new LoggingPreferences();
    logs.enable(LogType.BROWSER, Level.ALL);
    ChromeOptions options = new ChromeOptions();
    options.setBinary(CHROMIUM.toFile());
    options.setCapability("goog:loggingPrefs", logs);
    options.addArguments(
        "--headless",
        "--no-sandbox",
        "--disable-gpu",
        "--disable-dev-shm-usage",
        "--disable-background-networking",
        "--disable-component-update",
        "--disable-sync",
        "--no-first-run",
        "--user-data-dir=" + folder.resolve("profile"));
    return new Browser(
        new ChromeDriver(
            new ChromeDriverService.Builder()
                .usingDriverExecutable(DRIVER.toFile())
                .usingAnyFreePort()
                .build(),
            options));
  }

  /** Selenium's own handle. */
  public ChromeDriver driver() {
    return driver;
  }

  /** Goes to a page. */
  public void get(String address) {
    driver.get(address);
  }

  /** The one element of a CSS selector. */
  public WebElement find(String selector) {
    return driver.findElement(By.cssSelector(selector));
  }

  /** Every element of a CSS selector. */
  public List<WebElement> all(String selector) {
    return driver.findElements(By.cssSelector(selector));
  }

  /** Runs a script in the page. */
  public Object script(String script, Object... arguments) {
    return driver.executeScript(script, arguments);
  }

  /** A phone's screen; {@link #desktop} takes it back. */
  public void phone() {
    driver.executeCdpCommand(
        "Emulation.setDeviceMetricsOverride",
        Map.of("width", 390, "height", 844, "deviceScaleFactor", 2, "mobile", true));
  }

  /** The screen it began with. */
  public void desktop() {
    driver.executeCdpCommand("Emulation.clearDeviceMetricsOverride", Map.of());
  }

  /** What the page wrote to the console since the last call, errors of loading included. */
  public List<String> console() {
    return driver.manage().logs().get(LogType.BROWSER).getAll().stream()
        .map(LogEntry::toString)
        .toList();
  }

  @Override
  public void close() {
    driver.quit();
  }
}
