package org.boostwright.rig.cli;

import java.util.concurrent.Callable;
import org.boostwright.rig.result.Result;
import org.boostwright.rig.result.ResultJson;
import picocli.CommandLine.Mixin;

/** What every command shares: run, keep, print, exit code. */
abstract class Subcommand implements Callable<Integer> {
  @Mixin OutputOptions output = new OutputOptions();

  final Terminal terminal;

  Subcommand(Terminal terminal) {
    this.terminal = terminal;
  }

  /**
   * Does the work.
   *
   * @throws WrongUseException for wrong use and unreadable input
   */
  abstract Outcome work(Progress progress) throws Exception;

  @Override
  public final Integer call() throws Exception {
    Outcome outcome;
    try (Progress progress = new Progress(terminal, output.quiet)) {
      outcome = work(progress);
    }
    Result result =
        outcome.run().isPresent()
            ? RunFolder.keep(outcome.result(), outcome.run().get())
            : outcome.result();
    print(result);
    return ExitCode.of(result.verdict());
  }

  /** Prints a finished result in the form that was asked for. */
  void print(Result result) {
    if (output.json) {
      terminal.out().print(ResultJson.toJson(result));
      terminal.out().flush();
    } else if (output.quiet) {
      new ResultPrinter(terminal).line(result);
    } else {
      new ResultPrinter(terminal).full(result);
    }
  }
}
