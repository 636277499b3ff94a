package org.boostwright.core;

import java.util.Arrays;
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
  public boolean throttleSampled = true;

  /** Volts of the other channels, sampled every tick; NaN: not sampled. */
  public final double[] otherVolts = new double[AnalogChannel.COUNT];

  /** Engine-speed pulses reach the controller. */
  public boolean tachConnected = true;

  /** Pulses that arrive over pulses that are made. */
  public double tachFactor = 1.0;

  public double roadKmh = 0.0;

  /** Coil current follows the outputs, at 30 Hz; else it is what the test writes. */
  public boolean coilModelled;

  private final Random random = new Random(7);
  private static final double MAX_RPM_PER_SECOND = 10_000.0;
  private static final double PWM_PERIOD_NANOS = 1e9 / 30.0;
  private double pulsePhase;
  private double shownRpm;
  private double roadPhase;

  public ControllerBench(Settings settings) {
    this(settings, Permission.FULL);
  }

  public ControllerBench(Settings settings, Permission permission) {
    controller = new Controller(settings, permission);
    Arrays.fill(otherVolts, Double.NaN);
    inputs.keyOn = true;
    inputs.permit = true;
    inputs.coilFeed = true;
    inputs.highBoost = true;
  }

  /** One tick of 5 ms. */
  public void tick() {
    prepare();
    controller.step(nowNanos, inputs, outputs);
  }

  /** Everything of a tick but the controller's step. */
  public void prepare() {
    nowNanos += Controller.TICK_NANOS;
    turnWheels();
    if (coilModelled) {
      double place = nowNanos % PWM_PERIOD_NANOS;
      inputs.coilEnergised =
          outputs.coilSupplyClosed && place < outputs.dutyFraction * PWM_PERIOD_NANOS;
    }
    if (engineRpm > 0.0) {
      double most = MAX_RPM_PER_SECOND * 0.005;
      shownRpm =
          shownRpm == 0.0
              ? engineRpm
              : shownRpm + Math.max(-most, Math.min(most, engineRpm - shownRpm));
      double hz = shownRpm / 60.0 * 2.0 * tachFactor;
      pulsePhase += hz * 0.005;
      if (pulsePhase >= 1.0) {
        pulsePhase -= Math.floor(pulsePhase);
      } else {
        hz = 0.0;
      }
      if (hz > 0.0 && tachConnected) {
        inputs.enginePulseNanos = nowNanos - (long) (pulsePhase / hz * 1e9);
        inputs.enginePeriodNanos = 1e9 / hz;
        inputs.engineSeen = true;
      }
    } else {
      shownRpm = 0.0;
    }
    if (mapSampled) {
      double volts =
          overrideMapVolts
              ? mapVolts
              : TestSettings.mapVolts(mapKpaAbs + noiseKpa * random.nextGaussian());
      inputs.sample(AnalogChannel.MAP, volts, nowNanos);
    }
    if (throttleSampled) {
      inputs.sample(AnalogChannel.THROTTLE, TestSettings.throttleVolts(throttlePct), nowNanos);
    }
    for (AnalogChannel channel : AnalogChannel.values()) {
      double volts = otherVolts[channel.ordinal()];
      if (!Double.isNaN(volts)) {
        inputs.sample(channel, volts, nowNanos);
      }
    }
  }

  private void turnWheels() {
    double hz = roadKmh / 3600.0 * 4000.0;
    roadPhase += hz * 0.005;
    if (roadPhase >= 1.0) {
      roadPhase -= Math.floor(roadPhase);
      inputs.roadPulseNanos = nowNanos - (long) (roadPhase / hz * 1e9);
      inputs.roadPeriodNanos = 1e9 / hz;
      inputs.roadSeen = true;
    }
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
