package org.boostwright.pi.web;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.offset;
import static org.junit.jupiter.api.Assumptions.assumeFalse;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.IOException;
import java.net.ServerSocket;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.Arrays;
import java.util.List;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.locks.LockSupport;
import java.util.function.Supplier;
import java.util.stream.IntStream;
import org.boostwright.core.AnalogChannel;
import org.boostwright.core.link.Line;
import org.boostwright.core.settings.Settings;
import org.boostwright.core.settings.file.SettingsFile;
import org.boostwright.rig.link.PtyPair;
import org.boostwright.rig.link.RigUnderTest;
import org.boostwright.rig.plant.WireFaults;
import org.boostwright.rig.scenario.ProjectCarSettings;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.openqa.selenium.By;
import org.openqa.selenium.WebElement;
import org.openqa.selenium.chrome.ChromeDriver;
import org.openqa.selenium.chrome.ChromeDriverService;
import org.openqa.selenium.chrome.ChromeOptions;
import org.openqa.selenium.logging.LogEntry;
import org.openqa.selenium.logging.LogType;

/**
 * The live page of a running {@code drive}, its own process, against the rig at the other end of a
 * cable by socat, seen in Chromium. Real time: two programs and a browser.
 */
@Tag("W1")
class LivePageInBrowserTest {
  private static final Path CHROMIUM = Path.of("/usr/bin/chromium");
  private static final Path DRIVER = Path.of("/usr/bin/chromedriver");
  private static final Duration PATIENCE = Duration.ofSeconds(60);
  private static final long LOOK_NANOS = 100_000_000L;

  /** A cable held up for longer than this, less a tick each way, ends a bench. */
  private static final double HELD_UP_MILLIS = 90.0;

  /** Notes when the state appears, by the page itself: asking takes longer than appearing. */
  private static final String WATCH =
      "window.seen = 0; const state = document.getElementById('state');"
          + "new MutationObserver(() => { if (!seen && state.textContent === 'held at spring')"
          + " seen = Date.now(); }).observe(state, {childList: true, characterData: true,"
          + " subtree: true});";

  /** What an element shows, in one step: the page may build it anew between two. */
  private static final String SHOWN =
      "const e = document.getElementById(arguments[0]);"
          + " return e.checkVisibility() ? e.innerText.trim() : '';";

  private static final String CLICK =
      "const b = [...document.querySelectorAll('#bench-answer button')]"
          + ".find(b => b.textContent === arguments[0]); if (b) b.click(); return !!b;";

  private static final String ANSWER =
      "const a = document.getElementById('answer');"
          + " if (a) a.value = arguments[0]; return !!a;";

  @TempDir Path folder;
  private Settings settings;
  private PtyPair cable;
  private RigUnderTest rig;
  private Process drive;
  private ChromeDriver browser;
  private int port;

  @BeforeEach
  void start() throws IOException {
    assumeTrue(
        Files.isExecutable(CHROMIUM) && Files.isExecutable(DRIVER),
        "no chromium and chromedriver in /usr/bin: apt install chromium chromium-driver");
    assumeTrue(
        Arrays.stream(System.getenv("PATH").split(":"))
            .anyMatch(place -> Files.isExecutable(Path.of(place, "socat"))),
        "no socat: apt install socat");
    // A pseudo-terminal is served by ordinary workers of the kernel, so samples may be late.
    String text =
        ProjectCarSettings.text().replaceAll("(?m)^refresh_ms *= \\d+", "refresh_ms = 100");
    Path file = Files.writeString(folder.resolve("car.toml"), text);
    settings = SettingsFile.load(file).orThrow();
    cable = new PtyPair(folder);
    rig = new RigUnderTest(cable.rigEnd().toString(), Line.DEFAULT_BAUD, settings);
    try (ServerSocket free = new ServerSocket(0)) {
      port = free.getLocalPort();
    }
    startDrive();
    openBrowser();
  }

  private void startDrive() throws IOException {
    String java = Path.of(System.getProperty("java.home"), "bin", "java").toString();
    drive =
        new ProcessBuilder(
                java,
                "-XX:+UseSerialGC",
                "-Xmx64m",
                "-cp",
                System.getProperty("java.class.path"),
                "org.boostwright.pi.cli.PiMain",
                "drive",
                "--io",
                "link:" + cable.controllerEnd(),
                "--settings",
                folder.resolve("car.toml").toString(),
                "--data",
                folder.resolve("data").toString(),
                "--page",
                "127.0.0.1:" + port,
                "--page-token-file",
                folder.resolve("token").toString())
            .redirectErrorStream(true)
            .redirectOutput(ProcessBuilder.Redirect.appendTo(folder.resolve("drive.txt").toFile()))
            .start();
    until(() -> said().contains("live page: "), "the page is served");
  }

  private String said() {
    try {
      return Files.readString(folder.resolve("drive.txt"));
    } catch (IOException e) {
      return "";
    }
  }

  private void openBrowser() {
    ChromeOptions options = new ChromeOptions();
    options.setBinary(CHROMIUM.toFile());
    options.addArguments(
        "--headless",
        "--no-sandbox",
        "--disable-gpu",
        "--disable-dev-shm-usage",
        "--disable-background-networking",
        "--disable-component-update",
        "--disable-sync",
        "--no-first-run",
        "--window-size=390,844",
        "--user-data-dir=" + folder.resolve("profile"));
    browser =
        new ChromeDriver(
            new ChromeDriverService.Builder()
                .usingDriverExecutable(DRIVER.toFile())
                .usingAnyFreePort()
                .build(),
            options);
    browser.get("http://127.0.0.1:" + port + "/");
  }

  @AfterEach
  void end() throws Exception {
    if (browser != null) {
      browser.quit();
    }
    if (drive != null) {
      drive.destroy();
      drive.waitFor(5, TimeUnit.SECONDS);
      drive.destroyForcibly();
    }
    if (rig != null) {
      rig.close();
    }
    if (cable != null) {
      cable.close();
    }
  }

  private String text(String id) {
    return (String) browser.executeScript(SHOWN, id);
  }

  private void until(Supplier<Boolean> so, String what) {
    long end = System.nanoTime() + PATIENCE.toNanos();
    while (!so.get()) {
      assumeFalse(
          rig.heldUpMillis() > HELD_UP_MILLIS
              && browser != null
              && text("ended-words").contains("no sample for 100 ms"),
          () ->
              "INVALID: this machine held the cable up for "
                  + rig.heldUpMillis()
                  + " ms, and 100 ms end a bench");
      assertThat(System.nanoTime() - end)
          .as(() -> what + " did not come; the page says " + page() + "; drive said:\n" + said())
          .isNegative();
      LockSupport.parkNanos(LOOK_NANOS);
    }
  }

  private String page() {
    return browser == null
        ? ""
        : text("state") + ", " + text("why") + ", " + text("bench-said") + ", " + text("active");
  }

  private void untilState(String state) {
    until(() -> text("state").equals(state), state);
  }

  private void startEngine() {
    // Ambient pressure is known once the engine has been seen standing.
    until(() -> text("why").contains("the engine to run"), "waiting for the engine");
    rig.rampTo(900.0);
    untilState("ready");
  }

  private double rpm() {
    String[] words = text("rpm").split(" ");
    return words[0].matches("\\d+") ? Double.parseDouble(words[0]) : 0.0;
  }

  private double shown(String id) {
    String word = text(id).split(" ")[0];
    return word.matches("-?\\d+(\\.\\d+)?") ? Double.parseDouble(word) : Double.NaN;
  }

  @Test
  void valuesFollowAFaultAppearsWithinASecondAndTheNextProgramIsFoundAgain() throws Exception {
    startEngine();
    rig.rampTo(4_000.0);
    until(() -> rpm() >= 3_900.0, "4000 rpm");
    rig.wish(car -> car.setThrottlePct(100.0));
    untilState("controlling");
    // Held by a brake the car has no road speed: the gear is unknown, the lowest limit applies.
    double lowestKpaAbs =
        IntStream.range(0, settings.limits().gearTargets())
            .mapToDouble(settings.limits()::gearTargetKpaAbs)
            .min()
            .orElseThrow();
    until(() -> shown("target") == lowestKpaAbs, "the lowest target of any gear");
    until(() -> Math.abs(shown("map") - lowestKpaAbs) < 5.0, "boost at the target");
    // The page is at most a tenth of a second behind a pressure that stands by now.
    until(() -> Math.abs(shown("map") - rig.mapKpaAbs()) < 4.0, "the true pressure");
    until(() -> Math.abs(shown("duty") - 100.0 * rig.dutyFraction()) < 8.0, "the duty at the wire");
    assertThat(shown("margin"))
        .isCloseTo(settings.limits().cutoffKpaAbs() - lowestKpaAbs, offset(8.0));
    assertThat(text("tables")).contains("rpm").contains("throttle");
    assertThat(text("bench-closed")).contains("token");

    browser.executeScript(WATCH);
    rig.forgetLateness();
    long begunMillis = System.currentTimeMillis();
    rig.wish(car -> car.faults().wire(AnalogChannel.MAP).wire = WireFaults.Wire.OPEN);
    untilState("held at spring");
    double seconds = ((Number) browser.executeScript("return seen;")).longValue() - begunMillis;
    seconds *= 1e-3;
    assumeFalse(
        seconds >= 1.0 && rig.heldUpMillis() > 1000.0 * seconds - 500.0,
        () -> "INVALID: this machine stood still for " + rig.heldUpMillis() + " ms");
    assertThat(seconds).as("fault on the page after").isLessThan(1.0);
    System.out.printf("fault on the page after %.2f s%n", seconds);
    assertThat(text("active")).contains("pressure signal is");
    until(() -> !text("count").equals("0"), "history");

    drive.destroy();
    assertThat(drive.waitFor(30, TimeUnit.SECONDS)).isTrue();
    untilState("no data");
    assertThat(text("why")).contains("Do not trust");
    Files.delete(folder.resolve("drive.txt"));
    rig.wish(car -> car.faults().clear());
    startDrive();
    long begun = System.nanoTime();
    until(() -> !text("state").equals("no data"), "data again");
    System.out.printf("data again after %.2f s%n", (System.nanoTime() - begun) * 1e-9);
    assertThat(consoleErrors()).isEmpty();
  }

  /** Lost connections are the browser's own lines; anything a script or the policy did is not. */
  private List<String> consoleErrors() {
    return browser.manage().logs().get(LogType.BROWSER).getAll().stream()
        .map(LogEntry::getMessage)
        .filter(line -> !line.contains("net::ERR_"))
        .toList();
  }

  @Test
  void benchIsClosedWithoutTheTokenGuidesWithItAndEndsWhenTheEngineTurns() throws Exception {
    until(() -> text("why").contains("the engine to run"), "standing with ambient known");
    assertThat(browser.findElement(By.id("bench-open")).isDisplayed()).isFalse();
    assertThat(browser.findElement(By.id("stop")).isDisplayed()).isFalse();
    unlock("not-the-token-at-all");
    until(() -> text("bench-said").contains("not the token"), "refusal");
    unlock(Files.readString(folder.resolve("token")).strip());
    until(() -> browser.findElement(By.id("bench-open")).isDisplayed(), "unlocked");
    chooseSteps("ambient", "click");
    WebElement begin = browser.findElement(By.id("begin"));
    assertThat(begin.isEnabled()).as("before the box is ticked").isFalse();
    click(browser.findElement(By.id("safe")));
    until(begin::isEnabled, "begin");
    untilSound();
    rig.forgetLateness();
    click(begin);
    until(() -> text("bench-question").contains("Shut the air off"), "first question");
    assertThat(rig.driven()).as("coil driven before the air is off").isFalse();
    press("Done");
    until(() -> text("bench-question").contains("How many double clicks"), "clicks");
    assertThat(rig.driven()).as("clicked").isTrue();
    assertThat(rig.dutyFraction()).as("coil off while a question is open").isZero();
    until(() -> (Boolean) browser.executeScript(ANSWER, "5"), "a field for the answer");
    press("Give");
    until(() -> text("ended-words").contains("Done"), "end");
    assertThat(rig.dutyFraction()).isZero();

    chooseSteps("click");
    click(browser.findElement(By.id("safe")));
    until(begin::isEnabled, "begin again");
    untilSound();
    rig.forgetLateness();
    click(begin);
    rig.rampTo(900.0);
    until(() -> text("ended-words").contains("Stopped"), "and says so");
    until(() -> text("bench-closed").contains("Only with the engine stopped"), "closed");
    assertThat(browser.findElement(By.id("bench-open")).isDisplayed()).isFalse();
    assertThat(consoleErrors()).allMatch(line -> line.contains("401"));
  }

  /** A busy machine delays the cable, which is a fault of its own. */
  private void untilSound() {
    until(() -> text("active").equals("None."), "no fault");
  }

  private void unlock(String token) {
    WebElement field = browser.findElement(By.id("token"));
    until(field::isDisplayed, "a field for the token");
    field.sendKeys(token);
    click(browser.findElement(By.cssSelector("#unlock button")));
  }

  private void chooseSteps(String... wanted) {
    for (WebElement box : browser.findElements(By.cssSelector("#steps input"))) {
      boolean want = Arrays.asList(wanted).contains(box.getDomProperty("value"));
      if (want != box.isSelected()) {
        click(box);
      }
    }
  }

  /** By the page itself: it may move between aiming and clicking, when a fault comes or goes. */
  private void click(WebElement element) {
    assertThat(element.isDisplayed() && element.isEnabled()).isTrue();
    browser.executeScript("arguments[0].click();", element);
  }

  private void press(String label) {
    until(() -> (Boolean) browser.executeScript(CLICK, label), "button " + label);
  }
}
