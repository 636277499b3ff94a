package org.boostwright.pi.io;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.io.IOException;
import org.boostwright.core.settings.ScanPlan;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** The driver against the model; numbers from Texas Instruments SBAS444 (rate from memory). */
@Tag("B1")
class Ads1115Test {
  private final SteppedClock clock = new SteppedClock(1_000L);
  private final Ads1115Model chip = new Ads1115Model(clock, 400e3);

  private Ads1115 driver(double range) {
    return new Ads1115(chip, clock, range);
  }

  @Test
  void ain0At4096MillivoltsAnd860SpsIsStartedWithC3E3() throws IOException {
    chip.pinVolts[0] = 2.5;
    assertThat(driver(4.096).convert(0)).isEqualTo(20_000 * 125e-6, within(1e-12));
    assertThat(chip.writes).hasSize(1);
    assertThat(chip.writes.get(0)).containsExactly(1, 0xC3, 0xE3);
  }

  @ParameterizedTest
  @CsvSource({"0, 0xC3E3", "1, 0xD3E3", "2, 0xE3E3", "3, 0xF3E3"})
  void everyInputIsMeasuredAgainstGround(int input, String word) throws IOException {
    chip.pinVolts[input] = 1.0;
    assertThat(driver(4.096).startWord(input)).isEqualTo(Integer.decode(word));
    assertThat(driver(4.096).convert(input)).isEqualTo(1.0, within(1e-9));
    assertThatThrownBy(() -> driver(4.096).convert(4)).isInstanceOf(IllegalArgumentException.class);
  }

  @ParameterizedTest
  @CsvSource({
    "6.144, 187.5e-6",
    "4.096, 125e-6",
    "2.048, 62.5e-6",
    "1.024, 31.25e-6",
    "0.512, 15.625e-6",
    "0.256, 7.8125e-6"
  })
  void stepsAreThoseOfTheDataSheet(double range, double step) {
    assertThat(driver(range).stepVolts()).isEqualTo(step, within(1e-15));
  }

  @Test
  void aRangeThatDoesNotExistIsRefused() {
    assertThatThrownBy(() -> driver(5.0)).hasMessageContaining("5.0 V");
    assertThatThrownBy(() -> driver(Double.NaN)).isInstanceOf(IllegalArgumentException.class);
  }

  @Test
  void belowGroundIsNegative() throws IOException {
    chip.pinVolts[0] = -0.5; // code 0xF060
    assertThat(driver(4.096).convert(0)).isEqualTo((short) 0xF060 * 125e-6, within(1e-12));
    assertThat(driver(4.096).convert(0)).isEqualTo(-0.5, within(1e-12));
  }

  @Test
  void onA33VoltSupplyTheTopCodeIs26400() throws IOException {
    chip.supplyVolts = 3.3;
    chip.pinVolts[0] = 5.0;
    assertThat(driver(4.096).convert(0)).isEqualTo(26_400 * 125e-6, within(1e-12));
  }

  @ParameterizedTest
  @ValueSource(doubles = {0.9, 1.0, 1.1})
  void everyRateTheDataSheetAllowsGivesThisConversionAndNotTheLast(double rate) throws IOException {
    chip.rateFactor = rate;
    Ads1115 driver = driver(6.144);
    for (int i = 1; i <= 50; i++) {
      chip.pinVolts[0] = 0.1 * i % 5.0;
      assertThat(driver.convert(0)).isEqualTo(chip.pinVolts[0], within(187.5e-6));
    }
  }

  @Test
  void aConversionTakesNoLongerThanPlanned() throws IOException {
    chip.rateFactor = 0.9;
    long before = clock.nanoTime();
    driver(6.144).convert(0);
    assertThat(clock.nanoTime() - before)
        .isLessThanOrEqualTo(ScanPlan.ads1115ConvertNanos(400_000) + 1_000L);
  }

  @Test
  void aRateBelowTheDataSheetIsWaitedForAWhileAndThenRefused() throws IOException {
    chip.rateFactor = 0.75; // 1.55 ms: two polls later
    chip.pinVolts[0] = 3.0;
    assertThat(driver(6.144).convert(0)).isEqualTo(3.0, within(187.5e-6));
    chip.rateFactor = 0.4; // 2.9 ms
    chip.pinVolts[0] = 1.0;
    assertThatThrownBy(() -> driver(6.144).convert(0)).hasMessageContaining("does not end");
  }

  @Test
  void aChipThatNeverEndsGivesNoOldValue() throws IOException {
    Ads1115 driver = driver(6.144);
    chip.pinVolts[0] = 3.0;
    driver.convert(0);
    chip.stuckBusy = true;
    assertThatThrownBy(() -> driver.convert(0)).isInstanceOf(IOException.class);
  }

  @Test
  void aChipThatWasResetGivesNoOldValue() throws IOException {
    Ads1115 driver =
        new Ads1115(
            new I2cDevice() {
              @Override
              public void write(byte[] bytes) throws IOException {
                chip.write(bytes);
                chip.reset();
              }

              @Override
              public void readRegister(int register, byte[] into) throws IOException {
                chip.readRegister(register, into);
              }

              @Override
              public void close() {}
            },
            clock,
            6.144);
    assertThatThrownBy(() -> driver.convert(0)).hasMessageContaining("0x8583");
  }

  @Test
  void theRightPartIsAcceptedAndAnotherIsRefusedByName() throws IOException {
    driver(4.096).check();
    chip.wrongPart = true;
    assertThatThrownBy(() -> driver(4.096).check())
        .isInstanceOf(IOException.class)
        .hasMessageContaining("0xC3E3")
        .hasMessageContaining("0xFFFF");
  }

  @Test
  void noAcknowledgeAndTimeoutComeOutAsFailures() {
    chip.nacks = 1;
    assertThatThrownBy(() -> driver(4.096).convert(0)).hasMessageContaining("acknowledge");
    chip.hangs = true;
    assertThatThrownBy(() -> driver(4.096).check()).hasMessageContaining("timed out");
  }

  @Test
  void theModelResetsToTheWordOfTheDataSheet() throws IOException {
    byte[] word = new byte[2];
    chip.readRegister(1, word);
    assertThat(word).containsExactly(0x85, 0x83);
    chip.write(new byte[] {1, 0x42, (byte) 0xE3}); // continuous mode keeps its word
    chip.readRegister(1, word);
    assertThat(word).containsExactly(0xC2, 0xE3);
  }
}
