package org.boostwright.rig.cli;

import me.tongfei.progressbar.ConsoleProgressBarConsumer;
import me.tongfei.progressbar.ProgressBar;
import me.tongfei.progressbar.ProgressBarBuilder;
import me.tongfei.progressbar.ProgressBarStyle;
import org.jspecify.annotations.Nullable;

/**
 * How far a command has come, on standard error only: a moving bar with the time left on a
 * terminal, one plain line for each step elsewhere, nothing with {@code --quiet}.
 */
final class Progress implements AutoCloseable {
  private final Terminal terminal;
  private final boolean quiet;
  private @Nullable ProgressBar bar;

  Progress(Terminal terminal, boolean quiet) {
    this.terminal = terminal;
    this.quiet = quiet;
  }

  /** Begins a step of the given size; ends the one before. */
  void begin(String what, long size) {
    close();
    if (quiet) {
      return;
    }
    if (terminal.movingErr()) {
      ProgressBarBuilder builder =
          new ProgressBarBuilder()
              .setTaskName(what)
              .setInitialMax(size)
              .setStyle(ProgressBarStyle.ASCII)
              .setUpdateIntervalMillis(100)
              .setConsumer(new ConsoleProgressBarConsumer(System.err, Terminal.WIDTH));
      // A step of one piece has no pace that would tell the time left.
      bar = (size > 1 ? builder : builder.hideEta()).build();
    } else {
      terminal.err().println(what);
    }
  }

  /** How much of the step is done. */
  void at(long done) {
    if (bar != null) {
      bar.stepTo(done);
    }
  }

  /** Ends the step. */
  @Override
  public void close() {
    if (bar != null) {
      bar.stepTo(bar.getMax());
      bar.close();
      bar = null;
    }
  }
}
