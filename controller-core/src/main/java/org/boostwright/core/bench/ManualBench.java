package org.boostwright.core.bench;

import java.util.Locale;
import org.boostwright.core.bench.model.GaugeReading;
import org.boostwright.core.bench.model.NextReading;
import org.boostwright.core.bench.model.ReadingsPosterior;
import org.jspecify.annotations.Nullable;

/**
 * The bench by gauge: at most twelve readings, each setting chosen from what the ones before have
 * told. Rest and fully energised come first, because they tell whether it is safe to go on; then
 * the shut line by itself, which tells its leak, and after one pulse, which tells its speed; then
 * the settings that tell most.
 */
public final class ManualBench {
  /** Most readings asked for. */
  public static final int MOST_READINGS = 12;

  private static final double AMBIENT_KPA = 101.325;
  private static final double SLIP_BELIEF = 0.02;
  private static final double FIRST_PULSE_SECONDS = 0.025;
  private static final double SHORT_PULSE_SECONDS = 0.009;
  private static final double LONG_PULSE_SECONDS = 0.12;
  private static final double EMPTY_SHARE = 0.2;
  private static final double FULL_SHARE = 0.75;
  private static final double LEAST_REST_KPA = 20.0;
  private static final double MANY_RESTS = 1.5;
  private static final double USUAL_REST_KPA = 85.0;

  /**
   * What to set before the next reading.
   *
   * @param frequencyHz PWM frequency, Hz
   * @param dutyFraction duty, 0 = off, 1 = on all the time
   * @param pulseSeconds shut the supply at rest, then energise once for so long, s, 0 for not at
   *     all; read after the same short while each time; NaN otherwise
   */
  public record Setting(double frequencyHz, double dutyFraction, double pulseSeconds) {
    /** True when one pulse on the shut line is asked for. */
    public boolean isPulse() {
      return !Double.isNaN(pulseSeconds);
    }
  }

  private final BenchRecord record = new BenchRecord();
  private final double resolutionKpa;
  private @Nullable ReadingsPosterior posterior;
  private @Nullable Setting setting;
  private double doubtedKpa = Double.NaN;
  private double shutKpaGauge = Double.NaN;
  private double lastPulseSeconds = Double.NaN;
  private double pulseLeftShare = Double.NaN;
  private int taken;

  /**
   * @param resolutionKpa smallest step the person can read on the gauge, kPa
   */
  public ManualBench(double resolutionKpa) {
    if (!(resolutionKpa > 0.0 && resolutionKpa < 20.0)) {
      throw new IllegalArgumentException(
          "a gauge read to " + resolutionKpa + " kPa is outside 0 to 20");
    }
    this.resolutionKpa = resolutionKpa;
    record.ambientKpaAbs = AMBIENT_KPA;
    setting = new Setting(BenchPlan.LOWEST_HZ, 0.0, Double.NaN);
  }

  /** What to set next; null when nothing more is asked. */
  public @Nullable Setting setting() {
    return setting;
  }

  /** Readings taken so far. */
  public int taken() {
    return taken;
  }

  /** What was measured; the fit is there once enough has been read. */
  public BenchRecord record() {
    return record;
  }

  /**
   * Takes the reading for the present setting, or doubts it. A doubted reading given once more is
   * believed.
   *
   * @param kpaGauge what the needle shows, kPa gauge
   * @return what is odd about it, null when it was taken
   */
  public @Nullable String enter(double kpaGauge) {
    Setting now = setting;
    if (now == null) {
      throw new IllegalStateException("no reading was asked for");
    }
    String doubt = doubt(now, kpaGauge);
    if (doubt != null && !(Math.abs(kpaGauge - doubtedKpa) <= resolutionKpa)) {
      doubtedKpa = kpaGauge;
      return doubt + " Read again; give the same number again if it is right.";
    }
    doubtedKpa = Double.NaN;
    taken++;
    take(now, kpaGauge);
    ReadingsPosterior known = posterior;
    setting = taken >= MOST_READINGS || record.stop ? null : choose();
    if (setting == null && known != null && !record.stop) {
      record.fit = known.result();
      record.completed.add(BenchStep.EDGES);
    }
    return null;
  }

  private void take(Setting now, double kpaGauge) {
    if (posterior == null) {
      record.rest = read(now, kpaGauge);
      record.completed.add(BenchStep.REST);
      record.stop = kpaGauge < LEAST_REST_KPA;
      if (!record.stop) {
        posterior = new ReadingsPosterior(AMBIENT_KPA + kpaGauge, AMBIENT_KPA);
      }
    } else if (now.dutyFraction() == 1.0) {
      record.energised = read(now, kpaGauge);
      record.completed.add(BenchStep.POLARITY);
      record.stop =
          kpaGauge - 0.5 * resolutionKpa > PolarityRoutine.EMPTY_SHARE * record.restKpaGauge();
    } else if (now.isPulse()) {
      lastPulseSeconds = now.pulseSeconds();
      if (lastPulseSeconds == 0.0) {
        shutKpaGauge = Math.max(kpaGauge, resolutionKpa);
        return;
      }
      pulseLeftShare = kpaGauge / shutKpaGauge;
      posterior.take(
          GaugeReading.afterPulse(now.pulseSeconds(), shutKpaGauge, kpaGauge, resolutionKpa));
    } else {
      record.sweepUp.add(read(now, kpaGauge));
      posterior.take(
          GaugeReading.working(now.frequencyHz(), now.dutyFraction(), kpaGauge, resolutionKpa));
    }
  }

  private Reading read(Setting now, double kpaGauge) {
    double abs = AMBIENT_KPA + kpaGauge;
    double sigma = 0.5 * resolutionKpa;
    return new Reading(
        now.frequencyHz(), now.dutyFraction(), true, 0.0, abs, sigma, abs, abs, sigma, 0.0);
  }

  private Setting choose() {
    ReadingsPosterior known = posterior;
    if (known == null || record.energised == null) {
      return new Setting(BenchPlan.LOWEST_HZ, 1.0, Double.NaN);
    }
    if (Double.isNaN(shutKpaGauge)) {
      return pulse(0.0);
    }
    if (lastPulseSeconds == 0.0 && Double.isNaN(pulseLeftShare)) {
      return pulse(FIRST_PULSE_SECONDS);
    }
    if (lastPulseSeconds == FIRST_PULSE_SECONDS && pulseLeftShare < EMPTY_SHARE) {
      return pulse(SHORT_PULSE_SECONDS);
    }
    if (lastPulseSeconds == FIRST_PULSE_SECONDS && pulseLeftShare > FULL_SHARE) {
      return pulse(LONG_PULSE_SECONDS);
    }
    lastPulseSeconds = 0.0;
    NextReading.Setting next =
        NextReading.choose(known, resolutionKpa, BenchPlan.DEFAULT_RIPPLE_LIMIT_KPA);
    return new Setting(next.frequencyHz(), next.dutyFraction(), Double.NaN);
  }

  private static Setting pulse(double seconds) {
    return new Setting(BenchPlan.LOWEST_HZ, 0.0, seconds);
  }

  private @Nullable String doubt(Setting now, double kpaGauge) {
    if (!(kpaGauge >= -resolutionKpa && kpaGauge <= BenchPlan.RELIEF_KPA_GAUGE)) {
      return text(
          "%.1f kPa gauge is outside 0 to %.0f; %s.",
          kpaGauge, BenchPlan.RELIEF_KPA_GAUGE, UnitGuess.forRatio(kpaGauge / USUAL_REST_KPA));
    }
    ReadingsPosterior known = posterior;
    if (known == null) {
      boolean likely = kpaGauge > USUAL_REST_KPA / 3.0 && kpaGauge < MANY_RESTS * USUAL_REST_KPA;
      return likely || kpaGauge <= resolutionKpa
          ? null
          : text(
              "%.1f kPa gauge is odd for a regulator set to 80 to 100; %s.",
              kpaGauge, UnitGuess.forRatio(kpaGauge / USUAL_REST_KPA));
    }
    double rest = record.restKpaGauge();
    if (kpaGauge > rest + 1.5 * resolutionKpa + 1.0) {
      return text(
          "%.1f kPa gauge is more than the supply, %.1f; %s.",
          kpaGauge, rest, UnitGuess.forRatio(kpaGauge / rest));
    }
    if (now.dutyFraction() == 1.0 || now.isPulse()) {
      return null;
    }
    GaugeReading reading =
        GaugeReading.working(now.frequencyHz(), now.dutyFraction(), kpaGauge, resolutionKpa);
    return known.belief(reading) < SLIP_BELIEF
        ? text("%.1f kPa gauge does not fit the readings before.", kpaGauge)
        : null;
  }

  private static String text(String format, Object... values) {
    return String.format(Locale.ROOT, format, values);
  }
}
