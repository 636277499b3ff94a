package org.boostwright.rig.cli;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import org.boostwright.core.AnalogChannel;
import org.boostwright.core.Controller;
import org.boostwright.core.Inputs;
import org.boostwright.core.Outputs;
import org.boostwright.core.record.LogFormat;
import org.boostwright.core.settings.Settings;
import org.boostwright.core.settings.file.SettingsDigest;
import org.boostwright.rig.scenario.ProjectCarSettings;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** {@code replay} on a run recorded by Boostwright itself: recognised and replayed to the bit. */
class ReplayRecordTest {
  private final StringWriter out = new StringWriter();
  private final StringWriter err = new StringWriter();

  @TempDir Path folder;

  private int run(String... args) {
    return Boostwright.run(
        new Terminal(new PrintWriter(out), new PrintWriter(err), false, false), args);
  }

  private double value(String id) throws Exception {
    JsonNode json = new ObjectMapper().readTree(out.toString());
    for (JsonNode m : json.get("measurements")) {
      if (m.get("id").asText().equals(id)) {
        return m.get("value").asDouble();
      }
    }
    throw new AssertionError(id + " is not in " + json);
  }

  /**
   * Three and a half seconds at rest with the key on and the engine stopped, recorded with the
   * built-in car.
   */
  private Path record() throws Exception {
    Settings car = ProjectCarSettings.load();
    Controller controller = new Controller(car);
    Inputs in = new Inputs();
    Outputs out = new Outputs();
    double[] row = new double[LogFormat.COLUMN_COUNT];
    StringBuilder text = new StringBuilder();
    LogFormat.appendHeader(text);
    text.append('\n');
    in.keyOn = true;
    for (int i = 1; i <= 700; i++) {
      long now = i * Controller.TICK_NANOS;
      in.sample(AnalogChannel.MAP, 1.6 + 0.004 * (i % 7), now);
      in.sample(AnalogChannel.THROTTLE, 0.6 + 0.002 * (i % 5), now);
      in.sample(AnalogChannel.INTAKE_AIR, 2.5, now);
      in.sample(AnalogChannel.SUPPLY, 2.6, now);
      controller.step(now, in, out);
      LogFormat.fill(row, now, in, out);
      String meta = LogFormat.VERSION + " " + SettingsDigest.of(car) + " 0";
      LogFormat.appendRow(text, row, i == 1 ? meta : "");
      text.append('\n');
    }
    return Files.writeString(folder.resolve("run.csv"), text.toString());
  }

  @Test
  void aRecordedRunPassesToTheBit() throws Exception {
    int code = run("replay", record().toString(), "--json");
    assertThat(code).as(out.toString() + err).isEqualTo(0);
    assertThat(value("replay.rows")).isEqualTo(700);
    assertThat(value("replay.differing_rows")).isZero();
  }

  @Test
  void aRecordedRunThatWasChangedFails() throws Exception {
    Path file = record();
    String text = Files.readString(file);
    int at = text.lastIndexOf(",resting,");
    Files.writeString(file, text.substring(0, at) + ",ready," + text.substring(at + 9));
    assertThat(run("replay", file.toString(), "--json")).isEqualTo(1);
    assertThat(value("replay.differing_rows")).isEqualTo(1);
    assertThat(out.toString()).contains("state was");
  }

  @Test
  void withOtherSettingsADifferenceIsNoFailure() throws Exception {
    String change = "limits.low_boost_kpa_abs=105";
    int code = run("replay", record().toString(), "--set", change, "--json");
    assertThat(code).as(out.toString() + err).isEqualTo(0);
    assertThat(value("replay.differing_rows")).isPositive();
    assertThat(out.toString()).contains("target_kpa_abs was");
  }
}
