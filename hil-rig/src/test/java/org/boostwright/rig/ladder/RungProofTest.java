package org.boostwright.rig.ladder;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.function.Consumer;
import org.boostwright.core.bench.proof.ProofMeasurement;
import org.boostwright.core.ladder.Entry;
import org.boostwright.core.ladder.Facts;
import org.boostwright.core.ladder.Rung;
import org.boostwright.core.ladder.RungState;
import org.boostwright.core.ladder.Standing;
import org.boostwright.core.settings.Settings;
import org.boostwright.core.settings.file.SettingsDigest;
import org.boostwright.core.settings.file.SettingsEdit;
import org.boostwright.core.state.Permission;
import org.boostwright.rig.plant.Atmosphere;
import org.boostwright.rig.plant.PlantParams;
import org.boostwright.rig.plant.ValveFaults;
import org.boostwright.rig.plant.VirtualCar;
import org.boostwright.rig.result.Finding;
import org.boostwright.rig.result.Measurement;
import org.boostwright.rig.scenario.CarRun;
import org.boostwright.rig.scenario.ProjectCarSettings;
import org.boostwright.rig.scenario.PullPlan;
import org.boostwright.rig.scenario.RunLog;
import org.boostwright.rig.scenario.VirtualPull;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What proves a rung, and what does not: each flaw is named, its sound twin passes. */
class RungProofTest {
  private static final Settings CAR = ProjectCarSettings.load();
  private static final Facts PRACTICE =
      new Facts(SettingsDigest.ofParts(CAR), true, "", "seal", "2026", true);

  @TempDir Path folder;

  /** A car with an engine cut wired. */
  private static Settings withCut() {
    return SettingsEdit.of("car.toml", ProjectCarSettings.text())
        .set("pins.engine_cut", 12)
        .set("limits.engine_cut", true)
        .load()
        .orThrow();
  }

  private Recording recording(RunLog log, Settings settings, String remark) throws Exception {
    Path file = folder.resolve("run.csv");
    log.writeCsv(file, SettingsDigest.of(settings), 1L, remark);
    return Recording.read(file, remark.isEmpty() ? settings : CAR);
  }

  private List<Recording> practise(Settings settings, Permission permission, Rung rung)
      throws Exception {
    Practice practice = new Practice(settings, permission, PlantParams.PROJECT_CAR, 1L);
    List<Recording> read = new ArrayList<>();
    for (Practice.Run run : practice.drive(rung)) {
      Path file = folder.resolve(run.name());
      run.write(file);
      read.add(Recording.read(file, settings));
    }
    return read;
  }

  private static Checks judge(Rung rung, List<Recording> recordings, Settings settings) {
    Map<Rung, Entry> entries = new EnumMap<>(Rung.class);
    entries.put(
        Rung.SPRING_DRIVE,
        new Entry(
            Entry.Kind.PASSED,
            Rung.SPRING_DRIVE,
            null,
            true,
            "2026",
            "v",
            Map.of(),
            "seal",
            "",
            List.of(new ProofMeasurement("spring.peak_kpa", 155.5, "kPa absolute", 0, 190))));
    List<RungState> states = new ArrayList<>();
    for (Rung each : Rung.values()) {
      RungState.Status status =
          each.compareTo(rung) < 0 ? RungState.Status.PROVEN : RungState.Status.MISSING;
      states.add(new RungState(each, status, "", entries.get(each)));
    }
    return RungProof.of(rung, recordings, settings, new Standing(states), PRACTICE);
  }

  private static List<String> failed(Checks checks) {
    List<String> ids = new ArrayList<>();
    for (Measurement m : checks.measurements()) {
      if (m.judgement().fails()) {
        ids.add(m.id());
      }
    }
    for (Finding finding : checks.findings()) {
      if (finding.severity() == org.boostwright.rig.result.Severity.PROBLEM) {
        ids.add(finding.code());
      }
    }
    assertThat(checks.passed()).isEqualTo(ids.isEmpty());
    return ids;
  }

  @Test
  void aCutThatStallsTheEngineIsProvenAndOneThatDoesNotIsNot() throws Exception {
    Settings settings = withCut();
    List<Recording> sound = practise(settings, Permission.NONE, Rung.CUT_PROVEN);
    assertThat(failed(judge(Rung.CUT_PROVEN, sound, settings))).isEmpty();
    assertThat(failed(judge(Rung.CUT_PROVEN, sound.subList(0, 1), settings)))
        .containsExactly("cut_recordings");
    assertThat(failed(judge(Rung.CUT_PROVEN, sound.subList(1, 2), settings)))
        .containsExactly("cut_recordings");

    Settings lowered =
        settings.withLimits(settings.limits().withCutoffKpaAbs(Rung.CUT_TEST_LIMIT_KPA_ABS));
    VirtualCar car = new VirtualCar(PlantParams.PROJECT_CAR, Atmosphere.at(0, 20), 1L);
    new CarRun(settings, Permission.NONE, car).startEngine();
    car.neutral();
    car.faults().engineCutBroken = true;
    CarRun test = new CarRun(lowered, Permission.NONE, car);
    test.run(5.0);
    Path file = folder.resolve("broken.csv");
    test.log().writeCsv(file, SettingsDigest.of(lowered), 1L, "cut_test_kpa_abs=20.0");
    List<Recording> broken = List.of(Recording.read(file, settings), sound.get(1));
    assertThat(failed(judge(Rung.CUT_PROVEN, broken, settings))).containsExactly("cut.stall_s");
  }

  @Test
  void withoutAnEngineCutTheTripIsProvenAndTheRestSaid() throws Exception {
    Checks checks = judge(Rung.CUT_PROVEN, practise(CAR, Permission.NONE, Rung.CUT_PROVEN), CAR);
    assertThat(failed(checks)).isEmpty();
    assertThat(checks.findings()).extracting(Finding::code).contains("no_engine_cut");
  }

  private RunLog idle(Consumer<VirtualCar> before, double seconds, boolean blips) {
    VirtualCar car = new VirtualCar(PlantParams.PROJECT_CAR, Atmosphere.at(0, 20), 1L);
    CarRun run = new CarRun(CAR, Permission.NONE, car);
    run.startEngine();
    car.neutral();
    before.accept(car);
    run.run(0.6 * seconds);
    for (int i = 0; i < 2; i++) {
      car.setThrottlePct(blips ? 40.0 : 0.0);
      run.run(0.7);
      car.setThrottlePct(0.0);
      run.run(0.2 * seconds);
    }
    return run.log();
  }

  @Test
  void aFirstStartNeedsItsMinuteItsVacuumAndItsBlips() throws Exception {
    assertThat(failed(start(idle(car -> {}, 62.0, true)))).isEmpty();
    assertThat(failed(start(idle(car -> {}, 30.0, true)))).containsExactly("start.running_s");
    assertThat(failed(start(idle(car -> {}, 62.0, false)))).containsExactly("start.blips");
    assertThat(failed(start(idle(car -> car.faults().mapHoseOff = true, 62.0, true))))
        .contains("start.idle_kpa");
  }

  private Checks start(RunLog log) throws Exception {
    return judge(Rung.FIRST_START, List.of(recording(log, CAR, "")), CAR);
  }

  private RunLog pull(Permission permission, PullPlan plan) {
    return VirtualPull.run(CAR, permission, PlantParams.PROJECT_CAR, plan, share -> {}).log();
  }

  @Test
  void aSpringDriveNamesAStuckGateAShortPullAndAWrongRung() throws Exception {
    PullPlan plan = PullPlan.STANDARD;
    assertThat(failed(spring(pull(Permission.NONE, plan)))).isEmpty();
    assertThat(failed(spring(pull(Permission.NONE, plan.to(3600.0)))))
        .containsExactly("spring.rpm_span", "spring.creep_kpa");
    assertThat(failed(spring(pull(Permission.FULL, plan)))).contains("wrong_rung", "spring.duty_pct");
    PullPlan stuck =
        plan.withEvents(new PullPlan.Event(0.0, faults -> faults.wastegateStuckLift = 0.0));
    assertThat(failed(spring(pull(Permission.NONE, stuck)))).contains("overboost");
    PullPlan small =
        plan.withEvents(new PullPlan.Event(0.0, faults -> faults.wastegateStuckLift = 0.32));
    assertThat(failed(spring(pull(Permission.NONE, small)))).contains("spring.creep_kpa");
  }

  private Checks spring(RunLog log) throws Exception {
    return judge(Rung.SPRING_DRIVE, List.of(recording(log, CAR, "")), CAR);
  }

  @Test
  void aFirstBoostWithoutEffectIsNone() throws Exception {
    Permission low = new Permission(true, CAR.valve().commandToDuty().at(0.25), false);
    List<Recording> sound = practise(CAR, low, Rung.FIRST_BOOST);
    assertThat(failed(judge(Rung.FIRST_BOOST, sound, CAR))).isEmpty();
    PullPlan dead =
        PullPlan.STANDARD.withEvents(
            new PullPlan.Event(0.0, faults -> faults.valve.stuck = ValveFaults.Stuck.AT_REST));
    List<Recording> none = List.of(recording(pull(low, dead), CAR, ""));
    assertThat(failed(judge(Rung.FIRST_BOOST, none, CAR))).containsExactly("first.effect_kpa");
    Recording full = recording(pull(Permission.FULL, PullPlan.STANDARD), CAR, "");
    assertThat(failed(judge(Rung.FIRST_BOOST, List.of(full), CAR))).contains("wrong_rung");
  }

  @Test
  void aRecordingOfTheVirtualCarProvesNoOther() throws Exception {
    Facts own = new Facts(PRACTICE.settings(), true, "", "seal", "2026", false);
    Recording spring = recording(pull(Permission.NONE, PullPlan.STANDARD), CAR, "");
    List<RungState> states = new ArrayList<>();
    for (Rung each : Rung.values()) {
      states.add(new RungState(each, RungState.Status.PROVEN, "", null));
    }
    Checks checks =
        RungProof.of(Rung.SPRING_DRIVE, List.of(spring), CAR, new Standing(states), own);
    assertThat(failed(checks)).containsExactly("wrong_car");
  }
}
