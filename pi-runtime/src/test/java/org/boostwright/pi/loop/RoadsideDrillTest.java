package org.boostwright.pi.loop;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.boostwright.core.Outputs;
import org.boostwright.core.monitor.FaultCode;
import org.boostwright.core.monitor.Reaction;
import org.boostwright.core.monitor.Roadside;
import org.boostwright.core.state.SafetyState;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

/**
 * Somebody at the roadside, no laptop: looks at the lamp for ten seconds, counts, and finds in the
 * guide what is wrong, what to check and whether to drive on.
 */
class RoadsideDrillTest {
  private static final long TICK = 5_000_000L;
  private static final int LOOK_TICKS = 2_000;
  private static final Path GUIDE =
      Path.of(System.getProperty("boostwright.root", ".."), "docs", "commissioning.md");

  private record Seen(int blinks, boolean stays) {}

  /** Counts flashes between two pauses of a second and more, as a person does. */
  private static Seen look(Outputs out) {
    LampPattern lamp = new LampPattern();
    List<long[]> flashes = new ArrayList<>();
    boolean on = false;
    for (int tick = 0; tick < LOOK_TICKS; tick++) {
      boolean now = lamp.update(tick * TICK, out);
      if (now && !on) {
        flashes.add(new long[] {tick, tick});
      }
      if (now) {
        flashes.get(flashes.size() - 1)[1] = tick;
      }
      on = now;
    }
    int count = 0;
    boolean stays = false;
    int longest = 0;
    for (int i = 0; i < flashes.size(); i++) {
      boolean first = i == 0 || flashes.get(i)[0] - flashes.get(i - 1)[1] > 200;
      boolean lead = flashes.get(i)[1] - flashes.get(i)[0] > 150;
      stays |= lead;
      count = (first ? 0 : count) + (lead ? 0 : 1);
      longest = Math.max(longest, count);
    }
    return new Seen(longest, stays);
  }

  @ParameterizedTest
  @EnumSource(FaultCode.class)
  void everyFaultThatRestsIsCountedRightAndStandsInTheGuide(FaultCode code) throws Exception {
    boolean locks = code.reaction() == Reaction.LOCK;
    if (!locks && code.reaction() != Reaction.REST) {
      return;
    }
    Outputs out = new Outputs();
    out.state = locks ? SafetyState.LOCKED_UNTIL_RESTART : SafetyState.HELD_AT_SPRING;
    out.activeFaults = code.bit();
    Seen seen = look(out);
    assertThat(seen.blinks()).isEqualTo(Roadside.blinks(code));
    assertThat(seen.stays()).isEqualTo(locks);
    String row = row(seen.blinks());
    String[] cells = row.split("\\|");
    assertThat(cells[3]).as("what to check: %s", row).isNotBlank();
    // The guide and the page say the same about driving on.
    String onwards = Roadside.driveOn(seen.blinks());
    assertThat(cells[4].strip()).startsWith(onwards.substring(0, 3));
  }

  private static String row(int blinks) throws Exception {
    return Files.readAllLines(GUIDE).stream()
        .filter(line -> line.startsWith("| " + blinks + " |"))
        .findFirst()
        .orElseThrow();
  }

  @Test
  void afterACutTheOrderIsHoseRodSourceSensorValve() throws Exception {
    for (String text : List.of(Roadside.order(FaultCode.OVERBOOST), row(1))) {
      int at = -1;
      for (String part : List.of("actuator hose", "rod", "source hose", "sensor", "valve")) {
        int next = text.indexOf(part, at + 1);
        assertThat(next).as("%s in %s", part, text).isGreaterThan(at);
        at = next;
      }
    }
  }
}
