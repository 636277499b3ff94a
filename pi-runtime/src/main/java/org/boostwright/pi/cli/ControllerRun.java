package org.boostwright.pi.cli;

import java.io.IOException;
import java.nio.file.Path;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.TimeUnit;
import org.boostwright.core.Controller;
import org.boostwright.core.record.LogFormat;
import org.boostwright.core.settings.Settings;
import org.boostwright.core.settings.file.SettingsDigest;
import org.boostwright.core.state.Permission;
import org.boostwright.pi.io.CarIo;
import org.boostwright.pi.io.Clock;
import org.boostwright.pi.io.RealTime;
import org.boostwright.pi.loop.AmbientStore;
import org.boostwright.pi.loop.DriveSession;
import org.boostwright.pi.loop.GuestBoost;
import org.boostwright.pi.loop.HoursStore;
import org.boostwright.pi.loop.SystemdNotify;
import org.boostwright.pi.loop.TickGuest;
import org.boostwright.pi.loop.TickLoop;
import org.boostwright.pi.loop.Watchdog;
import org.boostwright.pi.record.FolderStore;
import org.boostwright.pi.record.Recorder;
import org.boostwright.pi.record.RecorderThread;
import org.boostwright.pi.record.RowQueue;
import org.jspecify.annotations.Nullable;

/**
 * The controller put together on its wires, the same for driving and for the bench: recorder,
 * watchdogs, the kept ambient pressure, and an end by signal that is off first and reports.
 */
final class ControllerRun {
  private static final int QUEUE_ROWS = 4096;
  private static final long REPORT_SECONDS = 2L;

  private final Path recordings;
  private final boolean recording;
  private final String digest;
  private final double keptAmbientKpaAbs;
  private final CarIo io;
  private final RowQueue rows = new RowQueue(QUEUE_ROWS);
  private final Recorder recorder;
  private final @Nullable GuestBoost driver;
  private final TickLoop loop;
  private final DriveSession session;
  private final CountDownLatch reported = new CountDownLatch(1);

  /**
   * Opens the wires; everything is off until {@link #start}.
   *
   * @param data folder of recordings and the last ambient pressure
   * @param recording whether rows are written
   * @param watchdogDevice watchdog device to feed
   * @param guest bench procedure; null for driving
   */
  ControllerRun(
      Settings settings,
      Permission permission,
      IoChoice where,
      int baud,
      Path data,
      boolean recording,
      Optional<Path> watchdogDevice,
      @Nullable TickGuest guest)
      throws IOException {
    this(settings, permission, where, baud, data, recording, watchdogDevice, guest, "");
  }

  /** The same with a remark for the recording's first row: words without blanks or commas. */
  ControllerRun(
      Settings settings,
      Permission permission,
      IoChoice where,
      int baud,
      Path data,
      boolean recording,
      Optional<Path> watchdogDevice,
      @Nullable TickGuest guest,
      String remark)
      throws IOException {
    RealTime.liftMachine();
    this.recording = recording;
    recordings = data.resolve("recordings");
    digest = SettingsDigest.of(settings);
    AmbientStore ambient = new AmbientStore(data.resolve("ambient"));
    keptAmbientKpaAbs = ambient.load();
    io = where.open(settings, digest, baud);
    recorder =
        new Recorder(
            rows,
            new FolderStore(recordings),
            Recorder.Limits.DEFAULT,
            LogFormat.meta(digest, permission, where.isLink() ? "link" : "pi")
                + (remark.isEmpty() ? "" : " " + remark)
                + (Double.isNaN(keptAmbientKpaAbs)
                    ? ""
                    : " " + LogFormat.META_AMBIENT + keptAmbientKpaAbs));
    Controller controller = new Controller(settings, permission);
    controller.monitor().recallAmbient(keptAmbientKpaAbs);
    driver = settings.limits().guest() ? GuestBoost.open(data) : null;
    loop = new TickLoop(controller, io, rows, Clock.SYSTEM, guest, driver);
    session =
        new DriveSession(
            loop,
            io,
            recording ? new RecorderThread(recorder) : null,
            ambient,
            where.isLink() ? null : hours(data),
            watchdogs(watchdogDevice));
  }

  private static @Nullable Watchdog watchdogs(Optional<Path> device) throws IOException {
    List<Watchdog> dogs = new ArrayList<>();
    String socket = System.getenv("NOTIFY_SOCKET");
    if (socket != null && !socket.isEmpty()) {
      dogs.add(new SystemdNotify(socket));
    }
    if (device.isPresent()) {
      dogs.add(Watchdog.device(device.get()));
    }
    return dogs.isEmpty() ? null : Watchdog.all(dogs);
  }

  /** Where they cannot be counted the drive goes on without. */
  private static @Nullable HoursStore hours(Path data) {
    try {
      return HoursStore.open(data, Instant.now().toString());
    } catch (IOException e) {
      System.err.println("hours are not counted: " + e.getMessage());
      return null;
    }
  }

  /** Starts ticking. A signal ends the run: off first. It is no safety device; the heartbeat is. */
  void start() {
    Runtime.getRuntime().addShutdownHook(new Thread(this::endBySignal, "end"));
    session.start();
  }

  private void endBySignal() {
    session.close();
    try {
      if (!reported.await(REPORT_SECONDS, TimeUnit.SECONDS)) {
        System.err.println("boostwright: ended without a report");
      }
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
    }
  }

  /** Prints the report, after which the program may end. */
  void report(ResultText result, boolean json, boolean quiet) {
    System.out.print(json ? result.json() : result.text(quiet));
    System.out.flush();
    reported.countDown();
  }

  /** Looks after the run until it ends, and closes it. */
  DriveSession session() {
    return session;
  }

  /** The guest setting; null where the settings have none. */
  @Nullable GuestBoost driver() {
    return driver;
  }

  TickLoop loop() {
    return loop;
  }

  CarIo io() {
    return io;
  }

  Recorder recorder() {
    return recorder;
  }

  /** Rows that found no place in the queue. */
  long droppedRows() {
    return rows.dropped();
  }

  /** The present or last recording; empty when there is none. */
  Optional<Path> recordingFile() {
    String name = recorder.file();
    return recording && !name.isEmpty() ? Optional.of(recordings.resolve(name)) : Optional.empty();
  }

  boolean recording() {
    return recording;
  }

  String digest() {
    return digest;
  }

  /** Ambient pressure kept from an earlier run, kPa absolute; NaN when there is none. */
  double keptAmbientKpaAbs() {
    return keptAmbientKpaAbs;
  }
}
