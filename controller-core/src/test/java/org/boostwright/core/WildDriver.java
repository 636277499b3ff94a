package org.boostwright.core;

import java.util.Random;

/** Seeded inputs: a drive that makes sense, and now and then anything at all. */
final class WildDriver {
  private static final double[] WILD = {
    Double.NaN,
    Double.POSITIVE_INFINITY,
    Double.NEGATIVE_INFINITY,
    -0.0,
    0.0,
    -1.0,
    1e-300,
    1e300,
    -1e300,
    5.0,
    2.5,
    Double.MAX_VALUE,
    Double.MIN_VALUE
  };

  private final Random random;
  private final double wildShare;
  private final int timeBits;
  private double kpa = 100.0;
  private double throttle;
  private double rpm;
  private double shownRpm;
  private double pulsePhase;
  private boolean started;
  private long phaseUntilNanos;

  /**
   * @param wildShare share of ticks in which something is wild
   * @param timeBits wild times stay within this many bits, so that a log holds them exactly
   */
  WildDriver(long seed, double wildShare, int timeBits) {
    random = new Random(seed);
    this.wildShare = wildShare;
    this.timeBits = timeBits;
  }

  private double wildNumber() {
    int kind = random.nextInt(3);
    if (kind == 0) {
      return WILD[random.nextInt(WILD.length)];
    }
    return kind == 1 ? Double.longBitsToDouble(random.nextLong()) : 6.0 * random.nextDouble();
  }

  private long wildTime(long now) {
    return switch (random.nextInt(4)) {
      case 0 -> random.nextLong() >> (64 - timeBits);
      case 1 -> now - random.nextInt(2_000_000_000);
      case 2 -> now + random.nextInt(2_000_000_000);
      default -> 0L;
    };
  }

  /** Writes the inputs of the tick at {@code now}. */
  void fill(Inputs in, long now) {
    drive(in, now);
    if (random.nextDouble() < wildShare) {
      int strikes = 1 + random.nextInt(4);
      for (int i = 0; i < strikes; i++) {
        strike(in, now);
      }
    }
  }

  private void drive(Inputs in, long now) {
    if (!started || now - phaseUntilNanos >= 0) {
      started = true;
      phaseUntilNanos = now + 500_000_000L + random.nextInt(1_500_000_000);
      boolean stopped = random.nextInt(5) == 0;
      boolean full = random.nextBoolean();
      rpm = stopped ? 0.0 : full ? 2_000.0 + 4_500.0 * random.nextDouble() : 900.0;
      throttle = stopped || !full ? 0.0 : 100.0;
      in.benchRequest = random.nextInt(4) == 0;
      in.keyOn = random.nextInt(8) != 0;
      in.permit = random.nextInt(8) != 0;
      in.coilFeed = random.nextInt(8) != 0;
      in.highBoost = random.nextBoolean();
      in.benchDutyFraction = random.nextDouble();
    }
    double aim = rpm == 0.0 ? 100.0 : throttle > 50.0 ? 185.0 : 40.0;
    kpa += 0.02 * (aim - kpa);
    in.sample(AnalogChannel.MAP, volts(kpa + 0.3 * random.nextGaussian(), 20.0, 300.0), now);
    in.sample(AnalogChannel.THROTTLE, volts(throttle, 0.0, 100.0), now);
    in.sample(AnalogChannel.PEDAL, volts(throttle, 0.0, 100.0), now);
    in.sample(AnalogChannel.INTAKE_AIR, volts(30.0, -20.0, 120.0), now);
    in.sample(AnalogChannel.BAROMETER, volts(100.0, 50.0, 110.0), now);
    in.sample(AnalogChannel.SUPPLY, volts(14.0, 0.0, 20.0), now);
    shownRpm += Math.max(-50.0, Math.min(50.0, rpm - shownRpm));
    if (shownRpm > 0.0) {
      double hz = shownRpm / 30.0;
      pulsePhase += hz * 0.005;
      if (pulsePhase >= 1.0) {
        pulsePhase -= Math.floor(pulsePhase);
        in.enginePulseNanos = now - (long) (pulsePhase / hz * 1e9);
        in.enginePeriodNanos = 1e9 / hz;
        in.engineSeen = true;
      }
    }
  }

  private static double volts(double value, double low, double high) {
    return 0.5 + 4.0 * (value - low) / (high - low);
  }

  private void strike(Inputs in, long now) {
    int channel = random.nextInt(AnalogChannel.COUNT);
    switch (random.nextInt(10)) {
      case 0 -> in.volts[channel] = wildNumber();
      case 1 -> in.sampleNanos[channel] = wildTime(now);
      case 2 -> in.answered[channel] = false;
      case 3 -> in.enginePeriodNanos = wildNumber();
      case 4 -> in.enginePulseNanos = wildTime(now);
      case 5 -> in.roadPeriodNanos = wildNumber();
      case 6 -> {
        in.roadPulseNanos = wildTime(now);
        in.roadSeen = random.nextBoolean();
      }
      case 7 -> in.benchDutyFraction = wildNumber();
      case 8 -> in.coilEnergised = random.nextBoolean();
      default -> in.engineSeen = random.nextBoolean();
    }
  }
}
