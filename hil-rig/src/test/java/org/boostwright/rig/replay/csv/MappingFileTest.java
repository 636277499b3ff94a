package org.boostwright.rig.replay.csv;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.boostwright.rig.replay.csv.Logs.mapping;
import static org.boostwright.rig.replay.csv.Logs.read;
import static org.boostwright.rig.replay.csv.Logs.value;

import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Mapping files: what they decide, and what in them is refused where. */
class MappingFileTest {

  @Test
  void columnsAreNamedByTextOrByNumber() throws LogRefusedException {
    String text = "when;P1;N;x\n0;0,5;900;1\n1;0,6;910;2\n";
    LogMapping mapping =
        mapping(
            "[time]\ncolumn = \"when\"\nformat = \"s\"\n"
                + "[map]\ncolumn = \"P1\"\nunit = \"bar\"\nreference = \"gauge\"\n"
                + "[engine_speed]\ncolumn = 3\nunit = \"rpm\"\n");
    RecordedLog log = read(text, mapping);
    assertThat(value(log, LogSignal.MAP, 1)).isEqualTo(161.325);
    assertThat(value(log, LogSignal.ENGINE_SPEED, 1)).isEqualTo(910.0);
    assertThat(log.unusedColumns()).containsExactly("x");
  }

  @Test
  void aLogWithoutAHeaderIsReadByNumbers() throws LogRefusedException {
    LogMapping mapping =
        mapping(
            "header_line = 0\n[time]\ncolumn = 1\nformat = \"ms\"\n"
                + "[map]\ncolumn = 2\nunit = \"kPa abs\"\n");
    RecordedLog log = read("0,100\n10,101\n20,102\n", mapping);
    assertThat(log.rows()).isEqualTo(3);
    assertThat(value(log, LogSignal.MAP, 0)).isEqualTo(100.0);
  }

  @Test
  void whatTheMappingLeavesOutIsStillRecognised() throws LogRefusedException {
    RecordedLog log =
        read("time [s],boost,rpm\n0,-0.5,900\n1,0.5,910\n", mapping("[map]\nunit = \"bar\"\n"));
    assertThat(value(log, LogSignal.MAP, 1)).isEqualTo(151.325);
    assertThat(value(log, LogSignal.ENGINE_SPEED, 0)).isEqualTo(900.0);
  }

  @Test
  void ignoredColumnsAreLeftAlone() throws LogRefusedException {
    RecordedLog log =
        read(
            "time [s],pedal D [%],pedal E [%]\n0,14,15\n1,16,17\n",
            mapping("ignore_columns = [\"pedal D [%]\"]"));
    assertThat(value(log, LogSignal.PEDAL, 1)).isEqualTo(17.0);
  }

  @Test
  void separatorAndDecimalSignCanBeDeclared() throws LogRefusedException {
    RecordedLog log =
        read("time [s];rpm\n0;1,200\n1;1,300\n", mapping("separator = \";\"\ndecimal = \",\""));
    assertThat(value(log, LogSignal.ENGINE_SPEED, 0)).isEqualTo(1.2);
  }

  @Test
  void theExampleInTheGuideIsAccepted() throws Exception {
    Path guide = Path.of(System.getProperty("boostwright.root", "."), "docs", "logs.md");
    String text = Files.readString(guide);
    int from = text.indexOf("```toml") + 8;
    LogMapping mapping = mapping(text.substring(from, text.indexOf("```", from)));
    assertThat(mapping.headerLine()).isEqualTo(3);
    assertThat(mapping.ambientKpaAbs()).isEqualTo(98.0);
    assertThat(mapping.timeFormat()).isEqualTo(TimeFormat.TIME_OF_DAY);
    ColumnMapping map = mapping.about(LogSignal.MAP);
    assertThat(map)
        .isEqualTo(
            new ColumnMapping("P intake", 0, LogUnit.BAR, Reference.GAUGE, 0.01, 900.0, 0.002));
    assertThat(mapping.about(LogSignal.ENGINE_SPEED).number()).isEqualTo(4);
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "speed = 3                               | map.toml:1:1: unknown key 'speed'; known here:",
        "[map]\\nresolutoin = 1                  | map.toml:2:1: unknown key 'resolutoin'; known",
        "[time]\\nunit = \"s\"                   | map.toml:2:1: unknown key 'unit'; known here: c",
        "[map]\\nunit = \"degC\"                 | map.toml:2:1: unit: 'degC' does not fit; known",
        "[map]\\nunit = 7                        | map.toml:2:1: unit: 7 must be text in quotes",
        "[map]\\nreference = \"relative\"        | map.toml:2:1: reference: 'relative' is neither",
        "[map]\\nunit = \"psig\"\\nreference = \"absolute\" | map.toml:3:1: reference: contradicts",
        "[coolant]\\nreference = \"gauge\"       | map.toml:2:1: reference: only pressures are",
        "[map]\\nresolution = -1                 | map.toml:2:1: resolution: -1 is outside",
        "[map]\\nresolution = nan                | map.toml:2:1: resolution: NaN is outside",
        "[map]\\nrefresh_ms = \"fast\"           | map.toml:2:1: refresh_ms: fast must be a number",
        "[map]\\ncolumn = 0                      | map.toml:2:1: column: 0 is neither",
        "[time]\\nformat = \"minutes\"           | map.toml:2:1: format: 'minutes' is not one of",
        "separator = \"x\"                       | map.toml:1:1: separator: 'x' is not one of",
        "decimal = \";\"                         | map.toml:1:1: decimal: ';' is neither",
        "map = 3                                 | map.toml:1:1: map: must be a table, written",
        "ignore_columns = \"x\"                  | map.toml:1:1: ignore_columns: must be a list",
        "ambient_kpa_abs = 0.9                   | map.toml:1:1: ambient_kpa_abs: 0.9 is outside",
        "[map                                    | map.toml:1:5: "
      })
  void mistakesAreRefusedWithTheirPlace(String toml, String message) {
    assertThatThrownBy(() -> mapping(toml.strip().replace("\\n", "\n")))
        .isInstanceOf(LogRefusedException.class)
        .hasMessageStartingWith(message);
  }

  @Test
  void columnsThatAreNotThereOrTakenTwiceAreRefused() throws LogRefusedException {
    LogMapping missing = mapping("[map]\ncolumn = \"pressure\"\nunit = \"kPa abs\"");
    assertThatThrownBy(() -> read(Logs.plain(), missing))
        .isInstanceOf(LogRefusedException.class)
        .hasMessageContaining("there is no column 'pressure' for map");
    LogMapping twice = mapping("[map]\ncolumn = 2\n[throttle]\ncolumn = 2\nunit = \"%\"");
    assertThatThrownBy(() -> read(Logs.plain(), twice))
        .isInstanceOf(LogRefusedException.class)
        .hasMessageContaining("already read as something else");
    LogMapping header = mapping("header_line = 3");
    assertThatThrownBy(() -> read(Logs.plain(), header))
        .isInstanceOf(LogRefusedException.class)
        .hasMessageContaining("line 3 names no time column");
  }
}
