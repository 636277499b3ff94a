package org.boostwright.rig.link;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A program as a child: frozen, killed, started again. */
@Tag("T2")
class RuntimeProcessTest {
  @TempDir Path folder;

  private static char state(long pid) throws IOException {
    String stat = Files.readString(Path.of("/proc/" + pid + "/stat"));
    return stat.charAt(stat.lastIndexOf(')') + 2);
  }

  @Test
  void itIsFrozenGoesOnIsKilledAndStartedAgain() throws IOException {
    try (RuntimeProcess program =
        new RuntimeProcess(List.of("sleep", "600"), folder.resolve("log.txt"))) {
      assertThat(program.alive()).isTrue();
      long first = program.startedNanos();
      program.freeze();
      awaitState(program.pid(), true);
      program.thaw();
      awaitState(program.pid(), false);
      program.kill();
      while (program.alive()) {
        Thread.onSpinWait();
      }
      program.restart();
      assertThat(program.alive()).isTrue();
      assertThat(program.startedNanos()).isGreaterThan(first);
    }
  }

  private static void awaitState(long pid, boolean stopped) throws IOException {
    while ((state(pid) == 'T') != stopped) {
      Thread.onSpinWait();
    }
  }
}
