package org.boostwright.rig.scenario.campaign;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.SplittableRandom;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.concurrent.atomic.AtomicLong;
import java.util.function.LongConsumer;
import org.boostwright.rig.inject.FaultKind;
import org.boostwright.rig.scenario.fault.Injection;

/**
 * Tries to make it unsafe: for each kind of fault the worst of some draws is pushed on, in moment,
 * amount and duration, by a random walk whose steps shrink and that keeps what is worse; then the
 * same for pairs of the kinds that came nearest to unsafe.
 *
 * <p>The measure is how far pressure went of what an unsafe run is allowed, in height or in time
 * above the limit, and beyond one where the coil was fed after the reaction time or a rule of every
 * tick was broken. The same plan finds the same, whatever the number of threads.
 */
public final class WorstSearch {
  private static final double OVER_KPA = 12.0;
  private static final double OVER_SECONDS = 0.250;
  private static final double FIRST_STEP = 0.3;
  private static final double LAST_STEP = 0.01;
  private static final double DRAWN = 0.4;
  private static final double SINGLES = 0.6;
  private static final int WORST_KINDS = 8;

  private WorstSearch() {}

  /**
   * The worst that was found for one kind or pair.
   *
   * @param row what came of it
   * @param measure 1 = the border of unsafe
   */
  public record Found(CaseRow row, double measure) {}

  /** The worst of each kind, then of pairs, worst first in each. */
  public record Outcome(List<Found> singles, List<Found> pairs, long runs) {}

  /** Spends about {@code plan.runs()} runs. */
  public static Outcome run(CampaignPlan plan, int threads, LongConsumer progress)
      throws InterruptedException {
    List<FaultKind> kinds =
        plan.kinds().stream().filter(FaultKind::controllable).toList();
    if (kinds.isEmpty()) {
      throw new IllegalArgumentException(
          "nothing to search: only an engine cut could stop these faults");
    }
    AtomicLong spent = new AtomicLong();
    LongConsumer count = one -> progress.accept(Math.min(plan.runs(), spent.addAndGet(one)));
    int each = (int) Math.max(4.0, SINGLES * plan.runs() / kinds.size());
    List<List<FaultKind>> tasks = new ArrayList<>();
    kinds.forEach(kind -> tasks.add(List.of(kind)));
    List<Found> singles = all(plan, tasks, each, threads, count);
    List<Found> worst = singles.subList(0, Math.min(WORST_KINDS, singles.size()));
    List<List<FaultKind>> pairs = new ArrayList<>();
    for (Found a : worst) {
      for (Found b : worst) {
        if (a != b) {
          pairs.add(List.of(kind(kinds, a), kind(kinds, b)));
        }
      }
    }
    int rest = (int) Math.max(4.0, (1.0 - SINGLES) * plan.runs() / Math.max(1, pairs.size()));
    List<Found> found = all(plan, pairs, rest, threads, count);
    return new Outcome(singles, found, spent.get());
  }

  private static FaultKind kind(List<FaultKind> kinds, Found found) {
    String id = found.row().faults().get(0).id();
    return kinds.stream().filter(k -> k.id().equals(id)).findFirst().orElseThrow();
  }

  private static List<Found> all(
      CampaignPlan plan,
      List<List<FaultKind>> tasks,
      int runs,
      int threads,
      LongConsumer count)
      throws InterruptedException {
    ExecutorService pool = Executors.newFixedThreadPool(threads);
    try {
      List<Future<Found>> futures = new ArrayList<>();
      for (int t = 0; t < tasks.size(); t++) {
        List<FaultKind> kinds = tasks.get(t);
        long task = t;
        futures.add(pool.submit(() -> worst(plan, kinds, task, runs, count)));
      }
      List<Found> found = new ArrayList<>();
      for (Future<Found> future : futures) {
        found.add(future.get());
      }
      found.sort(Comparator.comparingDouble(Found::measure).reversed());
      return List.copyOf(found);
    } catch (ExecutionException e) {
      throw new IllegalStateException("a run ended with " + e.getCause(), e.getCause());
    } finally {
      pool.shutdownNow();
    }
  }

  private static Found worst(
      CampaignPlan plan, List<FaultKind> kinds, long task, int runs, LongConsumer count) {
    SplittableRandom random = new SplittableRandom(plan.seed() * 1_000_003L + task);
    int draws = (int) Math.max(2.0, DRAWN * runs);
    CaseDraw best = null;
    Found worst = null;
    for (int i = 0; i < runs; i++) {
      CaseDraw next;
      if (i < draws || best == null) {
        next = CaseDraw.of(plan, kinds, task * runs + i);
      } else {
        double share = (double) (i - draws) / Math.max(1, runs - draws);
        next = moved(best, FIRST_STEP * Math.pow(LAST_STEP / FIRST_STEP, share), random);
      }
      CaseRow row = CaseRow.of(next);
      count.accept(1L);
      Found found = new Found(row, measure(row));
      if (worst == null || found.measure() > worst.measure()) {
        worst = found;
        best = next;
      }
    }
    return worst == null ? new Found(CaseRow.of(CaseDraw.of(plan, kinds, task)), 0.0) : worst;
  }

  private static CaseDraw moved(CaseDraw from, double step, SplittableRandom random) {
    List<Injection> injections = new ArrayList<>();
    for (Injection i : from.injections()) {
      double range = i.kind().amount().high() - i.kind().amount().low();
      double amount = i.amount() + range * step * either(random);
      amount = Math.max(i.kind().amount().low(), Math.min(i.kind().amount().high(), amount));
      double seconds = from.setup().drive().seconds();
      double at = i.fromSeconds() + seconds * step * either(random);
      at = Math.max(-6.0, Math.min(seconds - 0.5, at));
      double length = i.untilSeconds() - i.fromSeconds();
      length = Double.isInfinite(length) ? length : length * Math.exp(2.0 * step * either(random));
      injections.add(new Injection(i.kind(), amount, at, at + length));
    }
    return from.withInjections(injections);
  }

  private static double either(SplittableRandom random) {
    return 2.0 * random.nextDouble() - 1.0;
  }

  private static double measure(CaseRow row) {
    if (row.verdict() == CaseVerdict.APART || row.verdict() == CaseVerdict.INVALID) {
      return -1.0;
    }
    double pressure = Math.max(row.peakOverKpa() / OVER_KPA, row.aboveSeconds() / OVER_SECONDS);
    boolean rule =
        row.verdict() == CaseVerdict.BROKEN || row.why().equals(CaseRow.DUTY_AFTER_REACTION);
    return rule ? 1.0 + Math.max(0.0, pressure) : pressure;
  }
}
