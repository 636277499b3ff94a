package org.boostwright.rig.logs;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.boostwright.core.Inputs;
import org.boostwright.core.Outputs;
import org.boostwright.core.monitor.FaultCode;
import org.boostwright.core.record.LogFormat;
import org.boostwright.core.settings.Settings;
import org.boostwright.core.settings.file.SettingsFile;
import org.boostwright.core.state.SafetyState;
import org.boostwright.rig.result.Plot;
import org.junit.jupiter.api.Test;

class LogPlotsTest {
  private static final Settings SETTINGS =
      SettingsFile.load(Path.of(System.getProperty("boostwright.root"), "docs", "project-car.toml"))
          .orThrow();

  private static double[] row(int tick, SafetyState state, long faults, double dutyFraction) {
    Outputs out = new Outputs();
    out.state = state;
    out.activeFaults = faults;
    out.dutyFraction = dutyFraction;
    out.mapKpaAbs = 100.0 + tick;
    double[] row = new double[LogFormat.COLUMN_COUNT];
    LogFormat.fill(row, 7_000_000_000L + tick * 5_000_000L, new Inputs(), out);
    return row;
  }

  private static Plot plot() {
    List<double[]> rows = new ArrayList<>();
    rows.add(row(0, SafetyState.READY, 0, 0));
    rows.add(row(1, SafetyState.CONTROLLING, 0, 0.4));
    rows.add(row(2, SafetyState.CONTROLLING, 0, 0.5));
    rows.add(row(3, SafetyState.HELD_AT_SPRING, FaultCode.MAP_SIGNAL_LOW.bit(), 0));
    rows.add(
        row(
            4,
            SafetyState.HELD_AT_SPRING,
            FaultCode.MAP_SIGNAL_LOW.bit() | FaultCode.MAP_STALE.bit(),
            0));
    return LogPlots.run("pull", "A pull", rows, 7e9, SETTINGS);
  }

  @Test
  void timeBeginsAtZeroAndDutyIsInPercent() {
    Plot plot = plot();
    assertThat(plot.x()).containsExactly(0.0, 0.005, 0.010, 0.015, 0.020);
    Plot.Line duty =
        plot.lines().stream().filter(line -> line.id().equals("duty")).findFirst().orElseThrow();
    assertThat(duty.y()).containsExactly(0.0, 40.0, 50.0, 0.0, 0.0);
  }

  @Test
  void everyChangeOfStateOrFaultsBeginsABandThatSaysWhy() {
    assertThat(plot().bands())
        .containsExactly(
            new Plot.Band("ready", 0.0, 0.005),
            new Plot.Band("controlling", 0.005, 0.015),
            new Plot.Band("held at spring (map_signal_low)", 0.015, 0.020),
            new Plot.Band("held at spring (map_signal_low map_stale)", 0.020, 0.020));
  }

  @Test
  void theOverboostLimitIsTheSettings() {
    // limits.cutoff_kpa_abs in docs/project-car.toml.
    assertThat(plot().limits().get(0).value()).isEqualTo(200.0);
  }
}
