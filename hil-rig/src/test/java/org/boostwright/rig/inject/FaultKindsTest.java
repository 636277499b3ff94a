package org.boostwright.rig.inject;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.boostwright.rig.plant.PlantParams;
import org.boostwright.rig.scenario.ProjectCarSettings;
import org.boostwright.rig.scenario.fault.Drive;
import org.boostwright.rig.scenario.fault.Injection;
import org.boostwright.rig.scenario.fault.Setup;
import org.boostwright.rig.scenario.fault.TwinRun;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** Every kind of fault can be brought about and is seen to take effect. */
@Tag("U1")
class FaultKindsTest {
  private static final double AT = 1.5;

  static List<String> ids() {
    return FaultKinds.ids();
  }

  /** Throttle opened, shut with the plate's fault in mind, and opened in gear over a change up. */
  private static TwinRun drive(FaultKind kind) {
    Drive drive =
        new Drive(
            5200.0,
            15.0,
            3,
            6.0,
            List.of(
                new Drive.Step(0.2, Drive.Act.THROTTLE_PCT, 100.0),
                new Drive.Step(2.2, Drive.Act.THROTTLE_PCT, 30.0),
                new Drive.Step(2.6, Drive.Act.THROTTLE_PCT, 100.0)));
    Setup setup =
        Setup.of(ProjectCarSettings.load(), PlantParams.PROJECT_CAR, 0.0, 20.0, 1L, drive)
            .acrossLink(kind.row().equals("L1"));
    Injection injection = new Injection(kind, kind.amount().usual(), AT, Double.POSITIVE_INFINITY);
    return new TwinRun(setup, List.of(injection)).drive();
  }

  @ParameterizedTest
  @MethodSource("ids")
  void takesEffectAtItsPlace(String id) {
    FaultKind kind = FaultKinds.find(id).orElseThrow();
    TwinRun run = drive(kind);
    // A welded supply switch alone changes nothing: the low-side switch still opens.
    boolean alone = !id.equals("e1_supply_switch_closed");
    assertThat(run.everyFaultTookEffect()).isEqualTo(alone);
    assertThat(!alone || run.faults().get(0).effectSeconds() >= AT).isTrue();
    assertThat(run.facts().broken()).isEmpty();
    assertThat(run.falseAlarms()).isZero();
  }

  @ParameterizedTest
  @MethodSource("ids")
  void hasARowAWordAndAUsualAmountInRange(String id) {
    FaultKind kind = FaultKinds.find(id).orElseThrow();
    assertThat(kind.row()).matches("[SPEBLT][0-9]{1,2}");
    assertThat(kind.words()).isNotBlank();
    assertThat(kind.amount().usual())
        .isBetween(kind.amount().low(), kind.amount().high());
  }
}
