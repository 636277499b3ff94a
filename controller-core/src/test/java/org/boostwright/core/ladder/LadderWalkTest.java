package org.boostwright.core.ladder;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.EnumSet;
import java.util.HashSet;
import java.util.List;
import java.util.Queue;
import java.util.Random;
import java.util.Set;
import org.boostwright.core.TestSettings;
import org.boostwright.core.settings.ValveSettings;
import org.boostwright.core.state.Permission;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

/**
 * No path of proofs, skips, reported work, edits, lost, damaged or foreign files and restarts
 * reaches a rung without its proof: every state that can be reached is visited, and in each the
 * ladder is compared with a model of what was honestly proven, kept in {@link LadderWorld}. Between
 * two events the ladder exists only as its file's text, as after a restart.
 */
class LadderWalkTest {
  private static final ValveSettings VALVE = TestSettings.car().valve();
  private static final int RANDOM_WALKS = 40;
  private static final int RANDOM_EVENTS = 150;

  /** Visits every reachable state and returns how many there are. */
  private static int walk(LadderWorld start, List<LadderWorld.Event> events) {
    Set<String> seen = new HashSet<>();
    Queue<LadderWorld> open = new ArrayDeque<>();
    seen.add(start.key());
    open.add(start);
    Set<Rung> tops = EnumSet.noneOf(Rung.class);
    boolean climbed = false;
    while (!open.isEmpty()) {
      LadderWorld world = open.remove();
      Rung next = compare(world);
      climbed |= next == null;
      if (next != null) {
        tops.add(next);
      }
      for (LadderWorld.Event event : events) {
        LadderWorld after = event.apply(world);
        if (after != null && seen.add(after.key())) {
          open.add(after);
        }
      }
    }
    assertThat(climbed).as("the top is reached").isTrue();
    assertThat(tops).as("every rung was next once").containsExactly(Rung.values());
    return seen.size();
  }

  private static Rung compare(LadderWorld world) {
    Standing standing = world.standing();
    Rung next = null;
    for (Rung rung : Rung.values()) {
      boolean honest = world.honestlyHolds(rung);
      assertThat(standing.of(rung).holds()).as(() -> rung + " in " + world.key()).isEqualTo(honest);
      if (next == null && !honest) {
        next = rung;
      }
    }
    Permission permission = standing.permission(VALVE);
    boolean mayDrive = next == null || next.compareTo(Rung.FIRST_BOOST) >= 0;
    boolean full = next == null || next.compareTo(Rung.FULL_TABLE) >= 0;
    boolean trims = next == null || next == Rung.PRESSURE_FEEDBACK;
    assertThat(permission.controlAllowed()).as(world::key).isEqualTo(mayDrive);
    assertThat(permission.feedbackAllowed()).as(world::key).isEqualTo(trims);
    assertThat(permission.dutyCeilingFraction())
        .as(world::key)
        .isLessThanOrEqualTo(full ? 1.0 : mayDrive ? 0.3 : 0.0);
    return next;
  }

  @ParameterizedTest
  @EnumSource(SettingsPart.class)
  void everyStateWithEditsOfOnePartAndFileDamage(SettingsPart part) {
    List<LadderWorld.Event> events = new ArrayList<>(LadderWorld.passes());
    events.add(LadderWorld.edit(part));
    events.addAll(LadderWorld.benchFile(1));
    events.addAll(LadderWorld.ladderFile());
    int states = walk(LadderWorld.start(), events);
    // Each of the rungs that depend on the part was proven before, after or not at all.
    int dependent = VoidedBy.SETTINGS.getOrDefault(part, Set.of()).size();
    assertThat(states).isGreaterThan((int) Math.pow(2, dependent));
  }

  @Test
  void everyStateWithReportedWorkTwoBenchProofsAndKeptFiles() {
    List<LadderWorld.Event> events = new ArrayList<>(LadderWorld.passes());
    for (Change change : Change.values()) {
      events.add(LadderWorld.work(change));
    }
    events.addAll(LadderWorld.benchFile(2));
    events.addAll(LadderWorld.ladderFile());
    assertThat(walk(LadderWorld.start(), events)).isGreaterThan(500);
  }

  @Test
  void everyStateWithSkips() {
    List<LadderWorld.Event> events = new ArrayList<>(LadderWorld.passes());
    events.addAll(LadderWorld.skips());
    events.add(LadderWorld.edit(SettingsPart.PROTECTION));
    events.addAll(LadderWorld.benchFile(1));
    assertThat(walk(LadderWorld.start(), events)).isGreaterThan(200);
  }

  @Test
  void longRandomPathsWithEverythingAtOnce() {
    List<LadderWorld.Event> events = new ArrayList<>(LadderWorld.passes());
    events.addAll(LadderWorld.skips());
    for (SettingsPart part : SettingsPart.values()) {
      events.add(LadderWorld.edit(part));
    }
    for (Change change : Arrays.asList(Change.FUEL, Change.ENGINE_CUT, Change.VALVE)) {
      events.add(LadderWorld.work(change));
    }
    events.addAll(LadderWorld.benchFile(4));
    events.addAll(LadderWorld.ladderFile());
    int highest = 0;
    for (int seed = 0; seed < RANDOM_WALKS; seed++) {
      Random random = new Random(seed);
      LadderWorld world = LadderWorld.start();
      for (int i = 0; i < RANDOM_EVENTS; i++) {
        // Mostly upwards, or hardly a path would come high.
        Rung next = world.standing().next();
        boolean up = next != null && random.nextInt(4) > 0;
        int pick = up ? next.ordinal() : random.nextInt(events.size());
        LadderWorld after = events.get(pick).apply(world);
        world = after == null ? world : after;
        Rung reached = compare(world);
        highest = Math.max(highest, reached == null ? Rung.values().length : reached.ordinal());
      }
    }
    assertThat(highest).isEqualTo(Rung.values().length);
  }
}
