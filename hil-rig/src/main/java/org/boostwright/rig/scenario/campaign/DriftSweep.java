package org.boostwright.rig.scenario.campaign;

import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import org.boostwright.rig.inject.FaultKind;
import org.boostwright.rig.scenario.fault.Injection;

/**
 * A pressure sensor that reads low, amount by amount over the same draws of cars and drives: what is
 * reported, and how far true pressure goes. It maps the region that nobody sees.
 */
public final class DriftSweep {
  private DriftSweep() {}

  /** Since when the sensor reads low. */
  public enum Since {
    /** Since before key on: the engine is seen stopped with it. */
    KEY_ON("before key on", -1e3),
    /** From just before the first throttle of the drive. */
    DRIVING("while driving", 0.1);

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
   * @param amount how much, in the unit of the kind
   * @param since since when
   * @param runs drives
   * @param reported drives in which a fault was confirmed
   * @param unsafe drives that are unsafe by the campaign's definition
   * @param peakOverKpa highest true pressure over the limit, kPa
   * @param aboveSeconds longest time above the limit, s
   */
  public record Line(
      double amount,
      Since since,
      int runs,
      int reported,
      int unsafe,
      double peakOverKpa,
      double aboveSeconds) {}

  /**
   * Sweeps.
   *
   * @param plan what the draws are from; its runs are driven for each amount
   */
  public static List<Line> run(
      CampaignPlan plan, FaultKind kind, Since since, double[] amounts, int threads)
      throws InterruptedException {
    ExecutorService pool = Executors.newFixedThreadPool(threads);
    try {
      List<Future<Line>> futures = new ArrayList<>();
      for (double amount : amounts) {
        Injection drift =
            new Injection(kind, amount, since.fromSeconds, Double.POSITIVE_INFINITY);
        futures.add(pool.submit(() -> line(plan, drift, since)));
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

  private static Line line(CampaignPlan plan, Injection drift, Since since) {
    int runs = 0;
    int reported = 0;
    int unsafe = 0;
    double peak = Double.NEGATIVE_INFINITY;
    double above = 0.0;
    for (long index = 0; index < plan.runs(); index++) {
      CaseDraw draw = CaseDraw.of(plan, List.of(drift.kind()), index);
      if (!Double.isNaN(draw.setup().recirculationStuck())) {
        continue; // that alone makes it unsafe
      }
      CaseRow row = CaseRow.of(draw.withInjections(List.of(drift)));
      runs++;
      reported += row.reported() != 0L ? 1 : 0;
      boolean bad = row.verdict() == CaseVerdict.UNSAFE || row.verdict() == CaseVerdict.BROKEN;
      unsafe += bad ? 1 : 0;
      peak = Math.max(peak, row.peakOverKpa());
      above = Math.max(above, row.aboveSeconds());
    }
    return new Line(drift.amount(), since, runs, reported, unsafe, peak, above);
  }
}
