package org.boostwright.rig.scenario.campaign;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.SortedMap;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.concurrent.atomic.AtomicLong;
import java.util.function.LongConsumer;

/** Runs a campaign on all cores, or a share of one, and keeps its rows in a folder. */
public final class Campaign {
  private final CampaignPlan plan;
  private final Shard shard;
  private final Path folder;
  private final int threads;

  /**
   * @param folder where rows are kept; a stopped campaign in it goes on
   * @param threads how many runs at a time; the rows do not depend on it
   */
  public Campaign(CampaignPlan plan, Shard shard, Path folder, int threads) {
    this.plan = plan;
    this.shard = shard;
    this.folder = folder;
    this.threads = threads;
  }

  /** How many runs this share has. */
  public long size() {
    long full = plan.runs() / shard.of();
    return full + (plan.runs() % shard.of() >= shard.number() ? 1 : 0);
  }

  /**
   * Runs what is not done yet.
   *
   * @param campaign words that say which campaign this is; rows of another one are refused
   * @param progress told how many runs are done
   * @return every row of the share, in order of its number
   */
  public List<CaseRow> run(String campaign, LongConsumer progress)
      throws IOException, OtherCampaignException, InterruptedException {
    Files.createDirectories(folder);
    SortedMap<Long, CaseRow> known = RowFile.unfinished(folder, campaign);
    List<Long> todo = new ArrayList<>();
    for (long i = 0; i < plan.runs(); i++) {
      if (shard.has(i) && !known.containsKey(i)) {
        todo.add(i);
      }
    }
    CaseRow[] fresh = new CaseRow[todo.size()];
    try (RowFile.Appender appender = new RowFile.Appender(folder, campaign, known)) {
      runAll(todo, fresh, appender, known.size(), progress);
    }
    for (CaseRow row : fresh) {
      known.put(row.index(), row);
    }
    List<CaseRow> rows = List.copyOf(known.values());
    RowFile.finish(folder, campaign, rows);
    return rows;
  }

  private void runAll(
      List<Long> todo,
      CaseRow[] fresh,
      RowFile.Appender appender,
      long already,
      LongConsumer progress)
      throws InterruptedException {
    AtomicInteger next = new AtomicInteger();
    AtomicLong done = new AtomicLong(already);
    ExecutorService pool = Executors.newFixedThreadPool(threads);
    try {
      List<Future<?>> workers = new ArrayList<>();
      for (int t = 0; t < threads; t++) {
        workers.add(
            pool.submit(
                () -> {
                  for (int i = next.getAndIncrement();
                      i < fresh.length && !Thread.currentThread().isInterrupted();
                      i = next.getAndIncrement()) {
                    fresh[i] = CaseRow.of(CaseDraw.of(plan, todo.get(i)));
                    keep(appender, fresh[i]);
                    progress.accept(done.incrementAndGet());
                  }
                }));
      }
      for (Future<?> worker : workers) {
        worker.get();
      }
    } catch (ExecutionException e) {
      throw new IllegalStateException("a run ended with " + e.getCause(), e.getCause());
    } finally {
      pool.shutdownNow();
    }
  }

  private static void keep(RowFile.Appender appender, CaseRow row) {
    try {
      appender.add(row);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }
}
