package org.boostwright.rig.bench;

import java.util.Locale;
import java.util.Random;
import org.boostwright.core.bench.ManualBench;
import org.boostwright.core.settings.PressureUnit;
import org.boostwright.rig.plant.BenchValve;

/**
 * A dial gauge on the virtual bench: follows the mean of the line and shivers with its ripple, the
 * middle of the shiver uncertain by a share of the ripple.
 */
public final class VirtualGauge {
  private static final double SETTLE_SECONDS = 3.0;
  private static final int AVERAGED_PERIODS = 10;
  private static final int SAMPLES_PER_PERIOD = 50;
  private static final double SHIVER_SHARE = 0.06;

  private final BenchSetup setup;
  private final Random random;

  /** A gauge on a bench. */
  public VirtualGauge(BenchSetup setup, long seed) {
    this.setup = setup;
    random = new Random(seed);
  }

  /** The needle's middle at a setting, kPa gauge. */
  public double kpaGauge(ManualBench.Setting setting) {
    BenchValve valve =
        new BenchValve(setup.valve(), setup.chamber(), setup.actuator(), setup.ambientKpaAbs());
    valve.setRegulatorKpaPerGramPerSecond(setup.regulatorKpaPerGramPerSecond());
    valve.faults().leakConductance = setup.leakConductance();
    valve.setSupplyKpaGauge(setup.supplyKpaGauge());
    valve.setChamberKpaGauge(setup.supplyKpaGauge());
    valve.setSupplyClosed(true);
    valve.advance(1.0);
    if (setting.isPulse()) {
      valve.faults().supplyOpen = 0.0;
      valve.setFrequencyHz(1.0);
      valve.setDuty(setting.pulseSeconds());
      valve.setEnabled(true);
      valve.advance(0.5);
      valve.setEnabled(false);
      valve.advance(0.1);
      return valve.chamberKpaGauge();
    }
    double period = 1.0 / setting.frequencyHz();
    valve.setFrequencyHz(setting.frequencyHz());
    valve.setDuty(setting.dutyFraction());
    valve.setEnabled(setting.dutyFraction() > 0.0);
    valve.advance(Math.ceil(SETTLE_SECONDS / period) * period);
    double sum = 0.0;
    double low = Double.POSITIVE_INFINITY;
    double high = Double.NEGATIVE_INFINITY;
    for (int i = 0; i < AVERAGED_PERIODS * SAMPLES_PER_PERIOD; i++) {
      valve.advance(period / SAMPLES_PER_PERIOD);
      double p = valve.chamberKpaGauge();
      sum += p;
      low = Math.min(low, p);
      high = Math.max(high, p);
    }
    double mean = sum / (AVERAGED_PERIODS * SAMPLES_PER_PERIOD);
    return Math.max(0.0, mean + SHIVER_SHARE * (high - low) * random.nextGaussian());
  }

  /** The needle as text, to the nearest mark a person can read. */
  public String needle(ManualBench.Setting setting, PressureUnit unit) {
    double value = unit.fromKpa(kpaGauge(setting));
    String format = unit == PressureUnit.BAR ? "%.2f %s" : "%.0f %s";
    return String.format(Locale.ROOT, format, value, unit.label());
  }
}
