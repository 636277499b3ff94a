package org.boostwright.rig.scenario.campaign;

import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.concurrent.atomic.AtomicLong;
import java.util.function.LongConsumer;
import org.boostwright.rig.inject.FaultKind;
import org.boostwright.rig.scenario.fault.Injection;

/**
 * A pressure sensor that is off, amount by amount over the same draws of cars and drives: what is
 * reported, and how far true pressure goes. It maps the region that nobody sees (S5).
 */
public final class DriftSweep {
  private static final double[] SCALES = {1.2, 1.1, 1.0, 0.97, 0.94, 0.9, 0.86, 0.82, 0.78, 0.7};
  private static final double[] OFFSETS_KPA = {20.0, 10.0, -5.0, -10.0, -15.0, -20.0, -30.0, -45.0};

  private DriftSweep() {}

  /** Since when the sensor is off. */
  public enum Since {
    /** Since before key on: the engine is seen stopped with it. */
    KEY_ON("before key on", -1e3),
    /** From just before the first throttle of the drive. */
    DRIVING("just before the throttle opens", 0.1);

    private final String words;
    private final double fromSeconds;

    Since(String words, double fromSeconds) {
      this.words = words;
      this.fromSeconds = fromSeconds;
    }

    /** In words. */
    public String words() {
      return words;
    }
  }

  /**
   * One amount over all draws.
   *
   * @param drift kind and amount
   * @param since since when
   * @param runs drives
   * @param reported drives in which a fault was confirmed
   * @param unsafe drives that are unsafe by the campaign's definition
   * @param peakOverKpa highest true pressure over the limit, kPa
   * @param aboveSeconds longest time above the limit, s
   */
  public record Line(
      Injection drift,
      Since since,
      int runs,
      int reported,
      int unsafe,
      double peakOverKpa,
      double aboveSeconds) {}

  /** Lines that {@link #run} gives. */
  public static int size() {
    return Since.values().length * (SCALES.length + OFFSETS_KPA.length);
  }

  /**
   * Sweeps gain and offset.
   *
   * @param plan what the draws are from, with the kinds to sweep; its runs are driven for each line
   * @param progress told the lines that are done
   */
  public static List<Line> run(CampaignPlan plan, int threads, LongConsumer progress)
      throws InterruptedException {
    AtomicLong done = new AtomicLong();
    ExecutorService pool = Executors.newFixedThreadPool(threads);
    try {
      List<Future<Line>> futures = new ArrayList<>();
      for (FaultKind kind : plan.kinds()) {
        for (Since since : Since.values()) {
          for (double amount : amounts(kind)) {
            Injection drift =
                new Injection(kind, amount, since.fromSeconds, Double.POSITIVE_INFINITY);
            futures.add(
                pool.submit(
                    () -> {
                      Line line = line(plan, drift, since);
                      progress.accept(done.incrementAndGet());
                      return line;
                    }));
          }
        }
      }
      List<Line> lines = new ArrayList<>();
      for (Future<Line> future : futures) {
        lines.add(future.get());
      }
      return List.copyOf(lines);
    } catch (ExecutionException e) {
      throw new IllegalStateException("a run ended with " + e.getCause(), e.getCause());
    } finally {
      pool.shutdownNow();
    }
  }

  private static double[] amounts(FaultKind kind) {
    return switch (kind.id()) {
      case "s5_map_scale" -> SCALES;
      case "s5_map_offset" -> OFFSETS_KPA;
      default -> throw new IllegalArgumentException(kind.id() + " is no drift of the sensor");
    };
  }

  private static Line line(CampaignPlan plan, Injection drift, Since since) {
    int runs = 0;
    int reported = 0;
    int unsafe = 0;
    double peak = Double.NEGATIVE_INFINITY;
    double above = 0.0;
    for (long index = 0; index < plan.runs(); index++) {
      CaseDraw draw = CaseDraw.of(plan, List.of(drift.kind()), index);
      if (!Double.isNaN(draw.setup().recirculationStuck())) {
        continue; // its spikes are another fault's
      }
      CaseRow row = CaseRow.of(draw.withInjections(List.of(drift)));
      runs++;
      reported += row.reported() != 0L ? 1 : 0;
      boolean bad = row.verdict() == CaseVerdict.UNSAFE || row.verdict() == CaseVerdict.BROKEN;
      unsafe += bad ? 1 : 0;
      peak = Math.max(peak, row.peakOverKpa());
      above = Math.max(above, row.aboveSeconds());
    }
    return new Line(drift, since, runs, reported, unsafe, peak, above);
  }
}
