package org.boostwright.rig.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Map;
import org.boostwright.rig.result.ResultBuilder;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import picocli.CommandLine;
import picocli.CommandLine.Command;

/** Colours, progress, exit codes and completion as a shell meets them. */
class TerminalTest {
  private final StringWriter out = new StringWriter();
  private final StringWriter err = new StringWriter();
  private final Terminal plain =
      new Terminal(new PrintWriter(out), new PrintWriter(err), false, false);

  @ParameterizedTest
  @CsvSource({
    "'out,err', xterm, '', true, true",
    "'out,err', xterm, 1, false, true",
    "'out,err', dumb, '', false, false",
    "out, xterm, '', true, false",
    "err, xterm, '', false, true",
    "'', xterm, '', false, false",
  })
  void coloursNeedATerminalAndNoRequestAgainstThem(
      String streams, String term, String noColor, boolean colours, boolean moving) {
    Terminal terminal = Terminal.of(streams, Map.of("TERM", term, "NO_COLOR", noColor));
    assertThat(terminal.coloursOut()).isEqualTo(colours);
    assertThat(terminal.movingErr()).isEqualTo(moving);
    assertThat(terminal.good("x")).isEqualTo(colours ? "\u001B[32mx\u001B[0m" : "x");
  }

  @Test
  void longWorkSaysHowMuchIsLeftInPlainLinesWhereNothingCanMove() {
    try (Progress progress = new Progress(plain, false)) {
      progress.beginLong("faults", 100);
      for (int i = 1; i <= 100; i++) {
        progress.at(i);
      }
    }
    assertThat(err.toString().lines().toList()).hasSize(11).first().isEqualTo("faults");
    assertThat(err.toString()).contains("50 of 100").contains("s left");
    assertThat(out.toString()).isEmpty();
  }

  /** A command that passes, fails, or has a defect. */
  @Command(name = "fake")
  private static final class Fake extends Subcommand {
    private final String what;

    Fake(Terminal terminal, String what) {
      super(terminal);
      this.what = what;
    }

    @Override
    Outcome work(Progress progress) throws WrongUseException {
      ResultBuilder result = new ResultBuilder("fake").headline("done.");
      switch (what) {
        case "failed" -> result.refuse("no", "No.", "");
        case "wrong use" -> throw new WrongUseException("no such thing", "give another");
        case "defect" -> throw new IllegalStateException("defect");
        default -> {}
      }
      return Outcome.printed(result.build());
    }
  }

  @ParameterizedTest
  @CsvSource({"passed, 0", "failed, 1", "wrong use, 2", "defect, 3"})
  void exitCodeSaysWhatBecameOfIt(String what, int code) {
    CommandLine all = Boostwright.commandLine(plain);
    CommandLine fake = new CommandLine(new Fake(plain, what));
    fake.setExecutionExceptionHandler(all.getExecutionExceptionHandler());
    all.addSubcommand(fake);
    assertThat(all.execute("fake")).isEqualTo(code);
    assertThat(err.toString().isBlank()).isEqualTo(code < 2);
  }

  @Test
  void bashCompletesCommandsAndTheirOptions(@TempDir Path folder) throws Exception {
    Path bash = Path.of("/bin/bash");
    assumeTrue(Files.isExecutable(bash), "no bash");
    assertThat(Boostwright.run(plain, "completion")).isZero();
    Path script = Files.writeString(folder.resolve("completion"), out.toString());
    assertThat(completed(bash, script, "re")).contains("replay", "report").doesNotContain("pull");
    assertThat(completed(bash, script, "pull", "--al")).isEqualTo("--altitude-m");
  }

  private static String completed(Path bash, Path script, String... words) throws Exception {
    String line =
        String.format(
            "compopt() { :; }; source %s; COMP_WORDS=(boostwright %s); COMP_CWORD=%d;"
                + " _complete_boostwright; echo \"${COMPREPLY[@]}\"",
            script, String.join(" ", words), words.length);
    Process process =
        new ProcessBuilder(bash.toString(), "-c", line).redirectErrorStream(true).start();
    String said = new String(process.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
    assertThat(process.waitFor()).as(said).isZero();
    return said.strip();
  }
}
