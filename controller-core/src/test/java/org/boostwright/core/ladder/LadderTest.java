package org.boostwright.core.ladder;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.EnumMap;
import java.util.EnumSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.boostwright.core.TestSettings;
import org.boostwright.core.ladder.RungState.Status;
import org.boostwright.core.settings.ValveSettings;
import org.boostwright.core.state.Permission;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

/** What each rung needs, what voids it, and how far each lets the runtime go. */
class LadderTest {
  private static final Facts NOW = Ladders.facts("A", "seal-1");
  private static final ValveSettings VALVE = TestSettings.car().valve();

  @ParameterizedTest
  @EnumSource(Rung.class)
  void aRungIsSignedOnlyWhenEveryRungBelowHolds(Rung rung) throws Exception {
    Ladder below = Ladder.EMPTY;
    for (Rung lower : Rung.values()) {
      if (lower == rung) {
        break;
      }
      Ladder standing = below;
      assertThatThrownBy(() -> standing.pass(rung, NOW, Ladders.DATE, "v", "", List.of()))
          .isInstanceOf(LadderRefusedException.class)
          .hasMessageContaining(rung.words())
          .hasMessageContaining(lower.words());
      below = below.pass(lower, NOW, Ladders.DATE, "v", "", List.of());
    }
    assertThat(below.standing(NOW).next()).isEqualTo(rung);
    below = below.pass(rung, NOW, Ladders.DATE, "v", "", List.of());
    assertThat(below.standing(NOW).reached(rung)).isTrue();
  }

  @Test
  void eachRungLetsTheRuntimeGoAsFarAsTheNextNeeds() throws Exception {
    double low = VALVE.commandToDuty().at(0.25);
    List<Permission> expected =
        List.of(
            Permission.NONE,
            Permission.NONE,
            Permission.NONE,
            Permission.NONE,
            new Permission(true, low, false),
            new Permission(true, 1.0, false),
            Permission.FULL,
            Permission.FULL);
    Ladder ladder = Ladder.EMPTY;
    for (int held = 0; held <= Rung.values().length; held++) {
      assertThat(ladder.standing(NOW).permission(VALVE)).as("%d rungs", held).isEqualTo(expected.get(held));
      if (held < Rung.values().length) {
        ladder = ladder.pass(Rung.values()[held], NOW, Ladders.DATE, "v", "", List.of());
      }
    }
    assertThat(low).isLessThan(0.35);
    assertThat(Ladder.damaged("cut short").permission(VALVE)).isEqualTo(Permission.NONE);
  }

  @ParameterizedTest
  @EnumSource(SettingsPart.class)
  void aChangeInTheSettingsVoidsExactlyWhatDependsOnIt(SettingsPart part) throws Exception {
    Map<SettingsPart, String> edited = Ladders.parts("A");
    edited.put(part, "other");
    Facts then = Ladders.facts(edited, NOW.benchSeal(), NOW.benchDate());
    Standing standing = Ladders.climbed(NOW).standing(then);
    for (Rung rung : Rung.values()) {
      boolean voided = VoidedBy.SETTINGS.getOrDefault(part, Set.of()).contains(rung);
      assertThat(standing.of(rung).status())
          .as("%s after %s", rung, part)
          .isEqualTo(voided ? Status.VOID : Status.PROVEN);
      if (voided) {
        assertThat(standing.of(rung).words()).contains(part.words());
      }
    }
    assertThat(Ladders.climbed(NOW).standing(NOW).next()).isNull();
  }

  @Test
  void aNewBenchProofVoidsTheBenchAndEveryDriveButNotTheCut() throws Exception {
    Standing standing = Ladders.climbed(NOW).standing(Ladders.facts("A", "seal-2"));
    Set<Rung> voided = EnumSet.range(Rung.SPRING_DRIVE, Rung.PRESSURE_FEEDBACK);
    voided.add(Rung.BENCH);
    for (Rung rung : Rung.values()) {
      assertThat(standing.of(rung).holds()).as("%s", rung).isEqualTo(!voided.contains(rung));
    }
  }

  @ParameterizedTest
  @EnumSource(Change.class)
  void reportedWorkVoidsExactlyWhatDependsOnIt(Change change) throws Exception {
    Ladder ladder = Ladders.climbed(NOW).report(change, NOW, "2026-03-03T10:00:00Z", "v", "");
    for (Rung rung : Rung.values()) {
      boolean voided = VoidedBy.WORK.getOrDefault(change, Set.of()).contains(rung);
      assertThat(ladder.standing(NOW).of(rung).status())
          .as("%s after %s", rung, change)
          .isEqualTo(voided ? Status.VOID : Status.PROVEN);
    }
  }

  @Test
  void afterWorkOnTheValveAnOlderBenchProofCountsNoMoreWhereverItWasKept() throws Exception {
    Ladder ladder =
        Ladders.climbed(NOW)
            .report(
                Change.VALVE, Ladders.facts("A", ""), "2026-03-03T10:00:00Z", "v", "new valve");
    Facts unseenButOlder =
        Ladders.facts(Ladders.parts("A"), "seal-9", "2026-03-03T09:59:59Z");
    for (Facts old : List.of(NOW, unseenButOlder)) {
      assertThatThrownBy(() -> ladder.pass(Rung.BENCH, old, "later", "v", "", List.of()))
          .isInstanceOf(LadderRefusedException.class)
          .hasMessageContaining("run the bench again");
    }
    Facts fresh = Ladders.facts(Ladders.parts("A"), "seal-2", "2026-03-03T11:00:00Z");
    Ladder again = ladder.pass(Rung.BENCH, fresh, "later", "v", "", List.of());
    assertThat(again.standing(fresh).next()).isEqualTo(Rung.SPRING_DRIVE);
  }

  @Test
  void aRungIsSkippedOnlyInWordsAndNeverBenchOrCut() throws Exception {
    Ladder ladder = Ladder.EMPTY;
    for (Rung rung : List.of(Rung.BENCH, Rung.CUT_PROVEN)) {
      Ladder here = ladder;
      assertThatThrownBy(() -> here.skip(rung, NOW, Ladders.DATE, "v", Ladders.REASON))
          .isInstanceOf(LadderRefusedException.class)
          .hasMessageContaining("cannot be skipped");
      ladder = ladder.pass(rung, NOW, Ladders.DATE, "v", "", List.of());
    }
    Ladder here = ladder;
    for (String reason : List.of("", "because", "                         ", "a\tb".repeat(20))) {
      assertThatThrownBy(() -> here.skip(Rung.FIRST_START, NOW, Ladders.DATE, "v", reason))
          .isInstanceOf(LadderRefusedException.class);
    }
    assertThatThrownBy(() -> here.skip(Rung.FULL_TABLE, NOW, Ladders.DATE, "v", Ladders.REASON))
        .isInstanceOf(LadderRefusedException.class);
    Ladder skipped = ladder.skip(Rung.FIRST_START, NOW, Ladders.DATE, "v", Ladders.REASON);
    RungState state = skipped.standing(NOW).of(Rung.FIRST_START);
    assertThat(state.status()).isEqualTo(Status.SKIPPED);
    assertThat(state.words()).contains(Ladders.REASON);
    assertThat(skipped.standing(NOW).next()).isEqualTo(Rung.SPRING_DRIVE);
    assertThat(skipped.standing(Ladders.facts("B", "seal-1")).of(Rung.FIRST_START).status())
        .isEqualTo(Status.VOID);
  }

  @Test
  void practiceCountsForNoCarAndTheOtherWayRound() throws Exception {
    Facts practice =
        new Facts(NOW.settings(), true, "virtual", NOW.benchSeal(), NOW.benchDate(), true);
    assertThat(Ladders.climbed(practice).standing(practice).next()).isNull();
    assertThat(Ladders.climbed(practice).standing(NOW).next()).isEqualTo(Rung.BENCH);
    assertThat(Ladders.climbed(NOW).standing(practice).next()).isEqualTo(Rung.BENCH);
  }

  @ParameterizedTest
  @EnumSource(Rung.class)
  void everyRungOpensWithItsCautionsAndSaysWhatToDo(Rung rung) {
    assertThat(rung.cautions()).isNotEmpty().allMatch(Entry::plain).noneMatch(String::isBlank);
    assertThat(rung.next()).isNotBlank();
  }
}
