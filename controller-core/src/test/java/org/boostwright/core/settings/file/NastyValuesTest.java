package org.boostwright.core.settings.file;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Random;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.IntStream;
import org.boostwright.core.AnalogChannel;
import org.boostwright.core.settings.AnalogSensor;
import org.boostwright.core.settings.PinSettings;
import org.boostwright.core.settings.Settings;
import org.boostwright.core.table.Curve;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/**
 * C2: every value of the full file replaced by nasty ones, and its lines shuffled by a seeded draw:
 * nothing escapes, and whatever loads keeps the rules that make settings safe.
 */
@Tag("C2")
class NastyValuesTest {
  private static final List<String> NASTY =
      List.of(
          "0",
          "-0.0",
          "-1",
          "0.5",
          "1",
          "99",
          "101",
          "1e308",
          "-1e308",
          "1e-308",
          "nan",
          "-inf",
          "inf",
          "9223372036854775807",
          "true",
          "\"words\"",
          "[]",
          "[[]]",
          "{}",
          "1979-05-27",
          "[1, \"two\"]",
          "0x10",
          "\"\\u0000\"");

  private final String full = Example.full();

  @Test
  void everyValueReplacedByNastyOnesKeepsTheRulesOrIsRefused() {
    Matcher values =
        Pattern.compile("(?<==)[ ]*(\\[[^#=]*?\\](?=[ ]*(#|\\n))|\"[^\"]*\"|[-0-9.a-z]+)")
            .matcher(full);
    List<int[]> places = new ArrayList<>();
    while (values.find()) {
      places.add(new int[] {values.start(1), values.end(1)});
    }
    assertThat(places).hasSizeGreaterThan(90);
    places.parallelStream()
        .forEach(
            place -> {
              for (String nasty : NASTY) {
                judge(full.substring(0, place[0]) + nasty + full.substring(place[1]));
              }
            });
  }

  @Test
  void everyNumberReplacedByNastyOnesKeepsTheRulesOrIsRefused() {
    Matcher numbers = Pattern.compile("(?m)(?<=[\\[ ])[0-9][0-9.]*(?=[,\\] \\n])").matcher(full);
    List<int[]> places = new ArrayList<>();
    while (numbers.find()) {
      places.add(new int[] {numbers.start(), numbers.end()});
    }
    assertThat(places).hasSizeGreaterThan(200);
    IntStream.range(0, places.size())
        .parallel()
        .forEach(
            i -> {
              int[] place = places.get(i);
              Random random = new Random(i);
              for (int n = 0; n < 2; n++) {
                String nasty = NASTY.get(random.nextInt(NASTY.size()));
                judge(full.substring(0, place[0]) + nasty + full.substring(place[1]));
              }
            });
  }

  @Test
  void shuffledLinesKeepTheRulesOrAreRefused() {
    List<String> lines = full.lines().toList();
    IntStream.range(0, 500)
        .parallel()
        .forEach(
            seed -> {
              Random random = new Random(seed);
              List<String> changed = new ArrayList<>(lines);
              for (int n = 1 + random.nextInt(3); n > 0; n--) {
                int at = random.nextInt(changed.size());
                switch (random.nextInt(3)) {
                  case 0 -> changed.remove(at);
                  case 1 -> changed.add(at, changed.get(random.nextInt(changed.size())));
                  default -> changed.add(random.nextInt(changed.size()), changed.remove(at));
                }
              }
              judge(String.join("\n", changed));
            });
  }

  private static void judge(String text) {
    LoadResult result = Example.parse(text);
    if (!result.ok()) {
      assertThat(result.problems().get(0).severity()).isEqualTo(Severity.ERROR);
      return;
    }
    assertRules(result.orThrow());
    assertThat(SettingsCheck.report("car.toml", result).text()).isNotEmpty();
  }

  /** The rules, written down once more and independently of the checks. */
  private static void assertRules(Settings s) {
    AnalogSensor map = s.sensors().channel(AnalogChannel.MAP);
    assertThat(map).isNotNull();
    assertThat(s.sensors().channel(AnalogChannel.THROTTLE)).isNotNull();
    double[] kpa = map.calibration().values();
    double top = Math.max(kpa[0], kpa[kpa.length - 1]);
    double span = Math.abs(kpa[kpa.length - 1] - kpa[0]);
    double cutoff = s.limits().cutoffKpaAbs();
    assertThat(cutoff).isBetween(100.0, top - 0.1 * span + 1e-9);
    if (s.target().values().length > 1) {
      assertThat(max(s.target().values())).isLessThan(cutoff);
    }
    assertThat(s.limits().lowBoostKpaAbs()).isLessThan(cutoff);
    for (double gear : s.limits().gearTargetKpaAbs()) {
      assertThat(gear).isLessThan(cutoff);
    }
    assertThat(s.limits().trimCapDuty()).isBetween(0.0, 0.3);
    assertThat(s.limits().pressureRatioMax()).isBetween(1.0, 4.0);
    assertShares(s.baseDuty().values());
    assertShares(s.limits().dutyCeiling().values());
    assertShares(s.limits().targetFactorOverIntakeC().values());
    assertShares(s.valve().windowLowDuty(), s.valve().windowHighDuty());
    assertThat(s.valve().windowLowDuty()).isLessThan(s.valve().windowHighDuty());
    Curve command = s.valve().commandToDuty();
    assertThat(command.at(0.0)).isEqualTo(s.valve().windowLowDuty());
    assertThat(command.at(1.0)).isEqualTo(s.valve().windowHighDuty());
    assertThat(s.valve().frequencyHz()).isBetween(10.0, 100.0);
    for (AnalogChannel channel : AnalogChannel.values()) {
      AnalogSensor sensor = s.sensors().channel(channel);
      if (sensor != null) {
        assertThat(sensor.validLowVolts()).isBetween(0.05, sensor.validHighVolts());
        assertThat(sensor.validHighVolts()).isLessThanOrEqualTo(4.95);
        assertThat(sensor.stepVolts()).isPositive().isFinite();
        assertThat(sensor.refreshMillis()).isPositive().isFinite();
        assertThat(sensor.noiseVolts()).isNotNegative().isFinite();
        assertThat(sensor.maxRatePerSecond()).isPositive();
      }
    }
    PinSettings pins = s.pins();
    if (pins != null) {
      assertThat(pins.pwm()).isIn(12, 13, 18, 19);
      assertThat(pins.heartbeat()).isBetween(9, 27).isNotEqualTo(pins.pwm());
    }
  }

  private static void assertShares(double... values) {
    for (double value : values) {
      assertThat(value).isBetween(0.0, 1.0);
    }
  }

  private static double max(double[] values) {
    return Arrays.stream(values).max().orElseThrow();
  }
}
