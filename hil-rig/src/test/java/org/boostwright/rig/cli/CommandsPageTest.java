package org.boostwright.rig.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import picocli.CommandLine;

/**
 * The page of commands is what the program says of itself. {@code -Dboostwright.write=true} writes
 * it anew.
 */
class CommandsPageTest {
  private static final Path PAGE =
      Path.of(System.getProperty("boostwright.root"), "docs", "commands.md");

  private static final String HEAD =
      """
      # Commands

      What every command says of itself (`./boostwright COMMAND --help`). The controller's own program, `drive`, is in [commands-pi.md](commands-pi.md).
      """;

  @Test
  void pageIsWhatTheProgramSays() throws Exception {
    Terminal terminal =
        new Terminal(
            new PrintWriter(new StringWriter()), new PrintWriter(new StringWriter()), false, false);
    CommandLine all = Boostwright.commandLine(terminal);
    StringBuilder page = new StringBuilder(HEAD);
    page.append(section("boostwright", all.getUsageMessage()));
    all.getSubcommands().forEach((name, c) -> page.append(section(name, c.getUsageMessage())));
    if (Boolean.getBoolean("boostwright.write")) {
      Files.writeString(PAGE, page);
    }
    assertThat(Files.readString(PAGE)).isEqualTo(page.toString());
  }

  private static String section(String name, String usage) {
    return "\n## " + name + "\n\n```\n" + usage.strip() + "\n```\n";
  }

  @Test
  void completionKnowsEveryCommandAndItsOptions() {
    StringWriter out = new StringWriter();
    int exit =
        Boostwright.run(
            new Terminal(new PrintWriter(out), new PrintWriter(new StringWriter()), false, false),
            "completion");
    assertThat(exit).isZero();
    assertThat(out.toString()).startsWith("#!/usr/bin/env bash");
    assertThat(out.toString()).contains("--altitude-m").contains("replay").contains("--readings");
  }
}
