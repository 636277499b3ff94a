package org.boostwright.pi.bench;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.EnumSet;
import org.boostwright.core.Controller;
import org.boostwright.core.Inputs;
import org.boostwright.core.Outputs;
import org.boostwright.core.bench.AbortReason;
import org.boostwright.core.bench.BenchPlan;
import org.boostwright.core.bench.BenchStep;
import org.boostwright.core.bench.Question;
import org.boostwright.core.bench.Verdicts;
import org.boostwright.core.settings.Settings;
import org.boostwright.core.state.Permission;
import org.boostwright.pi.io.CarIo;
import org.boostwright.pi.io.SteppedClock;
import org.boostwright.pi.loop.TickLoop;
import org.boostwright.pi.record.RowQueue;
import org.boostwright.rig.bench.BenchSetup;
import org.boostwright.rig.link.BenchSide;
import org.boostwright.rig.scenario.ProjectCarSettings;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/** A bench session through the tick loop and the controller, on the virtual bench, stepped. */
@Tag("P5")
class BenchOnTicksTest {
  private static final Settings SETTINGS = ProjectCarSettings.load();
  private static final long LONGEST_TICKS = 200L * 3600L;

  private final SteppedClock clock = new SteppedClock(1_000_000_000L);
  private final BenchSide side = new BenchSide(BenchSetup.standard(), 3L);
  private final WiresToBench wires = new WiresToBench();
  private BenchGuest guest = guest(BenchPlan.standard());
  private double highestDuty;
  private long ticks;
  private boolean sensorSpeaks = true;
  private int thought;

  private static BenchGuest guest(BenchPlan plan) {
    return new BenchGuest(
        plan.withFrequencyHz(SETTINGS.valve().frequencyHz())
            .withSettingsWindow(
                SETTINGS.valve().windowLowDuty(), SETTINGS.valve().windowHighDuty()),
        SETTINGS);
  }

  /** The bench as the loop's wires; the person answers half a second after being asked. */
  private final class WiresToBench implements CarIo {
    private double hz = SETTINGS.valve().frequencyHz();
    private TickLoop loop;

    @Override
    public void read(long nowNanos, Inputs inputs) {
      side.advance(Controller.TICK_NANOS);
      if (sensorSpeaks) {
        side.read(nowNanos, inputs);
      }
      Question question = guest.question();
      thought = question == null ? 0 : thought + 1;
      if (question != null && thought > 100) {
        guest.answer(side.asked(question));
      }
      if (guest.finished() || ++ticks > LONGEST_TICKS) {
        loop.stop();
      }
    }

    @Override
    public boolean apply(long nowNanos, Outputs outputs) {
      highestDuty = Math.max(highestDuty, outputs.dutyFraction);
      side.coil(outputs.dutyFraction, hz, outputs.pwmEnabled, outputs.coilSupplyClosed);
      return true;
    }

    @Override
    public void endTick(long nowNanos, Outputs outputs, boolean beat, boolean lamp) {}

    @Override
    public boolean setPwmHz(double newHz) {
      hz = newHz;
      return true;
    }

    @Override
    public void rest() {
      side.coil(0.0, hz, false, false);
    }

    @Override
    public String health() {
      return "";
    }

    @Override
    public void close() {}
  }

  private void run() {
    Controller controller = new Controller(SETTINGS, Permission.NONE);
    TickLoop loop = new TickLoop(controller, wires, new RowQueue(16), clock, guest);
    wires.loop = loop;
    loop.run();
    assertThat(loop.failure()).isNull();
    assertThat(guest.finished()).isTrue();
  }

  @Test
  void aSoundValvePassesAndItsWindowIsThatOfTheSettings() {
    run();
    var record = guest.record();
    assertThat(record.aborted).isNull();
    assertThat(record.completed).containsAll(BenchPlan.standard().steps());
    assertThat(Verdicts.sound(Verdicts.of(record, BenchPlan.standard()))).isTrue();
    assertThat(record.fit).isNotNull();
    // The virtual valve's t_on is 3.5 ms and its t_off 7.5 ms, docs/project-car.toml.
    assertThat(record.fit.onDelaySeconds().value()).isBetween(0.0028, 0.0042);
    assertThat(record.fit.offDelaySeconds().value()).isBetween(0.0068, 0.0082);
    assertThat(highestDuty).isEqualTo(1.0);
  }

  @Test
  void aSensorThatNeverSpeaksEndsItWithTheCoilOff() {
    sensorSpeaks = false;
    run();
    assertThat(guest.record().aborted).isEqualTo(AbortReason.SENSOR_LOST);
    assertThat(highestDuty).isZero();
  }

  @Test
  void stopEndsItWithTheCoilOff() {
    guest = guest(BenchPlan.standard().withSteps(EnumSet.of(BenchStep.AMBIENT, BenchStep.CLICK)));
    guest.abort();
    run();
    assertThat(guest.record().aborted).isEqualTo(AbortReason.ASKED);
    assertThat(highestDuty).isZero();
  }
}
