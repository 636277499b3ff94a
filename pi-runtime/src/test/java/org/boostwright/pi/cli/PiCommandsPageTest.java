package org.boostwright.pi.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import picocli.CommandLine;

/**
 * The page of this program's commands is what it says of itself, and every {@code drive} and {@code
 * bench --valve} in the docs is one it takes. {@code -Dboostwright.write=true} writes the page
 * anew.
 */
class PiCommandsPageTest {
  private static final Path DOCS = Path.of(System.getProperty("boostwright.root"), "docs");
  private static final Pattern LINE =
      Pattern.compile(
          "(?m)^(?:ExecStart=\\S*/|sudo \\S*/|\\./)?boostwright(?:-pi)?"
              + " ((?:drive|bench --valve) [^\\n#]+)");

  private static final String HEAD =
      """
      # Commands on the Pi

      What the controller's own program says of itself (`./boostwright drive --help`). The rig's commands are in [commands.md](commands.md).
      """;

  @Test
  void pageIsWhatTheProgramSays() throws IOException {
    StringBuilder page = new StringBuilder(HEAD);
    PiMain.commandLine()
        .getSubcommands()
        .forEach(
            (name, command) ->
                page.append("\n## ")
                    .append(name)
                    .append("\n\n```\n")
                    .append(command.getUsageMessage().strip())
                    .append("\n```\n"));
    Path file = DOCS.resolve("commands-pi.md");
    if (Boolean.getBoolean("boostwright.write")) {
      Files.writeString(file, page);
    }
    assertThat(Files.readString(file)).isEqualTo(page.toString());
  }

  @Test
  void everyDriveInTheDocsIsTaken() throws IOException {
    int checked = 0;
    List<Path> pages;
    try (Stream<Path> files = Files.list(DOCS)) {
      pages = files.filter(p -> p.toString().endsWith(".md")).sorted().toList();
    }
    for (Path page : pages) {
      Matcher line = LINE.matcher(Files.readString(page));
      while (line.find()) {
        CommandLine all = PiMain.commandLine();
        String[] words = line.group(1).replaceFirst(" {3,}.*", "").strip().split(" +");
        assertThat(all.parseArgs(words).subcommand().commandSpec().name())
            .as("%s: %s", page, line.group())
            .isEqualTo(words[0]);
        checked++;
      }
    }
    assertThat(checked).isGreaterThanOrEqualTo(3);
  }
}
