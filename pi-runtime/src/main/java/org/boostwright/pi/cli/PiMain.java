package org.boostwright.pi.cli;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.util.List;
import java.util.Properties;
import org.boostwright.pi.io.SysfsPlaces;
import org.boostwright.pi.io.SysfsPwm;
import picocli.CommandLine;
import picocli.CommandLine.Command;
import picocli.CommandLine.IVersionProvider;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Spec;

/** The program on the Pi. The first thing it does, before anything is parsed, is coil off. */
@Command(
    name = "boostwright",
    mixinStandardHelpOptions = true,
    versionProvider = PiMain.Version.class,
    description = "Boostwright on the Raspberry Pi.")
public final class PiMain implements Runnable {
  @Spec CommandSpec spec;

  private PiMain() {}

  /** Runs a command line and exits with its code. */
  public static void main(String[] args) {
    List<String> troubles = SysfsPwm.allOff(SysfsPlaces.SYSTEM.pwm());
    for (String trouble : troubles) {
      System.err.println("boostwright: a PWM channel could not be switched off: " + trouble);
    }
    System.exit(run(args));
  }

  /** Runs a command line and returns its exit code. */
  static int run(String... args) {
    return commandLine().execute(args);
  }

  /** Every command of this program. */
  static CommandLine commandLine() {
    CommandLine commandLine = new CommandLine(new PiMain());
    commandLine.addSubcommand(new DriveCommand());
    commandLine.addSubcommand(new BenchCommand());
    commandLine.addSubcommand(new PageTokenCommand());
    commandLine.setUsageHelpWidth(100);
    commandLine.setParameterExceptionHandler(PiMain::wrongUse);
    commandLine.setExecutionExceptionHandler(PiMain::failure);
    return commandLine;
  }

  private static int wrongUse(ParameterException e, String[] args) {
    System.err.println("boostwright: " + e.getMessage());
    System.err.println(
        "  next: '"
            + e.getCommandLine().getCommandSpec().qualifiedName(" ")
            + " --help' shows what"
            + " there is");
    return PiExit.WRONG_USE;
  }

  private static int failure(Exception e, CommandLine line, CommandLine.ParseResult parsed) {
    if (e instanceof IOException) {
      System.err.println(line.getCommandName() + ": " + e.getMessage());
      return PiExit.WRONG_USE;
    }
    e.printStackTrace();
    System.err.println(line.getCommandName() + ": a defect of Boostwright; please report it");
    return PiExit.INTERNAL;
  }

  @Override
  public void run() {
    throw new ParameterException(spec.commandLine(), "a command is needed");
  }

  /** Version as filled in by the build. */
  static final class Version implements IVersionProvider {
    /** For example {@code 0.1.0}. */
    static String get() {
      Properties properties = new Properties();
      try (InputStream in =
          PiMain.class.getResourceAsStream("/org/boostwright/pi/version.properties")) {
        if (in != null) {
          properties.load(in);
        }
      } catch (IOException e) {
        throw new UncheckedIOException(e);
      }
      String version = properties.getProperty("version", "unbuilt");
      return version.startsWith("$") ? "unbuilt" : version;
    }

    @Override
    public String[] getVersion() {
      return new String[] {"boostwright " + get()};
    }
  }
}
