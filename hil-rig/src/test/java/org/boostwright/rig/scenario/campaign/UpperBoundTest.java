package org.boostwright.rig.scenario.campaign;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Against SciPy 1.10, {@code scipy.stats.beta.ppf(0.95, k + 1, n - k)}. */
class UpperBoundTest {
  @ParameterizedTest
  @CsvSource({
    "0, 10, 0.258865550893",
    "0, 10000, 0.000299528359777",
    "1, 100, 0.0465598114535",
    "3, 1000, 0.00773524471848",
    "50, 1000, 0.0628634035124"
  })
  void isThatOfClopperAndPearson(long count, long trials, double expected) {
    assertThat(UpperBound.at95(count, trials)).isCloseTo(expected, within(1e-9));
  }

  @Test
  void withoutTrialsNothingIsKnown() {
    assertThat(UpperBound.at95(0, 0)).isEqualTo(1.0);
    assertThat(UpperBound.at95(7, 7)).isEqualTo(1.0);
  }
}
