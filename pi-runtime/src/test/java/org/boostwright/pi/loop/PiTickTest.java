package org.boostwright.pi.loop;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.io.IOException;
import java.nio.file.Path;
import org.boostwright.core.Controller;
import org.boostwright.core.monitor.FaultCode;
import org.boostwright.core.record.LogFormat;
import org.boostwright.core.state.SafetyState;
import org.boostwright.pi.io.PiBench;
import org.boostwright.pi.record.RowQueue;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The whole tick on a Pi of device models, in stepped time. */
class PiTickTest {
  @TempDir Path folder;
  private PiBench pi;
  private Controller controller;
  private TickLoop loop;
  private final RowQueue rows = new RowQueue(8);
  private final double[] row = new double[LogFormat.COLUMN_COUNT];

  @BeforeEach
  void start() {
    pi = new PiBench(folder);
    controller = new Controller(pi.settings);
    loop = new TickLoop(controller, pi.io, rows, pi.clock, null);
  }

  private void tick() {
    tickLateBy(0L);
  }

  private void tickLateBy(long nanos) {
    long intended = pi.between();
    pi.clock.advance(nanos);
    loop.tick(intended);
    double[] newest = rows.peek();
    System.arraycopy(newest, 0, row, 0, row.length);
    rows.remove();
  }

  private void run(double seconds) {
    for (int i = 0; i < Math.round(seconds / 0.005); i++) {
      tick();
    }
  }

  private SafetyState state() {
    return SafetyState.values()[(int) row[LogFormat.STATE]];
  }

  private boolean active(FaultCode code) {
    return ((long) row[LogFormat.FAULTS] & code.bit()) != 0;
  }

  private void driveToBoost() {
    run(3.0);
    pi.engineRpm = 900.0;
    pi.mapKpaAbs = 40.0;
    pi.throttlePct = 6.0;
    run(1.0);
    pi.engineRpm = 4000.0;
    pi.mapKpaAbs = 170.0;
    pi.throttlePct = 100.0;
    run(1.0);
    assertThat((long) row[LogFormat.FAULTS]).isZero();
    assertThat(state()).isEqualTo(SafetyState.CONTROLLING);
    assertThat(duty()).isPositive();
  }

  private double duty() {
    return Double.parseDouble(pi.sysfs.value("duty_cycle")) / 33_333_333.0;
  }

  private void assertWiresAtRest() {
    assertThat(pi.sysfs.value("duty_cycle")).isEqualTo("0");
    assertThat(pi.sysfs.value("enable")).isEqualTo("0");
    assertThat(pi.hardware.levels[PiBench.COIL_SUPPLY]).isFalse();
    int edges = pi.hardware.edges[PiBench.HEARTBEAT];
    tick();
    assertThat(pi.hardware.edges[PiBench.HEARTBEAT]).isEqualTo(edges);
  }

  /** Ticks until the core rests, ms; the wires must be at rest in the very same tick. */
  private double millisToRest(int mostTicks) {
    for (int i = 1; i <= mostTicks; i++) {
      tick();
      if (state().isRest()) {
        assertWiresAtRest();
        return 5.0 * i;
      }
    }
    throw new AssertionError("never at rest");
  }

  @Test
  void outputsAreOpenedBeforeInputsAndEverythingIsOff() {
    assertThat(pi.hardware.opened.subList(0, 3))
        .containsExactly("heartbeat", "coil supply", "lamp");
    assertWiresAtRest();
  }

  @Test
  void itRestsUntilTheEngineIsSeenAndThenDrivesCoilSupplyAndHeartbeat() {
    run(3.0);
    assertThat(state()).isEqualTo(SafetyState.RESTING);
    assertThat(pi.hardware.levels[PiBench.LAMP]).as("steady = spring only").isTrue();
    assertThat(pi.hardware.edges[PiBench.HEARTBEAT]).isZero();
    driveToBoost();
    assertThat(pi.hardware.levels[PiBench.LAMP]).as("off = controlling").isFalse();
    assertThat(pi.hardware.levels[PiBench.COIL_SUPPLY]).isTrue();
    assertThat(duty()).isEqualTo(row[LogFormat.DUTY], within(1e-7));
    int edges = pi.hardware.edges[PiBench.HEARTBEAT];
    run(1.0);
    assertThat(pi.hardware.edges[PiBench.HEARTBEAT] - edges).as("one edge a tick").isEqualTo(200);
    assertThat(row[LogFormat.column("engine_rpm")]).isEqualTo(4000.0, within(5.0));
    assertThat(row[LogFormat.column("intake_air_c")]).isEqualTo(20.0, within(0.5));
  }

  @Test
  @Tag("B1")
  void aConverterThatStopsAnsweringRestsInTime() {
    driveToBoost();
    pi.hardware.converterDead(true);
    assertThat(millisToRest(20)).isLessThanOrEqualTo(40.0);
    assertThat(active(FaultCode.MAP_STALE)).isTrue();
  }

  @Test
  @Tag("B1")
  void aBusThatHangsDoesNotHangTheTickAndRestsInTime() {
    driveToBoost();
    pi.converterHangs = true;
    assertThat(millisToRest(20)).isLessThanOrEqualTo(40.0);
    assertThat(active(FaultCode.MAP_STALE)).isTrue();
    assertThat(active(FaultCode.TICK_LATE)).isFalse();
  }

  @Test
  @Tag("S4")
  void stuckDataRestsWithin100Ms() {
    driveToBoost();
    pi.hardware.converterStuck(true);
    // All inputs now read the same code: the throttle jumps, too, and either fault may be first.
    assertThat(millisToRest(30)).isLessThanOrEqualTo(100.0);
  }

  @Test
  @Tag("E3")
  void somebodyElseOnThePwmIsRestInTheSameTickAndLocks() throws IOException {
    run(3.0);
    assertThat(state()).isEqualTo(SafetyState.RESTING);
    for (int i = 0; i < 3; i++) {
      pi.sysfs.intrude("enable", "1");
      pi.sysfs.intrude("duty_cycle", "20000000");
      tick();
      assertThat(pi.sysfs.value("enable")).isEqualTo("0");
      assertThat(pi.sysfs.value("duty_cycle")).isEqualTo("0");
    }
    tick();
    assertThat(active(FaultCode.OUTPUTS_WRONG)).isTrue();
    assertThat(state()).isEqualTo(SafetyState.LOCKED_UNTIL_RESTART);
  }

  @Test
  @Tag("E3")
  void aChannelThatSomebodyElseSwitchesOffWhileControllingIsRestInTheSameTick() throws IOException {
    driveToBoost();
    int edges = pi.hardware.edges[PiBench.HEARTBEAT];
    pi.sysfs.intrude("enable", "0");
    tick();
    assertThat(pi.sysfs.value("duty_cycle")).isEqualTo("0");
    assertThat(pi.hardware.levels[PiBench.COIL_SUPPLY]).isFalse();
    assertThat(pi.hardware.edges[PiBench.HEARTBEAT]).isEqualTo(edges);
    tick();
    assertThat(state()).as("once is no fault").isEqualTo(SafetyState.CONTROLLING);
  }

  @Test
  @Tag("T2")
  void aHeartbeatLineStuckAtEitherLevelGetsNoMoreEdgesAndLocks() {
    driveToBoost();
    pi.hardware.stuck[PiBench.HEARTBEAT] = true;
    tick();
    run(0.02);
    assertThat(active(FaultCode.OUTPUTS_WRONG)).isTrue();
    assertThat(pi.sysfs.value("enable")).isEqualTo("0");
  }

  @Test
  @Tag("T1")
  void aLateTickGivesNoEdgeAndThreeInARowRest() {
    driveToBoost();
    int edges = pi.hardware.edges[PiBench.HEARTBEAT];
    tickLateBy(6_000_000L);
    assertThat(pi.hardware.edges[PiBench.HEARTBEAT]).isEqualTo(edges);
    assertThat(state()).isEqualTo(SafetyState.CONTROLLING);
    tick();
    assertThat(pi.hardware.edges[PiBench.HEARTBEAT]).isEqualTo(edges + 1);
    tickLateBy(6_000_000L);
    tickLateBy(6_000_000L);
    assertThat(state()).isEqualTo(SafetyState.CONTROLLING);
    tickLateBy(6_000_000L);
    assertThat(active(FaultCode.TICK_LATE)).isTrue();
    assertThat(state()).isEqualTo(SafetyState.HELD_AT_SPRING);
    assertThat(row[LogFormat.column("late_ticks")]).isEqualTo(4.0);
    assertThat(loop.stats().lateness().getMaxValue()).isCloseTo(6000L, within(10L));
    assertWiresAtRest();
  }

  @Test
  void keyOffAndSpringOnlyAndAnUnreadableSwitchRest() {
    driveToBoost();
    pi.hardware.levels[PiBench.SPRING_ONLY] = false;
    assertThat(millisToRest(1)).isEqualTo(5.0);
    pi.hardware.levels[PiBench.SPRING_ONLY] = true;
    run(0.1);
    assertThat(state()).isEqualTo(SafetyState.CONTROLLING);
    pi.hardware.stuck[PiBench.KEY] = true;
    assertThat(millisToRest(1)).isEqualTo(5.0);
  }

  @Test
  @Tag("E1")
  void currentInACoilThatIsCommandedOffLocks() {
    run(3.0);
    pi.coilAlwaysOn = true;
    run(0.1);
    assertThat(active(FaultCode.COIL_FEEDBACK)).isTrue();
    assertThat(state()).isEqualTo(SafetyState.LOCKED_UNTIL_RESTART);
  }

  @Test
  void closingEndsOffWhateverWasGoingOn() {
    driveToBoost();
    pi.io.close();
    assertThat(pi.sysfs.value("duty_cycle")).isEqualTo("0");
    assertThat(pi.sysfs.value("enable")).isEqualTo("0");
    assertThat(pi.hardware.levels[PiBench.COIL_SUPPLY]).isFalse();
    assertThat(pi.hardware.levels[PiBench.HEARTBEAT]).isFalse();
  }
}
