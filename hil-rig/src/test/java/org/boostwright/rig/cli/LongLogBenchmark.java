package org.boostwright.rig.cli;

import java.io.BufferedWriter;
import java.io.PrintWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Locale;
import java.util.Random;
import org.boostwright.rig.report.Browser;
import org.boostwright.rig.report.HtmlReport;
import org.boostwright.rig.result.Result;
import org.boostwright.rig.result.ResultJson;

/**
 * What an hour at 200 Hz costs: {@code LongLogBenchmark FOLDER} writes such a log, replays it,
 * makes the report again from the result and opens it in Chromium, and prints what each took.
 */
public final class LongLogBenchmark {
  private static final int ROWS = 720_000;

  private LongLogBenchmark() {}

  /** See the class. */
  public static void main(String[] arguments) throws Exception {
    Path folder = Files.createDirectories(Path.of(arguments[0]));
    Path log = folder.resolve("hour.csv");
    write(log);
    Path run = folder.resolve("run");
    long begin = System.nanoTime();
    Boostwright.run(
        new Terminal(new PrintWriter(System.out), new PrintWriter(System.err), false, false),
        "replay", log.toString(), "--out", run.toString(), "--quiet");
    System.out.printf(
        "replay, report included: %.2f s for %.1f MB%n",
        (System.nanoTime() - begin) * 1e-9, Files.size(log) * 1e-6);
    Path page = run.resolve(RunFolder.REPORT);
    for (int round = 1; round <= 3; round++) {
      begin = System.nanoTime();
      Result result = ResultJson.read(run.resolve(RunFolder.RESULT));
      HtmlReport.write(page, result);
      System.out.printf(
          "report from its result: %.2f s, %d places, result %.2f MB, page %.2f MB%n",
          (System.nanoTime() - begin) * 1e-9,
          result.series().get(0).x().length,
          Files.size(run.resolve(RunFolder.RESULT)) * 1e-6,
          Files.size(page) * 1e-6);
    }
    try (Browser browser = Browser.open(folder)) {
      for (int round = 1; round <= 3; round++) {
        browser.get(page.toUri().toString());
        Object opened =
            browser.script(
                "const n = performance.getEntriesByType('navigation')[0]; return n.loadEventEnd;");
        Object zoomed =
            browser.script(
                "const b = document.querySelector('button[data-act=in]'); const t ="
                    + " performance.now(); b.click(); b.click(); return new Promise(done =>"
                    + " requestAnimationFrame(() => requestAnimationFrame(() =>"
                    + " done(performance.now() - t))));");
        System.out.printf("opened and drawn: %s ms, two zooms: %s ms%n", opened, zoomed);
      }
    }
  }

  private static void write(Path log) throws Exception {
    Random random = new Random(1);
    try (BufferedWriter out = Files.newBufferedWriter(log)) {
      out.write("Time [s],MAP [kPa],Engine speed [rpm],Throttle [%],Intake air [C]\n");
      for (int i = 0; i < ROWS; i++) {
        double t = i * 0.005;
        double part = t % 20.0;
        boolean running = t > 5.0;
        double pull = running ? Math.max(0, Math.min(1, Math.min(part - 10.0, 16.0 - part))) : 0;
        double rpm = running ? 1500.0 + 4000.0 * pull : 0.0;
        double map = running ? 40.0 + 140.0 * pull + 0.3 * random.nextGaussian() : 101.3;
        out.write(
            String.format(
                Locale.ROOT,
                "%.3f,%.2f,%.0f,%.1f,%.0f%n",
                t,
                map,
                rpm + 5 * random.nextGaussian() * (running ? 1 : 0),
                running ? 5.0 + 90.0 * pull + 0.1 * random.nextGaussian() : 5.0,
                25.0 + 10.0 * pull));
      }
    }
  }
}
