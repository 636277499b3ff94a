package org.boostwright.rig.cli;

import java.util.Locale;
import me.tongfei.progressbar.ConsoleProgressBarConsumer;
import me.tongfei.progressbar.ProgressBar;
import me.tongfei.progressbar.ProgressBarBuilder;
import me.tongfei.progressbar.ProgressBarStyle;
import org.jspecify.annotations.Nullable;

/**
 * How far a command has come, on standard error only: a moving bar on a terminal, one plain line
 * for each step elsewhere, nothing with {@code --quiet}.
 */
final class Progress implements AutoCloseable {
  private final Terminal terminal;
  private final boolean quiet;
  private @Nullable ProgressBar bar;
  private long size;
  private long begunNanos;
  private long saidPercent;
  private boolean plain;

  Progress(Terminal terminal, boolean quiet) {
    this.terminal = terminal;
    this.quiet = quiet;
  }

  /** Begins a step of the given size; ends the one before. */
  void begin(String what, long steps) {
    begin(what, steps, false);
  }

  /**
   * Begins a step that takes minutes: with the time left, and elsewhere than on a terminal with a
   * line for every tenth.
   */
  void beginLong(String what, long steps) {
    begin(what, steps, true);
  }

  private void begin(String what, long steps, boolean takesMinutes) {
    close();
    if (quiet) {
      return;
    }
    if (terminal.movingErr()) {
      ProgressBarBuilder builder =
          new ProgressBarBuilder()
              .setTaskName(what)
              .setInitialMax(steps)
              .setStyle(ProgressBarStyle.ASCII)
              .setUpdateIntervalMillis(100)
              .setConsumer(new ConsoleProgressBarConsumer(System.err, Terminal.WIDTH));
      bar = (takesMinutes ? builder : builder.hideEta()).build();
    } else {
      terminal.err().println(what);
      plain = takesMinutes;
      size = steps;
      begunNanos = System.nanoTime();
      saidPercent = 0;
    }
  }

  /** How much of the step is done; may be called from any thread. */
  synchronized void at(long done) {
    if (bar != null) {
      bar.stepTo(done);
    } else if (plain && 100 * done / size >= saidPercent + 10) {
      saidPercent = 100 * done / size;
      double seconds = (System.nanoTime() - begunNanos) * 1e-9;
      terminal
          .err()
          .printf(
              Locale.ROOT,
              "  %d of %d, %.0f s left%n",
              done,
              size,
              seconds * (size - done) / Math.max(1L, done));
      terminal.err().flush();
    }
  }

  /** Ends the step. */
  @Override
  public void close() {
    plain = false;
    if (bar != null) {
      bar.stepTo(bar.getMax());
      bar.close();
      bar = null;
    }
  }
}
