package org.boostwright.pi.io.pi4j;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/** What the C library says, as seen on a real kernel, is followed by what to do. */
@Tag("E3")
class Pi4jAdviceTest {
  @Test
  void aUserWithoutRightsIsSentToTheGroups() {
    assertThat(Pi4jHardware.advice("gpiod_chip_iter_new failed! (Permission denied)"))
        .contains("groups gpio");
  }

  @Test
  void aLineInUseIsAnotherPrograms() {
    assertThat(
            Pi4jHardware.advice("c_gpiod_line_request_output failed: -1 (Device or resource busy)"))
        .contains("another program");
  }

  @Test
  void nothingElseGetsAdvice() {
    assertThat(Pi4jHardware.advice("Remote I/O error")).isEmpty();
  }
}
