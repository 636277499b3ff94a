package org.boostwright.core.settings.file;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.boostwright.core.settings.PinSettings;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * E3: outputs that can energise something sit only on pins that boot low. Pulls at boot after
 * Broadcom, BCM2835 ARM Peripherals, table 6-31: GPIO 0 to 8 up, 9 to 27 down.
 */
@Tag("E3")
class PinsTest {

  @ParameterizedTest
  @ValueSource(ints = {0, 1, 4, 5, 6, 7, 8})
  void heartbeatOnAPinThatBootsHighIsRefused(int pin) {
    assertRefused(
        "tach           = 5",
        "tach = 26",
        "heartbeat      = 17",
        "heartbeat = " + pin,
        "pin_boots_high",
        "pulled up while the board boots");
  }

  @ParameterizedTest
  @ValueSource(ints = {9, 10, 11, 12, 13, 14, 15, 16, 17, 19, 20, 21, 26})
  void heartbeatOnAPinThatBootsLowLoads(int pin) {
    PinSettings pins = load("heartbeat      = 17", "heartbeat = " + pin).orThrow().pins();
    assertThat(pins).isNotNull();
    assertThat(pins.heartbeat()).isEqualTo(pin);
  }

  @ParameterizedTest
  @ValueSource(ints = {4, 7, 8})
  void engineCutOnAPinThatBootsHighIsRefusedAndALowOneLoads(int pin) {
    String wanted = "engine_cut          = false";
    assertRefused(
        wanted,
        "engine_cut = true",
        "lamp           = 27",
        "engine_cut = " + pin,
        "pin_boots_high",
        "pins.engine_cut: GPIO " + pin);
    String twin =
        Example.full()
            .replace(wanted, "engine_cut = true")
            .replace("lamp           = 27", "engine_cut = 26");
    assertThat(Example.parse(twin).ok()).isTrue();
  }

  @Test
  void engineCutWithoutAPinIsRefused() {
    LoadResult refused = load("engine_cut          = false", "engine_cut = true");
    assertThat(codes(refused)).contains("pin_missing");
  }

  @ParameterizedTest
  @ValueSource(ints = {9, 16, 17, 20, 26})
  void coilOnAPinWithoutHardwarePwmIsRefused(int pin) {
    assertRefused(
        "heartbeat      = 17",
        "heartbeat = 21",
        "pwm            = 18",
        "pwm = " + pin,
        "pin_without_pwm",
        "use GPIO 12, 13, 18 or 19");
  }

  @ParameterizedTest
  @CsvSource({"12, 0", "13, 1", "18, 0", "18, 2", "19, 1", "19, 3"})
  void coilOnAHardwarePwmPinWithItsChannelLoads(int pin, int channel) {
    String text =
        Example.full()
            .replace("pwm_channel    = 0", "pwm_channel = " + channel)
            .replace("pwm            = 18", "pwm = " + pin);
    assertThat(Example.parse(text).ok()).isTrue();
  }

  @ParameterizedTest
  @CsvSource({"12, 1", "12, 2", "13, 0", "13, 3", "18, 1", "18, 3", "19, 0", "19, 2"})
  void coilWithTheWrongChannelIsRefused(int pin, int channel) {
    assertRefused(
        "pwm_channel    = 0",
        "pwm_channel = " + channel,
        "pwm            = 18",
        "pwm = " + pin,
        "pwm_channel",
        "channel " + channel + " does not drive GPIO " + pin);
  }

  @ParameterizedTest
  @CsvSource({
    "i2c_in_use     = true, 2",
    "i2c_in_use     = true, 3",
    "spi_in_use     = false, 7",
    "spi_in_use     = false, 9",
    "spi_in_use     = false, 11",
    "uart_in_use    = false, 14",
    "uart_in_use    = false, 15",
  })
  void pinOfABusInUseIsRefusedAndFreeOtherwise(String bus, int pin) {
    String used = bus.replace("false", "true");
    String unused = bus.replace("true", "false");
    assertRefused(
        bus, used, "tach           = 5", "tach = " + pin, "pin_taken", "is already used by");
    String twin =
        Example.full().replace(bus, unused).replace("tach           = 5", "tach = " + pin);
    assertThat(Example.parse(twin).ok()).isTrue();
  }

  @Test
  void onePinForTwoWiresIsRefused() {
    assertRefused(
        "lamp           = 27", "lamp = 22", "", "", "pin_taken", "already used by pins.lamp");
  }

  @Test
  void wireWithoutPinAndPinWithoutWireAreRefused() {
    assertThat(codes(load("key            = 22\n", ""))).contains("pin_missing");
    assertThat(codes(load("key               = true", "key = false"))).contains("pin_without_wire");
    assertThat(codes(load("road           = 6\n", ""))).contains("pin_missing");
    assertThat(codes(load("heartbeat      = 17", "# none"))).contains("pin_missing");
  }

  @Test
  void fileWithoutPinsLoadsAndHasNone() {
    String full = Example.full();
    int from = full.indexOf("[pins]");
    int to = full.indexOf("# ----", from);
    LoadResult result = Example.parse(full.substring(0, from) + full.substring(to));
    assertThat(result.orThrow().pins()).isNull();
  }

  private static LoadResult load(String find, String put) {
    assertThat(Example.full()).contains(find);
    return Example.parse(Example.full().replace(find, put));
  }

  private static List<String> codes(LoadResult result) {
    return result.problems().stream().map(Problem::code).toList();
  }

  private static void assertRefused(
      String find, String put, String find2, String put2, String code, String words) {
    LoadResult result = Example.parse(Example.full().replace(find, put).replace(find2, put2));
    assertThat(result.ok()).isFalse();
    assertThat(result.problems()).anyMatch(p -> p.code().equals(code) && p.text().contains(words));
  }
}
