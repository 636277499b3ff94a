package org.boostwright.pi.loop;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.concurrent.locks.LockSupport;
import org.HdrHistogram.Histogram;
import org.boostwright.core.AnalogChannel;
import org.boostwright.core.Controller;
import org.boostwright.core.Inputs;
import org.boostwright.core.Outputs;
import org.boostwright.core.record.LogFormat;
import org.boostwright.pi.io.CarIo;
import org.boostwright.pi.io.Clock;
import org.boostwright.pi.io.PiBench;
import org.boostwright.pi.io.RealTime;
import org.boostwright.pi.record.FolderStore;
import org.boostwright.pi.record.Recorder;
import org.boostwright.pi.record.RecorderThread;
import org.boostwright.pi.record.RowQueue;

/**
 * Measures the tick's lateness on this machine in real time, with the recorder writing: {@code
 * TickJitter SECONDS idle|load}. Under load every core is kept busy by another program, one thread
 * allocates as fast as it can, and one asks for the newest tick a thousand times a second. Run it
 * with the options of {@code boostwright-pi}.
 */
final class TickJitter {
  private static final long WARM_SECONDS = 5L;

  private static volatile boolean over;
  private static volatile byte[] kept = new byte[0];

  private TickJitter() {}

  /** A car that stands with its key on: sensors answer, nothing is driven. */
  private static final class StandingCar implements CarIo {
    @Override
    public void read(long nowNanos, Inputs inputs) {
      inputs.keyOn = true;
      inputs.coilFeed = true;
      for (AnalogChannel channel : AnalogChannel.values()) {
        inputs.sample(channel, 1.6 + 1e-4 * (nowNanos % 7L), nowNanos);
      }
    }

    @Override
    public boolean apply(long nowNanos, Outputs outputs) {
      return true;
    }

    @Override
    public void endTick(long nowNanos, Outputs outputs, boolean beat, boolean lamp) {}

    @Override
    public boolean setPwmHz(double hz) {
      return true;
    }

    @Override
    public void rest() {}

    @Override
    public String health() {
      return "";
    }

    @Override
    public void close() {}
  }

  public static void main(String[] args) throws IOException {
    long seconds = Long.parseLong(args[0]);
    boolean load = args[1].equals("load");
    RealTime.liftMachine();
    Path folder = Files.createTempDirectory("boostwright-jitter");
    RowQueue rows = new RowQueue(4096);
    Recorder recorder =
        new Recorder(rows, new FolderStore(folder), Recorder.Limits.DEFAULT, LogFormat.VERSION);
    CarIo car = new StandingCar();
    TickLoop loop = new TickLoop(new Controller(PiBench.example()), car, rows, Clock.SYSTEM, null);
    List<Process> busy = load ? startLoad(loop) : List.of();
    DriveSession session =
        new DriveSession(
            loop,
            car,
            new RecorderThread(recorder),
            new AmbientStore(folder.resolve("ambient")),
            HoursStore.open(folder, "2026-05-01T10:00:00Z"),
            null);
    session.start();
    session.await(WARM_SECONDS * 1_000_000_000L, ticking -> {});
    Histogram first = loop.stats().lateness();
    Histogram firstDuration = loop.stats().duration();
    long firstLeftOut = loop.stats().leftOut();
    session.await(seconds * 1_000_000_000L, ticking -> {});
    session.close();
    over = true;
    busy.forEach(Process::destroyForcibly);
    TickStats stats = loop.stats();
    System.out.printf(
        Locale.ROOT,
        "%s, %d s, %d busy programs, real-time place: %s%n",
        args[1],
        seconds,
        busy.size(),
        session.realTime().isEmpty() ? "given" : session.realTime());
    System.out.printf(
        Locale.ROOT,
        "ticks %d, left out %d, beats %d, rows %d, rows lost %d%n",
        stats.ticks(),
        stats.leftOut() - firstLeftOut,
        stats.beats(),
        recorder.written(),
        recorder.lost() + rows.dropped());
    print("lateness in the first " + WARM_SECONDS + " s", first);
    Histogram late = stats.lateness();
    late.subtract(first);
    Histogram took = stats.duration();
    took.subtract(firstDuration);
    print("lateness after that", late);
    print("duration after that", took);
    late.outputPercentileDistribution(System.out, 1, 1.0);
  }

  private static void print(String what, Histogram micros) {
    System.out.printf(
        Locale.ROOT,
        "%s us: 50 %% %d, 99 %% %d, 99.9 %% %d, 99.99 %% %d, most %d%n",
        what,
        micros.getValueAtPercentile(50.0),
        micros.getValueAtPercentile(99.0),
        micros.getValueAtPercentile(99.9),
        micros.getValueAtPercentile(99.99),
        micros.getMaxValue());
  }

  private static List<Process> startLoad(TickLoop loop) throws IOException {
    for (Runnable run : List.<Runnable>of(TickJitter::allocate, () -> poll(loop.latest()))) {
      Thread thread = new Thread(run);
      thread.setDaemon(true);
      thread.start();
    }
    List<Process> busy = new ArrayList<>();
    for (int i = 0; i < Runtime.getRuntime().availableProcessors(); i++) {
      busy.add(new ProcessBuilder("sh", "-c", "while :; do :; done").start());
    }
    return busy;
  }

  private static void allocate() {
    while (!over) {
      kept = new byte[65_536];
    }
  }

  private static void poll(LatestTick latest) {
    double[] row = new double[LogFormat.COLUMN_COUNT];
    while (!over) {
      latest.read(row);
      LockSupport.parkNanos(1_000_000L);
    }
  }
}
