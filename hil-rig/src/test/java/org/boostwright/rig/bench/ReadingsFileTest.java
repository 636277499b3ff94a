package org.boostwright.rig.bench;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.boostwright.core.bench.model.ValveFitResult;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Gauge readings from a file. */
class ReadingsFileTest {
  private static final String HEADER = "frequency_hz,duty_pct,pressure,unit\n";

  @TempDir Path folder;

  private Path file(String text) throws Exception {
    return Files.writeString(folder.resolve("readings.csv"), text);
  }

  /** The project's bench table (assumption A-01: t_on 3.5 ms, t_off 7.5 ms, an independent run). */
  @Test
  void theBenchTableGivesTheValveItWasMadeWith() throws Exception {
    List<ReadingsFile.Row> rows =
        ReadingsFile.read(
            file(
                HEADER
                    + "39,0,82.7,kPa\n39,10,82.7,kPa\n39,20,67.8,kPa\n39,30,55.3,kPa\n"
                    + "39,40,39.0,kPa\n39,50,22.8,kPa\n39,60,10.6,kPa\n39,70,3.8,kPa\n"
                    + "39,80,0.0,kPa\n26,20,71.1,kPa\n26,50,31.0,kPa\n26,80,2.5,kPa\n"));
    assertThat(ReadingsBench.supplyKpaGauge(rows)).isEqualTo(82.7);
    assertThat(ReadingsBench.mainHz(rows)).isEqualTo(39.0);
    ValveFitResult fit = ReadingsBench.record(rows).fit;
    if (fit == null) {
      throw new AssertionError("no fit");
    }
    assertThat(fit.onDelaySeconds().covers(0.0035)).as("%s", fit.onDelaySeconds()).isTrue();
    assertThat(fit.offDelaySeconds().covers(0.0075)).as("%s", fit.offDelaySeconds()).isTrue();
    assertThat(fit.windowLowDuty(39.0).value()).isBetween(0.1365 - 0.03, 0.1365 + 0.03);
    assertThat(fit.windowHighDuty(39.0).value()).isBetween(0.7075 - 0.03, 0.7075 + 0.03);
  }

  @ParameterizedTest
  @CsvSource({
    "'39,0,12,psi', 82.737",
    "'39,0,0.83,bar', 83.0",
    "'39,0,83,kPa', 83.0",
    "'39,0,83 kPa,psi', 83.0",
    "'39,0,12,PSI gauge', 82.737"
  })
  void unitsAreUnderstood(String row, double kpa) throws Exception {
    List<ReadingsFile.Row> rows = ReadingsFile.read(file(HEADER + row + "\n"));
    assertThat(rows.get(0).kpaGauge()).isBetween(kpa - 0.01, kpa + 0.01);
  }

  @ParameterizedTest
  @CsvSource({
    "'39,0,12,inches', unit",
    "'39,0,,kPa', pressure",
    "'39,101,12,psi', duty_pct",
    "'0,10,12,psi', frequency_hz",
    "'abc,10,12,psi', frequency_hz",
    "'39,10,900,kPa', pressure",
    "'39,NaN,12,psi', duty_pct"
  })
  void wrongRowsAreRefusedWithTheirPlace(String row, String what) throws Exception {
    Path path = file(HEADER + "39,0,83,kPa\n" + row + "\n");
    assertThatThrownBy(() -> ReadingsFile.read(path))
        .isInstanceOf(ReadingsFile.UnreadableException.class)
        .hasMessageContaining("readings.csv:3: ")
        .hasMessageContaining(what);
  }

  @Test
  void missingColumnsAndEmptyFilesAreRefused() throws Exception {
    Path short1 = file("frequency_hz,duty_pct,pressure\n39,0,83\n");
    assertThatThrownBy(() -> ReadingsFile.read(short1))
        .isInstanceOf(ReadingsFile.UnreadableException.class)
        .hasMessageContaining("unit");
    Path empty = file(HEADER);
    assertThatThrownBy(() -> ReadingsFile.read(empty))
        .isInstanceOf(ReadingsFile.UnreadableException.class)
        .hasMessageContaining("no readings");
  }
}
