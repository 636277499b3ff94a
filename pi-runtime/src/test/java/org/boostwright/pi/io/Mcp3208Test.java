package org.boostwright.pi.io;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.io.IOException;
import java.util.HexFormat;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** The driver against the model; bytes from Microchip DS21298, codes from memory. */
@Tag("B1")
class Mcp3208Test {
  private final Mcp3208Model chip = new Mcp3208Model();

  @ParameterizedTest
  @CsvSource({"0, 060000", "1, 064000", "3, 06c000", "4, 070000", "7, 07c000"})
  void everyInputIsAskedForWithTheBytesOfTheDataSheet(int input, String bytes) throws IOException {
    chip.pinVolts[input] = 1.25;
    assertThat(new Mcp3208(chip, 5.0).convert(input)).isEqualTo(1.25, within(1e-9));
    assertThat(HexFormat.of().formatHex(chip.lastOut)).isEqualTo(bytes);
  }

  @ParameterizedTest
  @CsvSource({"5.0, 2.5, 2048", "3.3, 1.0, 1241", "5.0, 5.0, 4095", "5.0, 6.0, 4095", "5, -1, 0"})
  void codesAreThoseOfTheDataSheet(double reference, double volts, int code) throws IOException {
    chip.referenceVolts = reference;
    chip.pinVolts[2] = volts;
    Mcp3208 driver = new Mcp3208(chip, reference);
    assertThat(driver.convert(2) / driver.stepVolts()).isEqualTo(code, within(1e-6));
  }

  @Test
  void aMissingChipWithTheLineHighIsNoticed() {
    chip.openLine = true;
    assertThatThrownBy(() -> new Mcp3208(chip, 5.0).check()).hasMessageContaining("null bit");
  }

  /** Cannot be told from 0 V; the valid range of every sensor starts above that. */
  @Test
  void aMissingChipWithTheLineLowReadsZero() throws IOException {
    chip.openLine = false;
    assertThat(new Mcp3208(chip, 5.0).convert(0)).isZero();
  }

  @Test
  void aRatiometricSensorReadsTheSameOnASaggingSupply() throws IOException {
    for (double supply : new double[] {4.75, 5.0, 5.25}) {
      chip.referenceVolts = supply;
      chip.pinVolts[0] = 0.5 * supply;
      assertThat(new Mcp3208(chip, 5.0).convert(0)).isEqualTo(2.5, within(1e-9));
    }
  }

  @Test
  void anInputThatDoesNotExistIsRefused() {
    assertThatThrownBy(() -> new Mcp3208(chip, 5.0).convert(8))
        .isInstanceOf(IllegalArgumentException.class);
  }
}
