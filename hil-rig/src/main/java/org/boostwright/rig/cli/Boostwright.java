package org.boostwright.rig.cli;

import java.util.List;
import java.util.concurrent.Callable;
import org.boostwright.rig.result.ProgramVersion;
import picocli.CommandLine;
import picocli.CommandLine.Command;
import picocli.CommandLine.Help.Ansi;
import picocli.CommandLine.IVersionProvider;
import picocli.CommandLine.Model.CommandSpec;

/** The program people start; without a command it says what it is for and what to do first. */
@Command(
    name = "boostwright",
    mixinStandardHelpOptions = true,
    versionProvider = Boostwright.Version.class,
    description = {
      "Electronic boost control for a turbocharged project car, and the rig that proves it."
    },
    footer = {
      "",
      "Exit codes: 0 passed, 1 a verdict failed, 2 wrong use or unreadable input, 3 internal"
          + " error.",
      "'boostwright COMMAND --help' shows the options of a command; 'drive' and 'page-token', the",
      "controller's own program, are started the same way. NO_COLOR keeps colours away."
    })
public final class Boostwright implements Callable<Integer> {
  private final Terminal terminal;

  private Boostwright(Terminal terminal) {
    this.terminal = terminal;
  }

  /** Runs the command line and exits with its code. */
  public static void main(String[] args) {
    System.exit(run(Terminal.ofProcess(), args));
  }

  /** Runs a command line and returns its exit code. */
  static int run(Terminal terminal, String... args) {
    return commandLine(terminal).execute(args);
  }

  /** Every command, as the command line, the completion and the page of commands know them. */
  static CommandLine commandLine(Terminal terminal) {
    Complaints complaints = new Complaints(terminal);
    CommandLine commandLine = new CommandLine(new Boostwright(terminal));
    for (Subcommand command : commands(terminal)) {
      CommandLine child = new CommandLine(command);
      CommandSpec spec = child.getCommandSpec();
      spec.mixinStandardHelpOptions(true).versionProvider(new Version());
      spec.usageMessage()
          .synopsisHeading("%nUsage: ")
          .descriptionHeading("%n")
          .parameterListHeading("%n")
          .optionListHeading("%n");
      commandLine.addSubcommand(child);
    }
    commandLine
        .setOut(terminal.out())
        .setErr(terminal.err())
        .setUsageHelpWidth(Terminal.WIDTH)
        .setColorScheme(
            CommandLine.Help.defaultColorScheme(terminal.coloursOut() ? Ansi.ON : Ansi.OFF))
        .setParameterExceptionHandler(complaints::wrongOptions)
        .setExecutionExceptionHandler(complaints::failure);
    return commandLine.setCaseInsensitiveEnumValuesAllowed(true);
  }

  private static List<Subcommand> commands(Terminal terminal) {
    return List.of(
        new DemoCommand(terminal),
        new PlanCommand(terminal),
        new CardCommand(terminal),
        new FirstTableCommand(terminal),
        new CheckCommand(terminal),
        new CalibrateCommand(terminal),
        new StageCommand(terminal),
        new UpkeepCommand(terminal),
        new PullCommand(terminal),
        new ReplayCommand(terminal),
        new CorrectCommand(terminal),
        new GainsCommand(terminal),
        new BenchCommand(terminal),
        new FaultsCommand(terminal),
        new CarCommand(terminal),
        new WiringCommand(terminal),
        new RigCommand(terminal),
        new KernelBenchCommand(terminal),
        new ReportCommand(terminal),
        new CompletionCommand(terminal));
  }

  @Override
  public Integer call() {
    terminal
        .out()
        .println(
            """
            Boostwright sets up electronic boost control on a turbocharged project car: it proves
            valve, wiring, limits and tables on a virtual car and on the bench before anything
            reaches the engine.

            Start here:
              boostwright demo     the built-in project car in under a minute, with a report
              boostwright --help   all commands
            """);
    return ExitCode.PASSED;
  }

  /** Version as filled in by the build. */
  static final class Version implements IVersionProvider {
    @Override
    public String[] getVersion() {
      return new String[] {"boostwright " + ProgramVersion.get()};
    }
  }
}
