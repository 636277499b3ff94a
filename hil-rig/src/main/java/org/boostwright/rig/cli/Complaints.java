package org.boostwright.rig.cli;

import java.io.IOException;
import java.util.Arrays;
import java.util.List;
import org.boostwright.rig.result.ResultBuilder;
import org.boostwright.rig.result.ResultJson;
import picocli.CommandLine;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.ParseResult;
import picocli.CommandLine.UnmatchedArgumentException;

/**
 * Turns wrong use, unreadable input and defects into words, JSON where it was asked for, and exit
 * codes.
 */
final class Complaints {
  private final Terminal terminal;

  Complaints(Terminal terminal) {
    this.terminal = terminal;
  }

  /** The command line does not make sense. */
  int wrongOptions(ParameterException e, String[] args) {
    String command = e.getCommandLine().getCommandName();
    String help = e.getCommandLine().getCommandSpec().qualifiedName(" ") + " --help";
    StringBuilder next = new StringBuilder();
    if (e instanceof UnmatchedArgumentException unmatched) {
      List<String> suggestions = unmatched.getSuggestions();
      if (!suggestions.isEmpty()) {
        next.append("did you mean ").append(String.join(" or ", suggestions)).append("? ");
      }
    }
    next.append('\'').append(help).append("' shows what there is");
    String message = e.getMessage().lines().findFirst().orElse("wrong options");
    return complain(
        command, "wrong_use", message, next.toString(), asksForJson(args), ExitCode.WRONG_USE);
  }

  /** The command gave up. */
  int failure(Exception e, CommandLine commandLine, ParseResult parsed) {
    String command = commandLine.getCommandName();
    boolean json = asksForJson(parsed.originalArgs().toArray(String[]::new));
    if (e instanceof WrongUseException wrong) {
      String message = String.valueOf(wrong.getMessage());
      return complain(command, "wrong_use", message, wrong.next(), json, ExitCode.WRONG_USE);
    }
    if (e instanceof IOException) {
      String message = FileTrouble.words((IOException) e);
      return complain(command, "file_trouble", message, "", json, ExitCode.WRONG_USE);
    }
    e.printStackTrace(terminal.err());
    return complain(
        command,
        "internal_error",
        "a defect of Boostwright: " + e,
        "please report it with the lines above",
        json,
        ExitCode.INTERNAL);
  }

  private int complain(
      String command, String code, String message, String next, boolean json, int exitCode) {
    terminal.err().println(command + ": " + message);
    if (!next.isBlank()) {
      terminal.err().println("  next: " + next);
    }
    terminal.err().flush();
    if (json) {
      ResultBuilder result = new ResultBuilder(command).refuse(code, message, next);
      terminal.out().print(ResultJson.toJson(result.headline(message).build()));
      terminal.out().flush();
    }
    return exitCode;
  }

  private static boolean asksForJson(String[] args) {
    return Arrays.asList(args).contains("--json");
  }
}
