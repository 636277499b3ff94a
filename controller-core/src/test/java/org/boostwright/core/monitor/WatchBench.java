package org.boostwright.core.monitor;

import org.boostwright.core.AnalogChannel;
import org.boostwright.core.Inputs;
import org.boostwright.core.TestSettings;
import org.boostwright.core.settings.Settings;
import org.boostwright.core.signal.Signals;

/** Signals and a fault table for one watch, fed tick by tick without a controller. */
final class WatchBench {
  static final long TICK = 5_000_000L;

  final Inputs inputs = new Inputs();
  final Signals signals;
  final FaultTable faults = new FaultTable();
  long now = 3 * TICK;

  /** Manifold pressure; alternates by 0.05 kPa, so that it does not look frozen. */
  double kpa = 100.0;

  double throttlePct = 0.0;

  /** Engine speed shown by one pulse a tick; 0: no pulses. */
  double rpm = 0.0;

  boolean mapSampled = true;

  private double flicker = 0.05;

  WatchBench(Settings settings) {
    signals = new Signals(settings);
  }

  /** One tick of the signals; the watch under test is called after it. */
  void tick() {
    now += TICK;
    faults.beginTick();
    flicker = -flicker;
    if (mapSampled) {
      inputs.sample(AnalogChannel.MAP, TestSettings.mapVolts(kpa + flicker), now);
    }
    inputs.sample(AnalogChannel.THROTTLE, TestSettings.throttleVolts(throttlePct), now);
    if (rpm > 0.0) {
      inputs.engineSeen = true;
      inputs.enginePeriodNanos = 30.0e9 / rpm;
      inputs.enginePulseNanos = now;
    }
    signals.update(now, inputs);
  }
}
