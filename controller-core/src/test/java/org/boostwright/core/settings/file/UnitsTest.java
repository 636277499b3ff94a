package org.boostwright.core.settings.file;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Random;
import java.util.stream.Stream;
import org.boostwright.core.settings.PressureUnit;
import org.boostwright.core.settings.Settings;
import org.boostwright.core.settings.UnitSettings;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;

/**
 * Units of pressure against NIST Special Publication 811 (2008), appendix B.8: pound-force per
 * square inch to kilopascal 6.894757, bar to kilopascal 100, standard atmosphere 101.325 kPa.
 */
class UnitsTest {

  @ParameterizedTest
  @CsvSource({
    "KPA, false, 180, 180",
    "KPA, true, 80, 181.325",
    "PSI, false, 1, 6.894757",
    "PSI, false, 29.4, 202.7058558",
    "PSI, true, 12, 184.062084",
    "BAR, false, 1.8, 180",
    "BAR, true, 0.8, 181.325",
  })
  void writtenNumberBecomesKpaAbsolute(
      PressureUnit unit, boolean gauge, double written, double kpaAbs) {
    UnitSettings units = new UnitSettings(unit, gauge);
    // The published factor has seven digits.
    assertThat(units.toKpaAbs(written)).isCloseTo(kpaAbs, within(1e-7 * kpaAbs));
    Quantity level = Quantity.level(units);
    assertThat(level.inside(written)).isEqualTo(units.toKpaAbs(written));
  }

  static Stream<UnitSettings> notations() {
    return Stream.of(PressureUnit.values())
        .flatMap(unit -> Stream.of(new UnitSettings(unit, false), new UnitSettings(unit, true)));
  }

  @ParameterizedTest
  @MethodSource("notations")
  void anyNotationComesBackFromKpaToTheDigitsAPersonWrote(UnitSettings units) {
    Random random = new Random(811);
    Quantity level = Quantity.level(units);
    for (int i = 0; i < 2000; i++) {
      double written = Math.rint(random.nextDouble() * 40000.0 - 5000.0) / 1000.0;
      double back = level.written(level.inside(written));
      assertThat(Words.exact(back)).isEqualTo(Words.exact(written));
      assertThat(units.fromKpaAbs(units.toKpaAbs(written))).isCloseTo(written, within(1e-12 * 400));
    }
  }

  @Test
  void oneFileInThreeUnitsGivesTheSameSettings() {
    String kpa = limits("kPa", "absolute", "cutoff = 200", "low_boost = 165");
    String bar = limits("bar", "absolute", "cutoff = 2.0", "low_boost = 1.65");
    String gauge = limits("kPa", "gauge", "cutoff = 98.675", "low_boost_bar_abs = 1.65");
    String psi = limits("psi", "gauge", "cutoff_kpa_abs = 200", "low_boost_kpa_abs = 165");
    Settings first = Example.parse(kpa).orThrow();
    for (String other : new String[] {bar, gauge, psi}) {
      Settings settings = Example.parse(other).orThrow();
      assertThat(settings.limits().cutoffKpaAbs())
          .isCloseTo(first.limits().cutoffKpaAbs(), within(1e-9));
      assertThat(settings.limits().lowBoostKpaAbs())
          .isCloseTo(first.limits().lowBoostKpaAbs(), within(1e-9));
    }
  }

  private static String limits(String unit, String reference, String... lines) {
    return "schema = 1\n[units]\npressure = \""
        + unit
        + "\"\nreference = \""
        + reference
        + "\"\n[limits]\n"
        + String.join("\n", lines)
        + "\n"
        + Example.SENSORS_ONLY;
  }

  @Test
  void differencesAndRatesTakeNoAtmosphere() {
    Settings settings =
        Example.parse(
                """
                [units]
                pressure = "psi"
                reference = "gauge"
                [feedback]
                active_within = 3
                [spool]
                min_rise = 4
                """
                    + Example.SENSORS_ONLY)
            .orThrow();
    assertThat(settings.feedback().activeWithinKpa()).isCloseTo(3 * 6.894757, within(1e-5));
    assertThat(settings.spool().minRiseKpaPerSecond()).isCloseTo(4 * 6.894757, within(1e-5));
  }

  @Test
  void springIsGaugeInsideHoweverItIsWritten() {
    Settings settings =
        Example.parse(
                "[actuator]\nspring_cracks_psi_gauge = 8\nspring_full_lift_kpa_abs = 211.325\n"
                    + Example.SENSORS_ONLY)
            .orThrow();
    assertThat(settings.actuator().springCracksKpaGauge()).isCloseTo(8 * 6.894757, within(1e-5));
    assertThat(settings.actuator().springFullLiftKpaGauge()).isCloseTo(110.0, within(1e-9));
  }

  @Test
  void messagesUseTheUnitsOfTheFile() {
    String text =
        "[units]\npressure = \"psi\"\nreference = \"gauge\"\n[limits]\ncutoff = 15\n"
            + "[target]\nthrottle_pct = [100]\nrpm = [3000]\nboost = [[13.5]]\n"
            + Example.SENSORS_ONLY;
    assertThat(Example.parse(text).problems().stream().map(Problem::text).toList())
        .anyMatch(
            t -> t.contains("13.5 psi gauge, is only 1.5 psi below the overboost limit 15 psi"))
        .anyMatch(t -> t.contains("2.1756 psi to 3.6259 psi keep a normal overshoot"));
    assertThat(Example.parse(text.replace("13.5", "16")).problems().get(0).text())
        .contains("16 psi gauge is above the overboost limit 15 psi gauge");
  }

  @Test
  void escapeCharactersOfTheFileNeverReachTheTerminal() {
    String text = "\"\\u001b[2J\" = 1\n" + Example.SENSORS_ONLY;
    assertThat(Example.parse(text).problems().get(0).toString()).doesNotContain("\u001b");
  }

  @Test
  void valuesAreShownInTheUnitsOfTheFile() {
    String text =
        SettingsCheck.report(
                "car.toml",
                Example.parse(
                    "[units]\npressure = \"psi\"\nreference = \"gauge\"\n[limits]\ncutoff = 15\n"
                        + Example.SENSORS_ONLY))
            .text();
    assertThat(text).containsPattern("limits.cutoff +15 psi gauge");
    assertThat(text).containsPattern("sensors.map.pressure +-11.795[0-9]+, 28.815[0-9]+ psi gauge");
  }
}
