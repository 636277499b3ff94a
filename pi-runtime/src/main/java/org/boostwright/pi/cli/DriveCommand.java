package org.boostwright.pi.cli;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.Locale;
import java.util.Optional;
import java.util.concurrent.Callable;
import org.boostwright.core.ladder.Rung;
import org.boostwright.core.ladder.Standing;
import org.boostwright.core.record.LogFormat;
import org.boostwright.core.settings.PinSettings;
import org.boostwright.core.settings.Settings;
import org.boostwright.core.settings.file.LadderFile;
import org.boostwright.core.settings.file.SettingsHistory;
import org.boostwright.core.state.Permission;
import org.boostwright.pi.loop.DriveSession;
import org.boostwright.pi.loop.GuestBoost;
import org.boostwright.pi.loop.TickStats;
import org.boostwright.pi.web.PageFacts;
import org.boostwright.pi.web.PageGuest;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** The controller. */
@Command(
    name = "drive",
    mixinStandardHelpOptions = true,
    description = {
      "The controller itself: 200 ticks a second, on the Pi's own pins or on a rig at a serial",
      "port. It begins and ends with the coil off."
    },
    footer = {
      "",
      "CAUTION: too much boost breaks engines. Prove valve, wiring and overboost limit on the"
          + " bench",
      "first; fit the spring-only switch where the driver can reach it.",
      "",
      "Examples:",
      "  boostwright drive --settings car.toml --data /var/lib/boostwright",
      "  boostwright drive --io link:/dev/ttyUSB0 --settings car.toml",
      "  boostwright drive --page",
      "  boostwright drive --page 192.168.4.1 --page-token-file /var/lib/boostwright/page-token"
    })
final class DriveCommand implements Callable<Integer> {
  @Mixin RunOptions options = new RunOptions();

  private static final Path MACHINE_WATCHDOG = Path.of("/dev/watchdog");

  @Option(
      names = "--io",
      paramLabel = "pi|link:PORT",
      defaultValue = "pi",
      converter = IoChoice.Converter.class,
      description = "Where the wires are. Default: ${DEFAULT-VALUE}.")
  IoChoice where = IoChoice.PI;

  @Option(names = "--no-record", description = "Record nothing.")
  boolean noRecord;

  @Option(
      names = "--watchdog",
      paramLabel = "DEVICE",
      description =
          "Feed this watchdog device while the tick ticks. Default: /dev/watchdog on the Pi, unless"
              + " the settings say pins.machine_watchdog = false.")
  Optional<Path> watchdogDevice = Optional.empty();

  @Option(
      names = "--cut-test",
      description =
          "Lower the overboost limit below idle pressure for this run: start it while the engine "
              + "idles; the engine cut must stall it. Neutral, handbrake, open air.")
  boolean cutTest;

  @Option(
      names = "--driver",
      paramLabel = "guest|owner",
      description =
          "Who drives from now on, where the settings say limits.guest = true: a guest has low"
              + " boost until the owner says otherwise, here or on the live page. Kept in the data"
              + " folder.")
  Optional<Driver> driver = Optional.empty();

  /** Who drives. */
  enum Driver {
    guest,
    owner
  }

  @Option(
      names = "--for",
      paramLabel = "S",
      defaultValue = "0",
      description = "End after this many seconds; 0 = when the key goes off. Default: 0.")
  double seconds;

  @Option(names = "--quiet", description = "No status, only the verdict in one line.")
  boolean quiet;

  @Mixin PageOptions page = new PageOptions();

  @Override
  public Integer call() throws IOException {
    String complaint = page.complaint();
    if (!complaint.isEmpty()) {
      System.err.println("drive: " + complaint);
      return PiExit.WRONG_USE;
    }
    Settings settings = options.load("drive");
    if (settings == null) {
      return PiExit.WRONG_USE;
    }
    if (!where.isLink()) {
      keep(settings);
    }
    Standing standing = LadderFile.standing(options.settingsFile, settings, false);
    if (cutTest) {
      settings =
          settings.withLimits(settings.limits().withCutoffKpaAbs(Rung.CUT_TEST_LIMIT_KPA_ABS));
    }
    if (driver.isPresent() && !settings.limits().guest()) {
      System.err.println("drive: --driver needs limits.guest = true in the settings");
      return PiExit.WRONG_USE;
    }
    if (driver.isPresent()) {
      GuestBoost.open(options.data).set(driver.get() == Driver.guest);
    }
    PageGuest guest = page.guest(settings);
    ControllerRun run =
        new ControllerRun(
            settings,
            permission(standing, settings),
            where,
            options.baud,
            options.data,
            !noRecord,
            watchdog(settings),
            guest,
            cutTest ? LogFormat.META_CUT_TEST + Rung.CUT_TEST_LIMIT_KPA_ABS : "");
    run.start();
    String served =
        guest == null
            ? ""
            : page.start(
                run,
                guest,
                new PageFacts(
                    PiMain.Version.get(),
                    settings,
                    Files.readString(options.settingsFile),
                    run.digest(),
                    proof(standing),
                    permission(standing, settings),
                    where.toString(),
                    options.data.resolve("recordings")));
    if (!quiet && !options.json) {
      begin(standing, run.keptAmbientKpaAbs());
    }
    if (!served.isEmpty()) {
      say(served);
    }
    DriveSession.End end = run.session().await((long) (seconds * 1e9), loop -> status(run));
    run.session().close();
    ResultText result = new ResultText("drive", run.digest());
    result.headline(RunReport.words(end));
    RunReport.add(result, run, where);
    run.report(result, options.json, quiet);
    return end == DriveSession.End.FAILED ? PiExit.INTERNAL : PiExit.PASSED;
  }

  /** What was driven with can be had again; where it cannot be kept the drive goes on. */
  private void keep(Settings settings) {
    try {
      byte[] bytes = Files.readAllBytes(options.settingsFile);
      SettingsHistory.keep(options.data, bytes, settings, Instant.now().toString());
    } catch (IOException e) {
      say("the settings cannot be kept in the history: " + e.getMessage());
    }
  }

  private Optional<Path> watchdog(Settings settings) {
    PinSettings pins = settings.pins();
    return watchdogDevice.isEmpty() && !where.isLink() && pins != null && pins.machineWatchdog()
        ? Optional.of(MACHINE_WATCHDOG)
        : watchdogDevice;
  }

  /**
   * Over the link there is no engine to protect; on the Pi the ladder says how far. A cut test
   * moves no valve.
   */
  private Permission permission(Standing standing, Settings settings) {
    if (cutTest) {
      return Permission.NONE;
    }
    return where.isLink() ? Permission.FULL : standing.permission(settings.valve());
  }

  private String proof(Standing standing) {
    return where.isLink()
        ? "over the link no proof is asked for: there is no engine at its end"
        : standing.words();
  }

  private void begin(Standing standing, double keptAmbientKpaAbs) {
    if (cutTest) {
      say(
          "CUT TEST: overboost limit lowered to "
              + Rung.CUT_TEST_LIMIT_KPA_ABS
              + " kPa absolute, below idle pressure; the coil stays off; the engine must stall at"
              + " once where a cut is wired. Standing car, neutral, handbrake, open air.");
    } else {
      say(proof(standing));
      Rung next = standing.next();
      if (next != null && !where.isLink()) {
        next.cautions().forEach(caution -> say("CAUTION: " + caution));
      }
    }
    say(
        Double.isNaN(keptAmbientKpaAbs)
            ? "no ambient pressure is kept from before"
            : String.format(
                Locale.ROOT,
                "ambient pressure kept from before: %.1f kPa absolute",
                keptAmbientKpaAbs));
  }

  private void status(ControllerRun run) {
    if (quiet || options.json) {
      return;
    }
    TickStats stats = run.loop().stats();
    String trouble = run.recorder().trouble();
    say(
        String.format(
            Locale.ROOT,
            "ticks %d, left out %d, recorded %d%s; %s",
            stats.ticks(),
            stats.leftOut(),
            run.recorder().written(),
            trouble.isEmpty() ? "" : " (" + trouble + ")",
            run.io().health()));
  }

  private static void say(String words) {
    System.err.println(words);
  }
}
