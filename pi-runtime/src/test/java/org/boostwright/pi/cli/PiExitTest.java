package org.boostwright.pi.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Exit codes of the program on the Pi before it touches anything. */
class PiExitTest {
  @TempDir Path folder;

  private int drive(String settings) {
    return PiMain.run(
        "drive",
        "--io",
        "link:" + folder.resolve("no-such-port"),
        "--settings",
        settings,
        "--data",
        folder.resolve("data").toString());
  }

  @Test
  void helpAndVersionPass() {
    assertThat(PiMain.run("drive", "--help")).isEqualTo(PiExit.PASSED);
    assertThat(PiMain.run("--version")).isEqualTo(PiExit.PASSED);
  }

  @Test
  void wrongUseAndUnreadableInputAreTwo() throws Exception {
    assertThat(PiMain.run("fly")).isEqualTo(PiExit.WRONG_USE);
    assertThat(PiMain.run("drive", "--io", "thin air")).isEqualTo(PiExit.WRONG_USE);
    assertThat(drive(folder.resolve("none.toml").toString())).isEqualTo(PiExit.WRONG_USE);
    Path broken = Files.writeString(folder.resolve("broken.toml"), "[car]\ncylinders = 40\n");
    assertThat(drive(broken.toString())).isEqualTo(PiExit.WRONG_USE);
  }
}
