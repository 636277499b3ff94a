package org.boostwright.core.settings.file;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.List;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/** C2: how a refusal reads, and that it is of the whole file. */
@Tag("C2")
class RefusedFileTest {
  @Test
  void messageReadsLikeTheWorkshopsExample() {
    String bad =
        Example.full()
            .replace("cutoff_kpa_abs     = 200", "cutoff_kpa_abs     = 215")
            .replace(
                "[ 130,  145,  155,  165,  165,  165,  160]",
                "[ 130,  145,  155,  310,  165,  165,  160]");
    LoadResult result = SettingsFile.parse("car.toml", bad);
    int line = bad.substring(0, bad.indexOf("310")).split("\n", -1).length;
    int column = bad.indexOf("310") - bad.lastIndexOf('\n', bad.indexOf("310"));
    assertThat(result.problems().get(0))
        .hasToString(
            "car.toml:"
                + line
                + ":"
                + column
                + ": target table, row 3: 310 kPa absolute is above the overboost limit 215 kPa"
                + " absolute; lower it or raise limits.cutoff_kpa_abs");
  }

  @Test
  void everyProblemIsReportedAtOnceInTheOrderOfTheFile() {
    String bad =
        Example.full()
            .replace("cylinders             = 4", "cylinders = 40")
            .replace("frequency_hz    = 30", "frequency_hz = 300")
            .replace("trim_cap_pct     = 10", "trim_cap_pct = 50")
            .replace("lead_s             = 0.25", "lead_s = 25")
            .replace("lamp           = 27", "lam = 27");
    List<Problem> problems = Example.parse(bad).problems();
    assertThat(problems.stream().filter(p -> p.severity() == Severity.ERROR).count()).isEqualTo(5);
    assertThat(problems.stream().map(Problem::line).toList()).isSorted();
  }

  @Test
  void refusedFileGivesNoSettingsAtAll() {
    LoadResult result = Example.parse(Example.full().replace("lead_s ", "led_s "));
    assertThat(result.settings()).isNull();
    assertThatThrownBy(result::orThrow)
        .isInstanceOf(IllegalStateException.class)
        .hasMessageContaining("led_s is not known; did you mean lead_s?");
  }
}
