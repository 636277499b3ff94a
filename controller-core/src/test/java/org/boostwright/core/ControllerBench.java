package org.boostwright.core;

import java.util.Random;
import org.boostwright.core.settings.Settings;
import org.boostwright.core.state.Permission;

/** Feeds a controller hand-made signals tick by tick; stepped time, seeded noise. */
public final class ControllerBench {
  public final Inputs inputs = new Inputs();
  public final Outputs outputs = new Outputs();
  public final Controller controller;
  public long nowNanos;
  public double mapKpaAbs = 100.0;
  public double throttlePct = 0.0;
  public double engineRpm = 0.0;
  public double noiseKpa = 0.3;

  /** Use {@link #mapVolts} instead of the volts of {@link #mapKpaAbs}. */
  public boolean overrideMapVolts;

  public double mapVolts;
  public boolean mapSampled = true;
  private final Random random = new Random(7);
  private static final double MAX_RPM_PER_SECOND = 10_000.0;
  private double pulsePhase;
  private double shownRpm;

  public ControllerBench(Settings settings) {
    this(settings, Permission.FULL);
  }

  public ControllerBench(Settings settings, Permission permission) {
    controller = new Controller(settings, permission);
    inputs.keyOn = true;
    inputs.permit = true;
    inputs.coilFeed = true;
    inputs.highBoost = true;
  }

  /** One tick of 5 ms. */
  public void tick() {
    nowNanos += Controller.TICK_NANOS;
    if (engineRpm > 0.0) {
      double most = MAX_RPM_PER_SECOND * 0.005;
      shownRpm =
          shownRpm == 0.0
              ? engineRpm
              : shownRpm + Math.max(-most, Math.min(most, engineRpm - shownRpm));
      double hz = shownRpm / 60.0 * 2.0;
      pulsePhase += hz * 0.005;
      if (pulsePhase >= 1.0) {
        pulsePhase -= Math.floor(pulsePhase);
        inputs.enginePulseNanos = nowNanos - (long) (pulsePhase / hz * 1e9);
        inputs.enginePeriodNanos = 1e9 / hz;
        inputs.engineSeen = true;
      }
    }
    if (mapSampled) {
      double volts =
          overrideMapVolts
              ? mapVolts
              : TestSettings.mapVolts(mapKpaAbs + noiseKpa * random.nextGaussian());
      inputs.sample(AnalogChannel.MAP, volts, nowNanos);
    }
    inputs.sample(AnalogChannel.THROTTLE, TestSettings.throttleVolts(throttlePct), nowNanos);
    controller.step(nowNanos, inputs, outputs);
  }

  /** Runs for a time. */
  public void run(double seconds) {
    long ticks = Math.round(seconds / 0.005);
    for (long i = 0; i < ticks; i++) {
      tick();
    }
  }

  /** Key on, engine stopped, then idling with vacuum, then full throttle at a pressure. */
  public void driveTo(double kpaAbs) {
    mapKpaAbs = 100.0;
    run(3.0);
    engineRpm = 900.0;
    mapKpaAbs = 40.0;
    // The engine pulling vacuum is explained by starting, not by throttle: let it fall in steps.
    throttlePct = 6.0;
    tick();
    throttlePct = 0.0;
    run(1.0);
    engineRpm = 4000.0;
    throttlePct = 100.0;
    mapKpaAbs = kpaAbs;
    run(1.0);
  }
}
