package org.boostwright.pi.loop;

import java.io.IOException;
import java.util.concurrent.locks.LockSupport;
import java.util.function.Consumer;
import org.boostwright.pi.io.CarIo;
import org.boostwright.pi.io.RealTime;
import org.boostwright.pi.record.RecorderThread;
import org.jspecify.annotations.Nullable;

/**
 * One run of the controller from open wires to closed ones: the tick thread, and around it whatever
 * need not be done in the tick.
 *
 * <p>Ending, for whatever reason and from whatever thread: outputs off first, then the tick thread,
 * then the wires, then the recording, last what can wait. It can be closed twice and at any time.
 */
public final class DriveSession implements AutoCloseable {
  /** Why a run ended. */
  public enum End {
    /** The key has been off for a while with the engine standing. */
    KEY_OFF,
    /** The time asked for is over. */
    TIME_UP,
    /** Somebody asked for the end. */
    ASKED,
    /** Something was thrown out of a tick. */
    FAILED
  }

  /** The key has to be off this long: cranking and a loose contact are no end, ns. */
  static final long KEY_OFF_NANOS = 10_000_000_000L;

  private static final long STEP_NANOS = 100_000_000L;
  private static final long ALIVE_NANOS = 100_000_000L;
  private static final long AMBIENT_EVERY_NANOS = 5_000_000_000L;
  private static final long JOIN_MILLIS = 500L;

  private final TickLoop loop;
  private final CarIo io;
  private final @Nullable RecorderThread recorder;
  private final AmbientStore ambient;
  private final @Nullable HoursStore hours;
  private final @Nullable Watchdog watchdog;
  private final Thread tickThread;
  private volatile String realTime = "";
  private volatile boolean asked;
  private boolean closed;
  private long ambientSavedNanos;
  private String trouble = "";

  /**
   * @param recorder null when nothing is recorded
   * @param hours null where hours are not the car's, as over the link
   * @param watchdog null when there is none
   */
  public DriveSession(
      TickLoop loop,
      CarIo io,
      @Nullable RecorderThread recorder,
      AmbientStore ambient,
      @Nullable HoursStore hours,
      @Nullable Watchdog watchdog) {
    this.loop = loop;
    this.io = io;
    this.recorder = recorder;
    this.ambient = ambient;
    this.hours = hours;
    this.watchdog = watchdog;
    tickThread = new Thread(this::tick, "tick");
    tickThread.setPriority(Thread.MAX_PRIORITY);
  }

  private void tick() {
    realTime = RealTime.liftThread();
    loop.run();
  }

  /** Starts ticking. */
  public void start() {
    // The first collection moves everything the start has left, 15 ms; later ones take 1 ms.
    System.gc();
    tickThread.start();
  }

  /**
   * Looks after everything but the tick until the run ends.
   *
   * @param forNanos longest time, ns; 0 for no end
   * @param status called about once a second
   */
  public End await(long forNanos, Consumer<TickLoop> status) {
    long start = System.nanoTime();
    for (int step = 0; ; step++) {
      LockSupport.parkNanos(STEP_NANOS);
      long now = System.nanoTime();
      if (!tickThread.isAlive() && !asked) {
        return End.FAILED;
      }
      if (asked) {
        return End.ASKED;
      }
      feed(now);
      saveAmbient(now, false);
      saveHours(now, false);
      if (loop.keyOffNanos() >= KEY_OFF_NANOS) {
        return End.KEY_OFF;
      }
      if (forNanos > 0L && now - start >= forNanos) {
        return End.TIME_UP;
      }
      if (step % 10 == 9) {
        status.accept(loop);
      }
    }
  }

  private void feed(long now) {
    boolean alive = loop.stats().ticks() > 0L && now - loop.lastTickNanos() <= ALIVE_NANOS;
    if (watchdog == null || !alive) {
      return;
    }
    try {
      watchdog.feed();
    } catch (IOException e) {
      trouble = "watchdog: " + e.getMessage();
    }
  }

  private void saveAmbient(long now, boolean last) {
    if (!last && now - ambientSavedNanos < AMBIENT_EVERY_NANOS) {
      return;
    }
    ambientSavedNanos = now;
    try {
      ambient.save(loop.measuredAmbientKpaAbs());
    } catch (IOException e) {
      trouble = "ambient pressure cannot be kept: " + e.getMessage();
    }
  }

  private void saveHours(long now, boolean last) {
    if (hours == null) {
      return;
    }
    try {
      hours.save(loop.hours(), now, last);
    } catch (IOException e) {
      trouble = "hours cannot be kept: " + e.getMessage();
    }
  }

  /** Asks {@link #await} to return. */
  public void ask() {
    asked = true;
  }

  /** Why the tick thread is not before all others; empty when it is. */
  public String realTime() {
    return realTime;
  }

  /** What went wrong outside the tick; empty when nothing did. */
  public String trouble() {
    return trouble;
  }

  @Override
  public void close() {
    io.rest();
    asked = true;
    loop.stop();
    synchronized (this) {
      if (closed) {
        return;
      }
      closed = true;
      join();
      io.close();
      if (recorder != null) {
        recorder.close();
      }
      saveAmbient(System.nanoTime(), true);
      saveHours(System.nanoTime(), true);
      if (watchdog != null) {
        try {
          watchdog.close();
        } catch (IOException e) {
          trouble = "watchdog: " + e.getMessage();
        }
      }
    }
  }

  private void join() {
    try {
      tickThread.join(JOIN_MILLIS);
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
    }
  }
}
