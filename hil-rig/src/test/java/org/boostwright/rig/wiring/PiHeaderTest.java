package org.boostwright.rig.wiring;

import static org.assertj.core.api.Assertions.assertThat;

import org.boostwright.rig.wiring.PiHeader.BootPull;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** The header against the public pin-out of the Raspberry Pi (raspberrypi.com documentation). */
class PiHeaderTest {
  @ParameterizedTest
  @CsvSource({
    "2, 3", "3, 5", "4, 7", "14, 8", "15, 10", "17, 11", "18, 12", "27, 13", "22, 15", "23, 16",
    "24, 18", "10, 19", "9, 21", "25, 22", "11, 23", "8, 24", "7, 26", "5, 29", "6, 31", "12, 32",
    "13, 33", "19, 35", "16, 36", "26, 37", "20, 38", "21, 40"
  })
  void gpioSitsWhereThePinOutSaysSo(int gpio, int place) {
    assertThat(PiHeader.placeOf(gpio)).isEqualTo(place);
  }

  @ParameterizedTest
  @CsvSource({"0, UP", "2, FIXED_UP", "3, FIXED_UP", "8, UP", "9, DOWN", "18, DOWN", "27, DOWN"})
  void bootPulls(int gpio, BootPull pull) {
    assertThat(PiHeader.PLACES.get(PiHeader.placeOf(gpio) - 1).bootPull()).isEqualTo(pull);
  }

  @Test
  void fortyPlacesWithEightGroundsTwo5VAndTwo3V3() {
    assertThat(PiHeader.PLACES).hasSize(40);
    assertThat(PiHeader.PLACES).filteredOn(p -> p.name().equals("GND")).hasSize(8);
    assertThat(PiHeader.PLACES).filteredOn(p -> p.name().equals("5V")).hasSize(2);
    assertThat(PiHeader.PLACES).filteredOn(p -> p.name().equals("3V3")).hasSize(2);
  }
}
