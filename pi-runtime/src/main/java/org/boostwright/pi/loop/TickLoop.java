package org.boostwright.pi.loop;

import org.boostwright.core.Controller;
import org.boostwright.core.Inputs;
import org.boostwright.core.Outputs;
import org.boostwright.core.record.LogFormat;
import org.boostwright.core.upkeep.HoursMeter;
import org.boostwright.pi.io.CarIo;
import org.boostwright.pi.io.Clock;
import org.boostwright.pi.record.RowQueue;
import org.jspecify.annotations.Nullable;

/**
 * The tick: read, step the core, apply, read back, beat, record.
 *
 * <p>Ticks begin on a grid of whole multiples of 5 ms of the monotonic clock; lateness counts from
 * there and not from the last tick, so that waiting never hides in it. Starts that have passed are
 * left out and counted. The heartbeat gets its edge only in a tick that began in time, whose
 * outputs read back as commanded and which the core permits. Anything thrown out of a tick is rest
 * first, and the end of the loop.
 */
@SuppressWarnings("NonAtomicVolatileUpdate") // only the tick thread counts
public final class TickLoop {
  private static final long TICK = Controller.TICK_NANOS;

  private final Controller controller;
  private final CarIo io;
  private final RowQueue rows;
  private final Clock clock;
  private final @Nullable TickGuest guest;
  private final @Nullable GuestBoost driver;
  private final TickStats stats = new TickStats();
  private final LampPattern lamp = new LampPattern();
  private final HoursMeter hours = new HoursMeter();
  private final Inputs inputs = new Inputs();
  private final Outputs outputs = new Outputs();
  private final double[] row = new double[LogFormat.COLUMN_COUNT];
  private final LatestTick latest = new LatestTick();
  private double pwmHz;
  private boolean lowHeld;
  private volatile boolean stopping;
  private volatile long lastTickNanos;
  private volatile double measuredAmbientKpaAbs = Double.NaN;
  private volatile int keyOffTicks;
  private volatile @Nullable Throwable failure;

  /**
   * @param rows where every tick's row goes
   * @param guest bench procedure; null for driving
   */
  public TickLoop(
      Controller controller, CarIo io, RowQueue rows, Clock clock, @Nullable TickGuest guest) {
    this(controller, io, rows, clock, guest, null);
  }

  /**
   * The same with a guest setting.
   *
   * @param driver holds low boost while a guest drives; null where there is no such setting
   */
  public TickLoop(
      Controller controller,
      CarIo io,
      RowQueue rows,
      Clock clock,
      @Nullable TickGuest guest,
      @Nullable GuestBoost driver) {
    this.controller = controller;
    this.io = io;
    this.rows = rows;
    this.clock = clock;
    this.guest = guest;
    this.driver = driver;
    pwmHz = controller.settings().valve().frequencyHz();
  }

  /** Runs until {@link #stop}, or until something is thrown out of a tick. Ends at rest. */
  public void run() {
    try {
      long intended = firstStart(clock.nanoTime());
      while (!stopping) {
        clock.sleepUntil(intended);
        tick(intended);
        intended = nextStart(intended, clock.nanoTime());
      }
    } catch (Throwable thrown) {
      io.rest();
      failure = thrown;
    } finally {
      io.rest();
      outputs.rest();
      outputs.heartbeatPermitted = false;
      io.endTick(clock.nanoTime(), outputs, false, true);
    }
  }

  static long firstStart(long nowNanos) {
    return (Math.floorDiv(nowNanos, TICK) + 1L) * TICK;
  }

  /** Start after {@code intended} that has not passed by more than a tick; counts the others. */
  long nextStart(long intended, long nowNanos) {
    long next = intended + TICK;
    long behind = nowNanos - next;
    if (behind >= TICK) {
      long left = behind / TICK;
      stats.leftOut(left);
      next += left * TICK;
    }
    return next;
  }

  /**
   * One tick.
   *
   * @param intended when it should have begun, ns
   */
  void tick(long intended) {
    long now = clock.nanoTime();
    stats.began(now - intended);
    io.read(now, inputs);
    if (driver != null) {
      // From guest to owner only with the engine known to be stopped, whatever asked for it.
      lowHeld = driver.guest() || (lowHeld && !controller.monitor().engine().stopped());
      inputs.highBoost &= !lowHeld;
    }
    if (guest != null) {
      guest.before(now, inputs);
    }
    controller.step(now, inputs, outputs);
    boolean asCommanded = io.apply(now, outputs);
    if (!asCommanded) {
      io.rest();
      outputs.rest();
    }
    // The core hears of it in the next tick and locks when it goes on.
    inputs.outputsWrong = !asCommanded;
    boolean beat = asCommanded && outputs.heartbeatPermitted && now - intended < TICK;
    io.endTick(now, outputs, beat, lamp.update(now, outputs));
    if (beat) {
      stats.beat();
    }
    if (guest != null) {
      followFrequency(guest.after(now, inputs, outputs));
    }
    hours.update(now, controller.monitor().engine().running(), outputs, pwmHz);
    record(now);
    watchKeyAndAmbient();
    lastTickNanos = now;
    stats.ended(clock.nanoTime() - now);
  }

  private void followFrequency(double hz) {
    if (hz != pwmHz && !outputs.pwmEnabled && io.setPwmHz(hz)) {
      pwmHz = hz;
    }
  }

  private void watchKeyAndAmbient() {
    if (controller.monitor().engine().stopped()) {
      measuredAmbientKpaAbs = controller.monitor().engine().ambientKpaAbs();
    }
    boolean off = controller.settings().optional().keyInput() && !inputs.keyOn;
    keyOffTicks = off && outputs.engineRpm == 0.0 ? keyOffTicks + 1 : 0;
  }

  private void record(long now) {
    LogFormat.fill(row, now, inputs, outputs);
    latest.publish(row);
    double[] place = rows.claim();
    if (place != null) {
      System.arraycopy(row, 0, place, 0, row.length);
      rows.publish();
    }
  }

  /** Ends the loop after the tick in progress. */
  public void stop() {
    stopping = true;
  }

  /** The newest tick, for any thread. */
  public LatestTick latest() {
    return latest;
  }

  /** What this run counted. */
  public HoursMeter hours() {
    return hours;
  }

  /** Timing figures. */
  public TickStats stats() {
    return stats;
  }

  /** When the last tick began, ns; 0 before the first. */
  public long lastTickNanos() {
    return lastTickNanos;
  }

  /** Ambient pressure last measured in this run, kPa absolute; NaN while it never was. */
  public double measuredAmbientKpaAbs() {
    return measuredAmbientKpaAbs;
  }

  /** How long the key has been off with the engine standing, ns; 0 where no key is wired. */
  public long keyOffNanos() {
    return keyOffTicks * TICK;
  }

  /** What was thrown out of a tick; null when nothing was. */
  public @Nullable Throwable failure() {
    return failure;
  }

  /** The controller; read it only from the tick thread or after the loop has ended. */
  public Controller controller() {
    return controller;
  }
}
