package org.boostwright.pi.cli;

import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.concurrent.Callable;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.TimeUnit;
import org.HdrHistogram.Histogram;
import org.boostwright.core.Controller;
import org.boostwright.core.bench.proof.ProofState;
import org.boostwright.core.link.ControllerEnd;
import org.boostwright.core.record.LogFormat;
import org.boostwright.core.settings.Settings;
import org.boostwright.core.settings.file.LoadResult;
import org.boostwright.core.settings.file.ProofFile;
import org.boostwright.core.settings.file.SettingsDigest;
import org.boostwright.core.settings.file.SettingsFile;
import org.boostwright.core.state.Permission;
import org.boostwright.pi.io.CarIo;
import org.boostwright.pi.io.Clock;
import org.boostwright.pi.io.PiIo;
import org.boostwright.pi.io.RealTime;
import org.boostwright.pi.io.SysfsPlaces;
import org.boostwright.pi.io.pi4j.Pi4jHardware;
import org.boostwright.pi.link.LinkIo;
import org.boostwright.pi.link.SerialLine;
import org.boostwright.pi.loop.AmbientStore;
import org.boostwright.pi.loop.DriveSession;
import org.boostwright.pi.loop.SystemdNotify;
import org.boostwright.pi.loop.TickLoop;
import org.boostwright.pi.loop.TickStats;
import org.boostwright.pi.loop.Watchdog;
import org.boostwright.pi.record.FolderStore;
import org.boostwright.pi.record.Recorder;
import org.boostwright.pi.record.RecorderThread;
import org.boostwright.pi.record.RowQueue;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
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
      "CAUTION: too much boost breaks engines. Prove valve, wiring and overboost limit on the bench",
      "first; fit the spring-only switch where the driver can reach it.",
      "",
      "Examples:",
      "  boostwright drive --settings car.toml --data /var/lib/boostwright",
      "  boostwright drive --io link:/dev/ttyUSB0 --settings car.toml"
    })
final class DriveCommand implements Callable<Integer> {
  private static final int QUEUE_ROWS = 4096;
  private static final long REPORT_SECONDS = 2L;

  @Option(
      names = "--io",
      paramLabel = "pi|link:PORT",
      defaultValue = "pi",
      converter = IoChoice.Converter.class,
      description = "Where the wires are. Default: ${DEFAULT-VALUE}.")
  IoChoice where = new IoChoice("");

  @Option(
      names = "--baud",
      paramLabel = "N",
      defaultValue = "" + SerialLine.DEFAULT_BAUD,
      description = "Speed of the serial port, the same at both ends. Default: ${DEFAULT-VALUE}.")
  int baud = SerialLine.DEFAULT_BAUD;

  @Option(
      names = "--settings",
      paramLabel = "FILE",
      defaultValue = "car.toml",
      description = "Settings file. Default: ${DEFAULT-VALUE} in the current folder.")
  Path settingsFile = Path.of("car.toml");

  @Option(
      names = "--data",
      paramLabel = "FOLDER",
      defaultValue = "boostwright-data",
      description =
          "Where recordings and the last ambient pressure are kept. Default: ${DEFAULT-VALUE}.")
  Path data = Path.of("boostwright-data");

  @Option(names = "--no-record", description = "Record nothing.")
  boolean noRecord;

  @Option(
      names = "--watchdog",
      paramLabel = "DEVICE",
      description = "Feed this watchdog device, such as /dev/watchdog, while the tick ticks.")
  Optional<Path> watchdogDevice = Optional.empty();

  @Option(
      names = "--for",
      paramLabel = "S",
      defaultValue = "0",
      description = "End after this many seconds; 0 = when the key goes off. Default: 0.")
  double seconds;

  @Option(names = "--json", description = "Print one JSON object at the end (docs/json.md).")
  boolean json;

  @Option(names = "--quiet", description = "No status, only the verdict in one line.")
  boolean quiet;

  @Override
  public Integer call() throws IOException {
    LoadResult loaded = SettingsFile.load(settingsFile);
    Settings settings = loaded.settings();
    if (settings == null) {
      loaded.problems().forEach(System.err::println);
      System.err.println("drive: " + settingsFile + " was refused as a whole; the coil stays off");
      return PiExit.WRONG_USE;
    }
    RealTime.liftMachine();
    AmbientStore ambient = new AmbientStore(data.resolve("ambient"));
    double lastAmbient = ambient.load();
    String digest = SettingsDigest.of(settings);
    CarIo io = open(settings, digest);
    RowQueue rows = new RowQueue(QUEUE_ROWS);
    Recorder recorder =
        new Recorder(
            rows,
            new FolderStore(data.resolve("recordings")),
            Recorder.Limits.DEFAULT,
            LogFormat.VERSION
                + " settings="
                + digest
                + (Double.isNaN(lastAmbient) ? "" : " " + LogFormat.META_AMBIENT + lastAmbient));
    ProofState proof = ProofFile.state(ProofFile.beside(settingsFile), settings);
    Controller controller = new Controller(settings, permission(proof));
    controller.monitor().recallAmbient(lastAmbient);
    TickLoop loop = new TickLoop(controller, io, rows, Clock.SYSTEM, null);
    List<Watchdog> dogs = new ArrayList<>();
    @Nullable SystemdNotify systemd = systemd();
    if (systemd != null) {
      dogs.add(systemd);
    }
    if (watchdogDevice.isPresent()) {
      dogs.add(Watchdog.device(watchdogDevice.get()));
    }
    DriveSession session =
        new DriveSession(
            loop,
            io,
            noRecord ? null : new RecorderThread(recorder),
            ambient,
            dogs.isEmpty() ? null : Watchdog.all(dogs));
    // A signal ends here, too: off first. It is no safety device; the heartbeat is.
    CountDownLatch reported = new CountDownLatch(1);
    Runtime.getRuntime().addShutdownHook(new Thread(() -> endBySignal(session, reported), "end"));
    session.start();
    if (systemd != null) {
      systemd.ready();
    }
    if (!quiet && !json) {
      say(
          where.isLink()
              ? "over the link no proof is asked for: there is no engine at its end"
              : proof.allowsControl()
                  ? "the valve is proven on the bench"
                  : "the coil stays off: " + proof.words());
      say(
          Double.isNaN(lastAmbient)
              ? "no ambient pressure is kept from before"
              : String.format(
                  Locale.ROOT,
                  "ambient pressure kept from before: %.1f kPa absolute",
                  lastAmbient));
    }
    DriveSession.End end =
        session.await((long) (seconds * 1e9), ticking -> status(ticking, recorder, io));
    session.close();
    int exitCode = report(end, session, loop, recorder, rows, io, digest);
    reported.countDown();
    return exitCode;
  }

  private static void endBySignal(DriveSession session, CountDownLatch reported) {
    session.close();
    try {
      if (!reported.await(REPORT_SECONDS, TimeUnit.SECONDS)) {
        System.err.println("drive: ended without a report");
      }
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
    }
  }

  private CarIo open(Settings settings, String digest) throws IOException {
    if (!where.isLink()) {
      PiIo io = PiIo.open(settings, new Pi4jHardware(), SysfsPlaces.SYSTEM, Clock.SYSTEM);
      io.start();
      return io;
    }
    SerialLine line = where.line(baud);
    line.start();
    int session = (int) (System.nanoTime() ^ ProcessHandle.current().pid() << 20);
    long shortDigest = Long.parseUnsignedLong(digest.substring(0, 16), 16);
    return new LinkIo(
        line, System.nanoTime(), session, shortDigest, settings.valve().frequencyHz());
  }

  /** Over the link there is no engine to protect; on the Pi nothing goes without its proof. */
  private Permission permission(ProofState proof) {
    return where.isLink() || proof.allowsControl() ? Permission.FULL : Permission.NONE;
  }

  private static @Nullable SystemdNotify systemd() throws IOException {
    String socket = System.getenv("NOTIFY_SOCKET");
    return socket == null || socket.isEmpty() ? null : new SystemdNotify(socket);
  }

  private void status(TickLoop loop, Recorder recorder, CarIo io) {
    if (quiet || json) {
      return;
    }
    TickStats stats = loop.stats();
    say(
        String.format(
            Locale.ROOT,
            "ticks %d, left out %d, recorded %d%s; %s",
            stats.ticks(),
            stats.leftOut(),
            recorder.written(),
            recorder.trouble().isEmpty() ? "" : " (" + recorder.trouble() + ")",
            io.health()));
  }

  private static void say(String words) {
    System.err.println(words);
  }

  private int report(
      DriveSession.End end,
      DriveSession session,
      TickLoop loop,
      Recorder recorder,
      RowQueue rows,
      CarIo io,
      String digest) {
    ResultText result = new ResultText("drive", digest);
    Throwable failure = loop.failure();
    result.headline(
        switch (end) {
          case KEY_OFF -> "the key is off; the coil is off.";
          case TIME_UP -> "the time is over; the coil is off.";
          case ASKED -> "asked to end; the coil is off.";
          case FAILED -> "a tick failed; the coil is off.";
        });
    if (failure != null) {
      result.problem("tick_failed", failure.toString(), "please report it with the recording");
    }
    timing(result, loop);
    if (!noRecord) {
      result.measure("record.rows", "rows recorded", recorder.written(), "count");
      result.measure("record.lost", "rows lost", recorder.lost() + rows.dropped(), "count");
      if (!recorder.file().isEmpty()) {
        result.file("recording", data.resolve("recordings").resolve(recorder.file()).toString());
      }
    }
    if (io instanceof LinkIo link) {
      link(result, link.end());
    }
    if (!recorder.trouble().isEmpty()) {
      result.caution("recording", recorder.trouble(), "make room or check the folder");
    }
    if (!session.trouble().isEmpty()) {
      result.caution("session", session.trouble(), "");
    }
    if (!session.realTime().isEmpty()) {
      result.caution(
          "real_time",
          "the tick has no place before other programs: " + session.realTime(),
          "start it by the service of docs/install-pi.md");
    }
    result.provenance("io", where.toString());
    System.out.print(json ? result.json() : result.text(quiet));
    System.out.flush();
    return end == DriveSession.End.FAILED ? PiExit.INTERNAL : PiExit.PASSED;
  }

  private static void timing(ResultText result, TickLoop loop) {
    TickStats stats = loop.stats();
    Histogram late = stats.lateness();
    Histogram took = stats.duration();
    result.measure("tick.count", "ticks", stats.ticks(), "count");
    result.measure("tick.left_out", "ticks left out", stats.leftOut(), "count");
    result.measure("tick.beats", "heartbeat edges", stats.beats(), "count");
    result.measure(
        "tick.lateness_p50_ms",
        "lateness, half of the ticks",
        late.getValueAtPercentile(50) * 1e-3,
        "ms");
    result.measure(
        "tick.lateness_p99_ms",
        "lateness, 99 % of the ticks",
        late.getValueAtPercentile(99) * 1e-3,
        "ms");
    result.measure(
        "tick.lateness_p999_ms",
        "lateness, 99.9 % of the ticks",
        late.getValueAtPercentile(99.9) * 1e-3,
        "ms");
    result.measure("tick.lateness_max_ms", "lateness, worst", late.getMaxValue() * 1e-3, "ms");
    result.measure(
        "tick.duration_p99_ms",
        "duration, 99 % of the ticks",
        took.getValueAtPercentile(99) * 1e-3,
        "ms");
    result.measure("tick.duration_max_ms", "duration, worst", took.getMaxValue() * 1e-3, "ms");
  }

  private static void link(ResultText result, ControllerEnd end) {
    result.measure("link.missed", "frames missed", end.peer().sequence().missed(), "count");
    result.measure("link.dropped", "frames damaged", end.peer().decoder().rejected(), "count");
    result.measure("link.not_new", "frames not new", end.peer().sequence().notNew(), "count");
    result.measure("link.too_old", "ticks with old frames", end.tooOld(), "count");
  }
}
