package org.boostwright.rig.cli;

import java.io.IOException;
import java.util.Arrays;
import java.util.List;
import org.boostwright.rig.result.Finding;
import org.boostwright.rig.result.ResultBuilder;
import org.boostwright.rig.result.ResultJson;
import org.boostwright.rig.result.SafeText;
import org.boostwright.rig.result.Severity;
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
        command,
        message,
        List.of(new Finding("wrong_use", Severity.PROBLEM, message, next.toString())),
        asksForJson(args),
        ExitCode.WRONG_USE);
  }

  /** The command gave up. */
  int failure(Exception e, CommandLine commandLine, ParseResult parsed) {
    String command = commandLine.getCommandName();
    boolean json = asksForJson(parsed.originalArgs().toArray(String[]::new));
    String message;
    List<Finding> findings;
    int exitCode = ExitCode.WRONG_USE;
    if (e instanceof WrongUseException wrong) {
      message = String.valueOf(wrong.getMessage());
      findings = wrong.findings();
    } else if (e instanceof IOException io) {
      message = FileTrouble.words(io);
      findings = List.of(new Finding("file_trouble", Severity.PROBLEM, message, ""));
    } else {
      e.printStackTrace(terminal.err());
      message = "a defect of Boostwright: " + e;
      String next = "please report it with the lines above";
      findings = List.of(new Finding("internal_error", Severity.PROBLEM, message, next));
      exitCode = ExitCode.INTERNAL;
    }
    return complain(command, message, findings, json, exitCode);
  }

  private int complain(
      String command, String message, List<Finding> findings, boolean json, int exitCode) {
    terminal.err().println(command + ": " + SafeText.visible(message));
    for (Finding finding : findings) {
      if (!finding.text().equals(message)) {
        terminal.err().println("  " + SafeText.visible(finding.text()));
      }
      if (!finding.next().isBlank()) {
        terminal.err().println("  next: " + SafeText.visible(finding.next()));
      }
    }
    terminal.err().flush();
    if (json) {
      ResultBuilder result = new ResultBuilder(command).headline(message).refused();
      findings.forEach(result::add);
      terminal.out().print(ResultJson.toJson(result.build()));
      terminal.out().flush();
    }
    return exitCode;
  }

  private static boolean asksForJson(String[] args) {
    return Arrays.asList(args).contains("--json");
  }
}
