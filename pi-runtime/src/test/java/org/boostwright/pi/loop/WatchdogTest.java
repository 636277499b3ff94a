package org.boostwright.pi.loop;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatCode;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assumptions.assumeThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Only a device is fed: an ordinary file in its place would be fed for nothing. */
@Tag("T2")
class WatchdogTest {
  @TempDir Path folder;

  @Test
  void aMissingWatchdogIsRefusedWithWhatToSet() {
    Path missing = folder.resolve("watchdog");
    assertThatThrownBy(() -> Watchdog.device(missing))
        .isInstanceOf(IOException.class)
        .hasMessageContaining("does not exist")
        .hasMessageContaining("pins.machine_watchdog = false");
    assertThat(missing).as("looking for it makes none").doesNotExist();
  }

  @Test
  void anOrdinaryFileIsRefused() throws IOException {
    Path file = Files.createFile(folder.resolve("watchdog"));
    assertThatThrownBy(() -> Watchdog.device(file))
        .isInstanceOf(IOException.class)
        .hasMessageContaining("no character device");
    assertThat(file).isEmptyFile();
  }

  @Test
  void aCharacterDeviceIsFed() throws IOException {
    Path device = Path.of("/dev/null");
    assumeThat(device).exists();
    try (Watchdog watchdog = Watchdog.device(device)) {
      assertThatCode(watchdog::feed).doesNotThrowAnyException();
    }
  }
}
