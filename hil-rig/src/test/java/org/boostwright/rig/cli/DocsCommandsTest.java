package org.boostwright.rig.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.boostwright.core.monitor.FaultCode;
import org.boostwright.core.monitor.FaultWords;
import org.junit.jupiter.api.Test;
import picocli.CommandLine;
import picocli.CommandLine.ParameterException;

/**
 * Every command line in README and docs is one the program takes, and every link leads somewhere.
 * {@code .ci/docs} runs them in a fresh clone.
 */
class DocsCommandsTest {
  private static final Path ROOT = Path.of(System.getProperty("boostwright.root"));
  private static final Pattern LINE = Pattern.compile("(?:^|`)(?:\\./)?boostwright +([a-z][^`]*)");
  private static final Pattern LINK = Pattern.compile("\\]\\(([^)#:]+)(#[^)]*)?\\)");

  /** Commands of the other program; its own test looks after them. */
  private static final List<String> OTHERS = List.of("drive", "page-token");

  private static List<Path> pages() throws IOException {
    List<Path> pages = new ArrayList<>(List.of(ROOT.resolve("README.md")));
    pages.add(ROOT.resolve("DEVELOPERS.md"));
    pages.add(ROOT.resolve("wiring/README.md"));
    try (Stream<Path> docs = Files.list(ROOT.resolve("docs"))) {
      docs.filter(p -> p.toString().endsWith(".md")).sorted().forEach(pages::add);
    }
    return pages;
  }

  /** Words of a command line; what follows two blanks or a hash is a remark. */
  private static String[] words(String line) {
    String command = line.replaceFirst("( {2,}| #).*", "").replaceFirst(" *[>|].*", "");
    List<String> words = new ArrayList<>();
    Matcher word = Pattern.compile("\"([^\"]*)\"|(\\S+)").matcher(command);
    while (word.find()) {
      words.add(word.group(1) != null ? word.group(1) : word.group(2));
    }
    return words.toArray(String[]::new);
  }

  @Test
  void everyCommandLineInTheDocsIsTaken() throws IOException {
    PrintWriter nowhere = new PrintWriter(new StringWriter());
    CommandLine all = Boostwright.commandLine(new Terminal(nowhere, nowhere, false, false));
    int checked = 0;
    for (Path page : pages()) {
      for (String text : Files.readAllLines(page)) {
        Matcher line = LINE.matcher(text);
        while (line.find()) {
          String[] words = words(line.group(1));
          if (words.length == 0 || OTHERS.contains(words[0]) || isPlaceholder(words)) {
            continue;
          }
          boolean mention = words.length == 1 && line.group().startsWith("`");
          try {
            all.parseArgs(mention ? new String[] {words[0], "--help"} : words);
          } catch (ParameterException e) {
            throw new AssertionError(page + ": " + line.group() + ": " + e.getMessage(), e);
          }
          checked++;
        }
      }
    }
    assertThat(checked).isGreaterThan(30);
  }

  private static boolean isPlaceholder(String[] words) {
    return String.join(" ", words)
        .matches(".*(\\bLOG\\b|\\bRUN\\b|\\bPART\\b|\\bP\\b|\\.\\.\\.).*");
  }

  @Test
  void everyLinkInTheDocsLeadsToAFile() throws IOException {
    for (Path page : pages()) {
      String text = Files.readString(page).replaceAll("(?s)```.*?```", "");
      Matcher link = LINK.matcher(text);
      while (link.find()) {
        assertThat(page.resolveSibling(link.group(1))).as("%s: %s", page, link.group()).exists();
      }
    }
  }

  /** {@code -Dboostwright.write=true} writes the table anew. */
  @Test
  void everyFaultStandsInTheChapterOnTroubles() throws IOException {
    Path file = ROOT.resolve("docs/troubles.md");
    StringBuilder table = new StringBuilder("| id | meaning | look at |\n|---|---|---|\n");
    for (FaultCode code : FaultCode.values()) {
      FaultWords words = FaultWords.of(code);
      table.append("| `").append(code.id()).append("` | ").append(words.meaning());
      table.append(" | ").append(words.next()).append(" |\n");
    }
    String page = Files.readString(file);
    String expected = page.substring(0, page.indexOf("| id |")) + table;
    if (Boolean.getBoolean("boostwright.write")) {
      Files.writeString(file, expected);
    }
    assertThat(Files.readString(file)).isEqualTo(expected);
  }
}
