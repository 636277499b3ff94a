package org.boostwright.core.settings.file;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.nio.charset.StandardCharsets;
import org.boostwright.core.ladder.SettingsPart;
import org.boostwright.core.settings.Settings;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** A proof holds exactly as long as what it depends on stays the same. */
class SettingsDigestTest {
  private final Settings full = Example.parse(Example.full()).orThrow();

  @ParameterizedTest
  @CsvSource({
    "car.name, 'Other name'",
    "units.pressure, psi",
    "units.reference, gauge",
  })
  void whatOnlyChangesHowThingsAreShownVoidsNoProof(String key, String value) {
    // Every pressure of the full file names its own unit, so the declared one only shows.
    Settings other =
        SettingsEdit.of("car.toml", Example.full()).setText(key, value).load().orThrow();
    assertThat(other).isNotEqualTo(full);
    assertThat(SettingsDigest.of(other)).isEqualTo(SettingsDigest.of(full));
    assertThat(SettingsDigest.ofHardware(other)).isEqualTo(SettingsDigest.ofHardware(full));
  }

  @Test
  void commentsOrderAndSpellingMakeNoDifference() {
    String shuffled =
        Example.full()
            .replaceAll("(?m)^# .*\n", "")
            .replace("cutoff_kpa_abs     = 200", "cutoff_bar_abs = 2.0")
            .replace("coil_ohms       = 30", "coil_ohms = 30.0");
    assertThat(SettingsDigest.of(Example.parse(shuffled).orThrow()))
        .isEqualTo(SettingsDigest.of(full));
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "limits.cutoff_kpa_abs | 201",
        "limits.trim_cap_pct | 11",
        "limits.engine_cut | true",
        "base_duty.rpm | [2000, 2500, 3000, 3500, 4500, 5500, 6501]",
        "feedback.enabled | false",
        "feedback.kp_pct_per_kpa | [0.30, 0.30, 0.31]",
        "spool.lead_s | 0.26",
        "base_duty.exhaust_help | [0.14, 0.76]",
        "sensors.throttle.volts | [0.5, 4.51]",
        "sensors.assumed_ambient_kpa_abs | 100",
        "car.redline_rpm | 6801",
      })
  void changedBehaviourVoidsTheWholeAndNotTheHardware(String key, String value) {
    String text = Example.full().replace("lamp           = 27", "engine_cut = 27");
    Settings before = Example.parse(text).orThrow();
    Settings after = SettingsEdit.of("car.toml", text).setText(key, value).load().orThrow();
    assertThat(SettingsDigest.of(after)).isNotEqualTo(SettingsDigest.of(before));
    assertThat(SettingsDigest.ofHardware(after)).isEqualTo(SettingsDigest.ofHardware(before));
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "valve.frequency_hz | 31",
        "valve.coil_ohms | 31",
        "sensors.map.pressure_kpa_abs | [20, 301]",
        "sensors.map.valid_volts | [0.2, 4.81]",
        "sensors.map.noise_kpa | 0.31",
        "sensors.map.location | before_throttle",
        "actuator.spring_cracks_kpa_gauge | 61",
        "wires.permit | true",
        "pins.heartbeat | 16",
        "pins.i2c_in_use | false",
      })
  void changedHardwareVoidsBoth(String key, String value) {
    String text = Example.full().replace("road           = 6", "road = 6\npermit = 26");
    text = text.replace("permit            = false", "permit = false");
    String base = key.equals("wires.permit") ? text : Example.full();
    Settings before = Example.parse(Example.full()).orThrow();
    Settings after = SettingsEdit.of("car.toml", base).setText(key, value).load().orThrow();
    assertThat(SettingsDigest.of(after)).isNotEqualTo(SettingsDigest.of(before));
    assertThat(SettingsDigest.ofHardware(after)).isNotEqualTo(SettingsDigest.ofHardware(before));
  }

  @Test
  void digestIsSixtyFourHexadecimalDigitsAndRepeats() {
    assertThat(SettingsDigest.of(full)).matches("[0-9a-f]{64}");
    assertThat(SettingsDigest.of(Example.parse(Example.full()).orThrow()))
        .isEqualTo(SettingsDigest.of(full));
    assertThat(SettingsDigest.ofHardware(full)).isNotEqualTo(SettingsDigest.of(full));
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "valve.frequency_hz | 31 | HARDWARE",
        "sensors.map.noise_kpa | 0.31 | HARDWARE",
        "actuator.spring_cracks_kpa_gauge | 61 | HARDWARE",
        "pins.i2c_in_use | false | HARDWARE",
        "wiring.coil_mh | 101 | HARDWARE",
        "converter.i2c_address | 73 | HARDWARE",
        "sensors.throttle.volts | [0.5, 4.51] | SENSORS",
        "sensors.assumed_ambient_kpa_abs | 100 | SENSORS",
        "car.pulses_per_revolution | 1 | CAR",
        "car.redline_rpm | 6900 | CAR",
        "limits.cutoff_kpa_abs | 201 | PROTECTION",
        "limits.trim_cap_pct | 11 | FEEDBACK",
        "feedback.tracking_s | 0.6 | FEEDBACK",
        "limits.min_rpm | 1900 | REACH",
        "limits.duty_ceiling_pct | [0, 85, 85, 52, 55, 59] | REACH",
        "limits.pressure_ratio_max | 2.4 | REACH",
        "spool.lead_s | 0.26 | TABLES",
        "base_duty.exhaust_help | [0.14, 0.26, 0.34, 0.45, 0.58, 0.76] | TABLES",
      })
  void eachKeyBelongsToOnePartOnly(String key, String value, SettingsPart part) {
    Settings before = Example.settings();
    String text = new String(Example.bytes(), StandardCharsets.UTF_8);
    Settings after = SettingsEdit.of("car.toml", text).setText(key, value).load().orThrow();
    for (SettingsPart each : SettingsPart.values()) {
      boolean same =
          SettingsDigest.ofPart(after, each).equals(SettingsDigest.ofPart(before, each));
      assertThat(same).as("%s in %s", key, each).isEqualTo(each != part);
    }
  }

  @Test
  void partsTogetherHoldEveryKeyAndAnUnknownOneIsRefused() {
    assertThat(SettingsDigest.ofParts(full)).containsOnlyKeys(SettingsPart.values());
    assertThatThrownBy(() -> SettingsPart.of("novel.key"))
        .isInstanceOf(IllegalArgumentException.class);
  }
}
