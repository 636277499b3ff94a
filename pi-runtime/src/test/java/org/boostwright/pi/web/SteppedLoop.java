package org.boostwright.pi.web;

import java.util.Random;
import java.util.concurrent.Semaphore;
import java.util.function.Consumer;
import org.boostwright.core.AnalogChannel;
import org.boostwright.core.Controller;
import org.boostwright.core.Inputs;
import org.boostwright.core.Outputs;
import org.boostwright.core.settings.Settings;
import org.boostwright.core.state.Permission;
import org.boostwright.pi.io.CarIo;
import org.boostwright.pi.io.Clock;
import org.boostwright.pi.loop.TickLoop;
import org.boostwright.pi.record.RowQueue;
import org.boostwright.rig.plant.ProjectCar;

/**
 * The real tick loop on a thread of its own whose time only passes when a test lets it: each call
 * of {@link #ticks} does that many ticks and returns when they are done.
 */
final class SteppedLoop implements CarIo, Clock, AutoCloseable {
  private static final long TICK = Controller.TICK_NANOS;

  private final Semaphore allowed = new Semaphore(0);
  private final Semaphore done = new Semaphore(0);
  private boolean begun;
  private final TickLoop loop;
  private final Thread thread;
  private volatile long nowNanos = 1_000_000_000L;

  /** What the wires say, called in every tick before the core. */
  volatile Consumer<Inputs> wires = inputs -> {};

  /** Outputs of the last tick. */
  final Outputs last = new Outputs();

  SteppedLoop(Settings settings, PageGuest guest) {
    loop =
        new TickLoop(
            new Controller(settings, Permission.FULL), this, new RowQueue(8), this, guest);
    thread = new Thread(loop::run, "stepped tick");
    thread.start();
  }

  TickLoop loop() {
    return loop;
  }

  /** A car with the key on and its sensors noisy as declared. */
  static Consumer<Inputs> standing(double mapKpaAbs) {
    Random random = new Random(5);
    return inputs -> {
      inputs.keyOn = true;
      inputs.permit = true;
      inputs.coilFeed = true;
      double noise = 2e-3 * random.nextGaussian();
      inputs.volts[AnalogChannel.MAP.ordinal()] = ProjectCar.mapVolts(mapKpaAbs) + noise;
      inputs.volts[AnalogChannel.THROTTLE.ordinal()] = ProjectCar.throttleVolts(0.0) + noise;
      inputs.volts[AnalogChannel.INTAKE_AIR.ordinal()] = ProjectCar.temperatureVolts(20.0);
      inputs.volts[AnalogChannel.SUPPLY.ordinal()] = ProjectCar.supplyVolts(12.5);
    };
  }

  /** Lets that many ticks pass. */
  void ticks(int count) {
    allowed.release(count);
    done.acquireUninterruptibly(count);
  }

  @Override
  public long nanoTime() {
    return nowNanos;
  }

  @Override
  public void sleepUntil(long nanos) {
    if (begun) {
      done.release(); // the tick before ends here
    }
    begun = true;
    allowed.acquireUninterruptibly();
    nowNanos = nanos;
  }

  @Override
  public void read(long now, Inputs inputs) {
    for (AnalogChannel channel : AnalogChannel.values()) {
      inputs.answered[channel.ordinal()] = true;
      inputs.sampleNanos[channel.ordinal()] = now;
    }
    wires.accept(inputs);
  }

  @Override
  public boolean apply(long now, Outputs outputs) {
    last.dutyFraction = outputs.dutyFraction;
    last.pwmEnabled = outputs.pwmEnabled;
    last.coilSupplyClosed = outputs.coilSupplyClosed;
    last.state = outputs.state;
    return true;
  }

  @Override
  public void endTick(long now, Outputs outputs, boolean beat, boolean lamp) {
    // Nothing hangs on these wires.
  }

  @Override
  public boolean setPwmHz(double hz) {
    return true;
  }

  @Override
  public void rest() {
    last.rest();
  }

  @Override
  public String health() {
    return "stepped";
  }

  @Override
  public void close() {
    loop.stop();
    allowed.release();
    try {
      thread.join(5_000L);
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
    }
  }
}
