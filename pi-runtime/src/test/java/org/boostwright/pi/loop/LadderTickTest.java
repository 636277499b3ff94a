package org.boostwright.pi.loop;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.boostwright.core.Controller;
import org.boostwright.core.ladder.Rung;
import org.boostwright.core.ladder.RungState;
import org.boostwright.core.ladder.RungState.Status;
import org.boostwright.core.ladder.Standing;
import org.boostwright.pi.io.PiBench;
import org.boostwright.pi.record.RowQueue;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** What comes out of the Pi's pins in every tick stays where the rung holds it. */
class LadderTickTest {
  private static final double PERIOD_NANOS = 33_333_333.0;

  @TempDir Path folder;

  private static Standing standing(int held) {
    List<RungState> states = new ArrayList<>();
    for (Rung rung : Rung.values()) {
      Status status = rung.ordinal() < held ? Status.PROVEN : Status.VOID;
      states.add(new RungState(rung, status, "", null));
    }
    return new Standing(states);
  }

  @ParameterizedTest(name = "{0} rungs hold")
  @ValueSource(ints = {0, 1, 2, 3, 4, 5, 6, 7})
  void thePinsObeyTheRungInEveryTick(int held) {
    PiBench pi = new PiBench(folder);
    double low = pi.settings.valve().commandToDuty().at(Standing.FIRST_BOOST_COMMAND);
    double highest = held < 4 ? 0.0 : held < 5 ? low : 1.0;
    Controller controller =
        new Controller(pi.settings, standing(held).permission(pi.settings.valve()));
    RowQueue rows = new RowQueue(8);
    TickLoop loop = new TickLoop(controller, pi.io, rows, pi.clock, null);
    double most = 0.0;
    for (int tick = 0; tick < 1200; tick++) {
      boolean boost = tick >= 800;
      pi.engineRpm = tick < 600 ? 0.0 : boost ? 4000.0 : 900.0;
      pi.mapKpaAbs = tick < 600 ? 101.3 : boost ? 150.0 : 40.0;
      pi.throttlePct = boost ? 100.0 : 6.0;
      loop.tick(pi.between());
      rows.remove();
      double duty = Double.parseDouble(pi.sysfs.value("duty_cycle")) / PERIOD_NANOS;
      assertThat(duty).as("tick %d", tick).isBetween(0.0, highest + 1e-7);
      most = Math.max(most, duty);
      if (held < 4) {
        assertThat(pi.hardware.levels[PiBench.COIL_SUPPLY]).as("tick %d", tick).isFalse();
        assertThat(pi.hardware.edges[PiBench.HEARTBEAT]).as("tick %d", tick).isZero();
      }
    }
    // The twin: what is allowed is used.
    assertThat(most > 0.0).isEqualTo(held >= 4);
    assertThat(most > low + 0.01).isEqualTo(held >= 5);
  }
}
