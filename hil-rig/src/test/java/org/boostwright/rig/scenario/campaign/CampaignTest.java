package org.boostwright.rig.scenario.campaign;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import org.boostwright.rig.inject.FaultKind;
import org.boostwright.rig.inject.FaultKinds;
import org.boostwright.rig.plant.PlantParams;
import org.boostwright.rig.scenario.ProjectCarSettings;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A campaign gives the same bytes however it is cut up, and never mixes two. */
@Tag("U7")
class CampaignTest {
  private static final int RUNS = 24;
  private static final String NAME = "test seed=3 runs=24";

  @TempDir Path folder;

  private static CampaignPlan plan(List<FaultKind> kinds, long runs) {
    return new CampaignPlan(3L, runs, ProjectCarSettings.load(), PlantParams.PROJECT_CAR, kinds);
  }

  private byte[] bytes(String sub, Shard shard, int threads) throws Exception {
    Path to = folder.resolve(sub);
    new Campaign(plan(FaultKinds.all(), RUNS), shard, to, threads).run(NAME, done -> {});
    return Files.readAllBytes(to.resolve(RowFile.FINISHED));
  }

  @Test
  void threadsShardsAndStopsDoNotShowInTheRows() throws Exception {
    byte[] one = bytes("one", Shard.WHOLE, 1);
    assertThat(bytes("two", Shard.WHOLE, 2)).isEqualTo(one);
    List<CaseRow> rows = new ArrayList<>();
    for (int i = 1; i <= 4; i++) {
      bytes("shard" + i, new Shard(i, 4), 1);
      rows.addAll(RowFile.read(folder.resolve("shard" + i)).rows());
    }
    rows.sort((a, b) -> Long.compare(a.index(), b.index()));
    Path merged = Files.createDirectories(folder.resolve("merged"));
    RowFile.finish(merged, NAME, rows);
    assertThat(Files.readAllBytes(merged.resolve(RowFile.FINISHED))).isEqualTo(one);

    // As if stopped in the middle of writing the tenth row.
    Path stopped = Files.createDirectories(folder.resolve("stopped"));
    List<String> lines = new String(one, java.nio.charset.StandardCharsets.UTF_8).lines().toList();
    String part =
        lines.get(0) + "\n" + String.join("\n", lines.subList(2, 11)) + "\n" + "9,safe,pu";
    Files.writeString(stopped.resolve("runs.part.csv"), part);
    assertThat(bytes("stopped", Shard.WHOLE, 2)).isEqualTo(one);
    assertThat(stopped.resolve("runs.part.csv")).doesNotExist();
  }

  @Test
  void rowsOfAnotherCampaignAreRefused() throws Exception {
    Files.writeString(folder.resolve("runs.part.csv"), "# other\n");
    Campaign campaign = new Campaign(plan(FaultKinds.all(), RUNS), Shard.WHOLE, folder, 1);
    assertThatThrownBy(() -> campaign.run(NAME, done -> {}))
        .isInstanceOf(OtherCampaignException.class)
        .hasMessageContaining("another campaign");
  }

  /** The two runs that a campaign of ten thousand called unsafe, and why they are none. */
  private static CaseRow found(long index) {
    return CaseRow.of(
        CaseDraw.of(
            new CampaignPlan(
                2026L,
                10_000L,
                ProjectCarSettings.load(),
                PlantParams.PROJECT_CAR,
                FaultKinds.all()),
            index));
  }

  @Test
  @Tag("D2")
  void driverAndSupplySwitchBothBrokenAreBeyondTheCoil() {
    CaseRow row = found(6387);
    assertThat(row.faults())
        .extracting(CaseRow.Fault::id)
        .containsExactlyInAnyOrder("e1_supply_switch_closed", "p5_polarity");
    assertThat(row.verdict()).isEqualTo(CaseVerdict.APART);
  }

  @Test
  @Tag("D2")
  void aFaultWithinAHangIsJudgedFromWhenTheProgramRunsAgain() {
    CaseRow row = found(7957);
    assertThat(row.faults())
        .extracting(CaseRow.Fault::id)
        .containsExactlyInAnyOrder("t2_hang", "s8_map_jump");
    assertThat(row.verdict()).isEqualTo(CaseVerdict.SAFE);
  }

  @Test
  void rowsReadBackAsTheyWere() {
    for (long index = 0; index < 6; index++) {
      CaseRow row = CaseRow.of(CaseDraw.of(plan(FaultKinds.all(), RUNS), index));
      assertThat(CaseRow.parse(row.line())).isEqualTo(row);
    }
    assertThatThrownBy(() -> CaseRow.parse("1,safe")).isInstanceOf(IllegalArgumentException.class);
  }

  @Test
  @Tag("D2")
  void everyOrderedPairHasItsTurn() {
    List<FaultKind> kinds = FaultKinds.all();
    long pairs = (long) kinds.size() * (kinds.size() - 1);
    CampaignPlan plan = plan(kinds, 2 * pairs);
    Set<String> seen = new HashSet<>();
    for (long i = 1; i < 2 * pairs; i += 2) {
      List<FaultKind> pair = plan.kindsOf(i);
      seen.add(pair.get(0).id() + " " + pair.get(1).id());
      assertThat(pair.get(0)).isNotSameAs(pair.get(1));
    }
    assertThat(seen).hasSize((int) pairs);
  }

  @Test
  void sharesAreWholeNumbers() {
    assertThat(Shard.parse("2/4")).isEqualTo(new Shard(2, 4));
    for (String wrong : List.of("0/4", "5/4", "1", "a/b", "1/2/3")) {
      assertThatThrownBy(() -> Shard.parse(wrong)).isInstanceOf(IllegalArgumentException.class);
    }
  }
}
