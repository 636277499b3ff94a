package org.boostwright.rig.ladder;

import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.boostwright.core.ladder.Rung;
import org.boostwright.core.record.LogFormat;
import org.boostwright.core.settings.Settings;
import org.boostwright.core.settings.file.SettingsDigest;
import org.boostwright.core.state.Permission;
import org.boostwright.rig.plant.Atmosphere;
import org.boostwright.rig.plant.PlantParams;
import org.boostwright.rig.plant.VirtualCar;
import org.boostwright.rig.scenario.CarRun;
import org.boostwright.rig.scenario.PullPlan;
import org.boostwright.rig.scenario.RunLog;
import org.boostwright.rig.scenario.VirtualPull;

/**
 * What each rung asks for, driven on the virtual car, so that the whole ladder can be practised
 * before a car is there. Its recordings say that they are of the virtual car and prove no other.
 */
public final class Practice {
  private static final double IDLE_SECONDS = 65.0;
  private static final double RESTORED_SECONDS = 12.0;
  private static final double BEFORE_CUT_SECONDS = 5.0;
  private static final double CUT_SECONDS = 5.0;
  private static final double BLIP_SECONDS = 0.7;
  private static final double BLIP_PCT = 40.0;
  private static final int REPEATS = 3;

  private final Settings settings;
  private final Permission permission;
  private final PlantParams params;
  private final long seed;

  /**
   * Practice on a virtual car.
   *
   * @param settings the settings as they stand in the file
   * @param permission what the ladder allows now
   * @param params the car
   * @param seed seed of the sensors' noise
   */
  public Practice(Settings settings, Permission permission, PlantParams params, long seed) {
    this.settings = settings;
    this.permission = permission;
    this.params = params.withPwmHz(settings.valve().frequencyHz());
    this.seed = seed;
  }

  /**
   * One recording.
   *
   * @param name file name
   * @param log the run
   * @param digest fingerprint of the settings it ran with
   * @param remark for its first row
   * @param seed seed of the sensors' noise
   */
  public record Run(String name, RunLog log, String digest, String remark, long seed) {
    /** Writes the recording into a file. */
    public void write(Path file) throws IOException {
      log.writeCsv(file, digest, seed, remark);
    }
  }

  /**
   * Drives what a rung asks for.
   *
   * @param rung a rung above the bench
   */
  public List<Run> drive(Rung rung) {
    return switch (rung) {
      case BENCH -> throw new IllegalArgumentException("the bench is no drive");
      case CUT_PROVEN -> cut();
      case FIRST_START -> List.of(run("first-start.csv", idle()));
      case SPRING_DRIVE, FIRST_BOOST -> pulls(rung, 1);
      case FULL_TABLE, PRESSURE_FEEDBACK -> pulls(rung, REPEATS);
    };
  }

  private Run run(String name, RunLog log) {
    return new Run(name, log, SettingsDigest.of(settings), "", seed);
  }

  private VirtualCar car() {
    return new VirtualCar(params, Atmosphere.at(0.0, 20.0), seed);
  }

  private List<Run> cut() {
    VirtualCar car = car();
    CarRun before = new CarRun(settings, permission, car);
    before.startEngine();
    car.neutral();
    before.run(BEFORE_CUT_SECONDS);
    Settings lowered =
        settings.withLimits(
            settings.limits().withCutoffKpaAbs(Rung.CUT_TEST_LIMIT_KPA_ABS));
    CarRun test = new CarRun(lowered, Permission.NONE, car);
    test.run(CUT_SECONDS);
    car.requestEngineCut(false);
    CarRun after = new CarRun(settings, permission, car);
    after.startEngine();
    car.neutral();
    after.run(RESTORED_SECONDS);
    String remark = LogFormat.META_CUT_TEST + Rung.CUT_TEST_LIMIT_KPA_ABS;
    return List.of(
        new Run("cut-test.csv", test.log(), SettingsDigest.of(lowered), remark, seed),
        run("limit-restored.csv", after.log()));
  }

  private RunLog idle() {
    VirtualCar car = car();
    CarRun run = new CarRun(settings, permission, car);
    run.startEngine();
    car.neutral();
    run.run(0.5 * IDLE_SECONDS);
    for (int blip = 0; blip < 2; blip++) {
      car.setThrottlePct(BLIP_PCT);
      run.run(BLIP_SECONDS);
      car.setThrottlePct(0.0);
      run.run(0.25 * IDLE_SECONDS);
    }
    return run.log();
  }

  private List<Run> pulls(Rung rung, int count) {
    List<Run> runs = new ArrayList<>();
    for (int i = 1; i <= count; i++) {
      PullPlan plan = PullPlan.STANDARD.withSeed(seed + i);
      RunLog log = VirtualPull.run(settings, permission, params, plan, share -> {}).log();
      runs.add(run(rung.id().replace('_', '-') + "-" + i + ".csv", log));
    }
    return runs;
  }
}
