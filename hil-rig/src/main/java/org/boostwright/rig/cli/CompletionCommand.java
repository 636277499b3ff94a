package org.boostwright.rig.cli;

import org.boostwright.rig.result.Result;
import org.boostwright.rig.result.ResultBuilder;
import picocli.AutoComplete;
import picocli.CommandLine.Command;

/** Prints what a shell needs to complete commands and options. */
@Command(
    name = "completion",
    header = "Print the completion script for bash or zsh.",
    description = "Print a script that completes commands and options with the tabulator key.",
    footer = {
      "",
      "Examples:",
      "  source <(./boostwright completion)                       this shell only",
      "  ./boostwright completion > ~/.local/share/bash-completion/completions/boostwright",
      "",
      "zsh needs 'autoload -U +X bashcompinit && bashcompinit' before."
    })
final class CompletionCommand extends Subcommand {
  CompletionCommand(Terminal terminal) {
    super(terminal);
  }

  @Override
  Outcome work(Progress progress) {
    return Outcome.printed(
        new ResultBuilder("completion").headline("The script completes every command.").build());
  }

  @Override
  void print(Result result) {
    if (output.json || output.quiet) {
      super.print(result);
    } else {
      terminal.out().print(AutoComplete.bash("boostwright", Boostwright.commandLine(terminal)));
      terminal.out().flush();
    }
  }
}
