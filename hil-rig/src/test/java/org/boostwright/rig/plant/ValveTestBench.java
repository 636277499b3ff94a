package org.boostwright.rig.plant;

/** Runs a {@link BenchValve} over whole PWM periods and reads mean and ripple. */
final class ValveTestBench {
  private static final int SAMPLES_PER_PERIOD = 400;

  final BenchValve valve;
  double meanKpaGauge;
  double rippleKpa;
  int clicks;

  ValveTestBench(BenchValve valve, double supplyKpaGauge) {
    this.valve = valve;
    valve.setSupplyKpaGauge(supplyKpaGauge);
    valve.setChamberKpaGauge(supplyKpaGauge);
    valve.setSupplyClosed(true);
  }

  /** Settles for two seconds, then averages over ten periods. */
  ValveTestBench run(double frequencyHz, double dutyFraction) {
    valve.setFrequencyHz(frequencyHz);
    valve.setDuty(dutyFraction);
    valve.setEnabled(true);
    double period = 1.0 / frequencyHz;
    valve.advance(Math.ceil(2.0 * frequencyHz) * period);
    double low = Double.POSITIVE_INFINITY;
    double high = Double.NEGATIVE_INFINITY;
    double sum = 0.0;
    clicks = 0;
    boolean before = valve.spoolEnergised();
    int samples = 10 * SAMPLES_PER_PERIOD;
    for (int i = 0; i < samples; i++) {
      valve.advance(period / SAMPLES_PER_PERIOD);
      double p = valve.chamberKpaGauge();
      sum += p;
      low = Math.min(low, p);
      high = Math.max(high, p);
      if (valve.spoolEnergised() != before) {
        before = !before;
        clicks++;
      }
    }
    meanKpaGauge = sum / samples;
    rippleKpa = high - low;
    return this;
  }
}
