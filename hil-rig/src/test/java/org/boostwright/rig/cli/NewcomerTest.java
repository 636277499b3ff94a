package org.boostwright.rig.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import picocli.CommandLine;

/**
 * No command of README and docs is overlooked: {@code .ci/docs}, which {@code .ci/run} starts, runs
 * each in a fresh clone, and what it has to pass over is parsed here.
 */
class NewcomerTest {
  private static final Path ROOT = Path.of(System.getProperty("boostwright.root"));
  private static final Path BASH = Path.of("/bin/bash");

  /** A block without a language: commands, or a picture in letters. */
  private static final Pattern BLOCK = Pattern.compile("(?ms)^```(\\S*)\\n(.*?)^```$");

  /** How a line of a picture, a frame or a boot file begins; every other line is a command. */
  private static final Pattern NO_COMMAND =
      Pattern.compile(
          "^( |$|#|dt(param|overlay)=|00 |body =|\\d|frequency_hz,"
              + "|(controller-core|hil-rig|pi-runtime|docs)/ ).*");

  private record Listed(String fate, String page, String line) {}

  private static List<Listed> listed() throws Exception {
    assumeTrue(Files.isExecutable(BASH), "no bash");
    Process script =
        new ProcessBuilder(BASH.toString(), ROOT.resolve(".ci/docs").toString(), "--list").start();
    String text = new String(script.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
    assertThat(script.waitFor()).isZero();
    return text.lines()
        .map(line -> line.split("\t", 3))
        .map(words -> new Listed(words[0], words[1], words[2]))
        .toList();
  }

  /** Lines of the blocks without a language that are commands, the way a reader sees them. */
  private static List<String> commands(Path page) throws IOException {
    List<String> commands = new ArrayList<>();
    Matcher block = BLOCK.matcher(Files.readString(page));
    while (block.find()) {
      if (!block.group(1).isEmpty()) {
        continue; // TOML and ini: their own tests read them
      }
      for (String line : block.group(2).replaceAll("\\\\\\n *", "").split("\n")) {
        if (!NO_COMMAND.matcher(line).matches()) {
          commands.add(line.replaceFirst(" {3,}.*| +#.*", ""));
        }
      }
    }
    return commands;
  }

  @Test
  void everyCommandOfReadmeAndDocsIsListed() throws Exception {
    List<Listed> listed = listed();
    List<String> pages = new ArrayList<>(List.of("README.md", "DEVELOPERS.md", "wiring/README.md"));
    try (Stream<Path> docs = Files.list(ROOT.resolve("docs"))) {
      docs.map(page -> "docs/" + page.getFileName())
          // What the programs say of themselves, with examples DocsCommandsTest parses.
          .filter(page -> page.endsWith(".md") && !page.matches("docs/commands(-pi)?\\.md"))
          .sorted()
          .forEach(pages::add);
    }
    for (String page : pages) {
      assertThat(listed.stream().filter(l -> l.page().equals(page)).map(Listed::line))
          .as(page)
          .containsExactlyElementsOf(commands(ROOT.resolve(page)));
    }
    long ran = listed.stream().filter(l -> l.fate().equals("run")).count();
    System.out.printf(
        "%d commands in the docs: %d run, %d parsed%n", listed.size(), ran, listed.size() - ran);
    assertThat(ran).isGreaterThan(20);
  }

  @Test
  void whatIsPassedOverIsTakenByTheShellAndByTheProgram() throws Exception {
    PrintWriter nowhere = new PrintWriter(new StringWriter());
    CommandLine all = Boostwright.commandLine(new Terminal(nowhere, nowhere, false, false));
    int parsed = 0;
    for (Listed each : listed()) {
      if (each.fate().equals("run")) {
        continue;
      }
      Process shell = new ProcessBuilder(BASH.toString(), "-n", "-c", each.line()).start();
      assertThat(shell.waitFor()).as(each.line()).isZero();
      String[] words = each.line().split(" +");
      // Programs on the Pi, 'drive' and 'bench --valve pi', have a test beside them.
      if (words[0].equals("./boostwright") && !each.fate().equals("the car")) {
        all.parseArgs(List.of(words).subList(1, words.length).toArray(String[]::new));
      }
      for (String file : each.line().startsWith("sudo cp ") ? words : new String[0]) {
        if (file.matches("(docs|pi-runtime/(bin|service)).*")) {
          assertThat(ROOT.resolve(file)).exists();
        }
      }
      parsed++;
    }
    assertThat(parsed).isPositive();
  }
}
