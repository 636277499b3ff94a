package org.boostwright.rig.link;

import java.util.function.BooleanSupplier;
import java.util.function.Consumer;
import org.HdrHistogram.Histogram;
import org.boostwright.core.Controller;
import org.boostwright.core.Inputs;
import org.boostwright.core.Outputs;

/**
 * The rig's own 200 ticks a second: take what the controller did, let the car move on, show the
 * controller what the wires say.
 *
 * <p>Ticks begin on the grid of the controller's, a little earlier, where both run on one machine:
 * what is shown is then about to be read. One thread; whoever calls {@link #run} drives it.
 */
public final class RigLoop {
  private static final long TICK = Controller.TICK_NANOS;
  private static final long EARLIER_NANOS = 1_200_000L;
  private static final long LONGEST_MICROS = 10_000_000L;

  private final ControllerWires wires;
  private final CarSide car;
  private final WireObserver observer;
  private final RigClock clock;
  private final Inputs inputs = new Inputs();
  private final Histogram latenessMicros = new Histogram(1L, LONGEST_MICROS, 3);
  private long nextNanos;
  private Consumer<Inputs> spoiler = inputs -> {};
  private boolean more = true;
  private long ticks;
  private long latestNanos;

  /** A rig that has not ticked yet. */
  RigLoop(ControllerWires wires, CarSide car, WireObserver observer, RigClock clock) {
    this.wires = wires;
    this.car = car;
    this.observer = observer;
    this.clock = clock;
    nextNanos = grid(clock.nanoTime());
  }

  private static long grid(long nowNanos) {
    return (Math.floorDiv(nowNanos + EARLIER_NANOS, TICK) + 1L) * TICK - EARLIER_NANOS;
  }

  /** Waits for the next tick and does it. */
  public void tick() {
    clock.sleepUntil(nextNanos);
    long now = clock.nanoTime();
    latenessMicros.recordValue(Math.min(LONGEST_MICROS, Math.max(0L, (now - nextNanos) / 1000L)));
    latestNanos = Math.max(latestNanos, now - nextNanos);
    wires.poll(now, observer);
    drive(now);
    more = car.advance(TICK);
    car.read(now, inputs);
    spoiler.accept(inputs);
    wires.put(now, inputs);
    ticks++;
    nextNanos += TICK;
    if (clock.nanoTime() - nextNanos >= TICK) {
      nextNanos = grid(clock.nanoTime());
    }
  }

  private void drive(long now) {
    Outputs out = observer.last();
    // Pins keep their level when the program dies; only the missing heartbeat opens the supply.
    boolean supply = out.coilSupplyClosed && observer.gate().closed(now);
    car.coil(out.dutyFraction, observer.pwmHz(), out.pwmEnabled, supply);
    car.engineCut(out.engineCutRequest);
  }

  /** Ticks for a time, s. */
  public void run(double seconds) {
    long count = Math.round(seconds / (TICK * 1e-9));
    for (long i = 0; i < count && more; i++) {
      tick();
    }
  }

  /**
   * Waits into the tick that has begun.
   *
   * @param seconds less than a tick, s
   */
  void waitInTick(double seconds) {
    clock.sleepUntil(clock.nanoTime() + Math.round(seconds * 1e9));
  }

  /**
   * Ticks until something is so.
   *
   * @return false when it was not within the time
   */
  public boolean runUntil(BooleanSupplier so, double longestSeconds) {
    long count = Math.round(longestSeconds / (TICK * 1e-9));
    for (long i = 0; i < count && more; i++) {
      if (so.getAsBoolean()) {
        return true;
      }
      tick();
    }
    return so.getAsBoolean();
  }

  /** Something that changes what the wires say, after the car and before the controller. */
  void spoil(Consumer<Inputs> newSpoiler) {
    spoiler = newSpoiler;
  }

  /** Time now on the rig's clock, ns. */
  long nanoTime() {
    return clock.nanoTime();
  }

  /** False when the car has come to its end. */
  public boolean more() {
    return more;
  }

  /** Ticks so far. */
  public long ticks() {
    return ticks;
  }

  /** The car. */
  public CarSide car() {
    return car;
  }

  /** What the wires said in the last tick. */
  public Inputs inputs() {
    return inputs;
  }

  /** What the controller does. */
  public WireObserver observer() {
    return observer;
  }

  /** Begins to look for the latest tick anew; the next frame is the first to show a fault. */
  void arm() {
    observer.arm(wires.nextSequence());
    latestNanos = 0L;
  }

  /** Latest of the rig's own ticks since {@link #arm}, ns. */
  long latestNanos() {
    return latestNanos;
  }

  /** Lateness of the rig's own ticks, us: how far its measurements can be trusted. */
  public Histogram latenessMicros() {
    return latenessMicros;
  }
}
