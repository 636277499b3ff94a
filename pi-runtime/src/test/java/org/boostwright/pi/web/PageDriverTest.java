package org.boostwright.pi.web;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.function.Consumer;
import org.boostwright.core.Inputs;
import org.boostwright.pi.loop.GuestBoost;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Who drives, said at the page: with the token and the engine stopped only. */
@Tag("W1")
class PageDriverTest {
  @TempDir Path folder;
  private PageUnderTest page;

  @BeforeEach
  void open() throws Exception {
    Files.createDirectories(folder.resolve("recordings"));
    page = new PageUnderTest(folder, 10_000);
    page.car.ticks(700);
  }

  @AfterEach
  void close() {
    page.close();
  }

  private int say(String who, String... headers) throws Exception {
    return PageUnderTest.status(page.post("/api/driver", "who=" + who, headers));
  }

  @Test
  void onlyTheTokenMakesTheOwnerDriveAndItIsKept() throws Exception {
    assertThat(page.driver.guest()).as("nobody has said yet").isTrue();
    assertThat(say("owner")).isEqualTo(401);
    assertThat(page.driver.guest()).isTrue();
    String key = page.unlock();
    assertThat(say("thief", key)).isEqualTo(409);
    assertThat(say("owner", key)).isEqualTo(200);
    assertThat(page.driver.guest()).isFalse();
    assertThat(GuestBoost.open(folder).guest()).as("after a power cut").isFalse();
    assertThat(say("guest", key)).isEqualTo(200);
    assertThat(GuestBoost.open(folder).guest()).isTrue();
  }

  @Test
  void aRunningEngineChangesNothing() throws Exception {
    String key = page.unlock();
    Consumer<Inputs> standing = SteppedLoop.standing(99.0);
    long[] now = {0L};
    page.car.wires =
        inputs -> {
          standing.accept(inputs);
          // 900 1/min at two pulses a turn.
          inputs.engineSeen = true;
          inputs.enginePeriodNanos = 60e9 / 900.0 / 2.0;
          now[0] = page.car.nanoTime();
          inputs.enginePulseNanos = now[0] - now[0] % 33_333_333L;
        };
    page.car.ticks(100);
    assertThat(say("owner", key)).isEqualTo(409);
    assertThat(page.driver.guest()).isTrue();
  }
}
