package org.boostwright.core.monitor;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Arrays;
import java.util.HashSet;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

/** The definitions as data: names, counts, reactions and rules that fit each other. */
class FaultCodeTest {

  @Test
  void namesAndBitsAreUnique() {
    Set<String> ids = new HashSet<>();
    long bits = 0L;
    for (FaultCode code : FaultCode.values()) {
      assertThat(ids.add(code.id())).isTrue();
      assertThat(bits & code.bit()).isZero();
      bits |= code.bit();
    }
    assertThat(Long.bitCount(bits)).isEqualTo(FaultCode.COUNT);
    // A log column holds the bits as a double, which is exact below 2^53.
    assertThat(FaultCode.COUNT).isLessThan(53);
  }

  @ParameterizedTest
  @EnumSource(FaultCode.class)
  void everyDefinitionIsComplete(FaultCode code) {
    assertThat(code.id()).matches("[a-z]+(_[a-z]+)*");
    assertThat(code.requirement()).matches("[A-Z]\\d+( [A-Z]\\d+)*");
    assertThat(code.clearRule().words()).isNotEmpty();
    assertThat(code.upCount()).isIn(10, FaultCode.CONFIRM_AT);
    if (code.clearRule() == ClearRule.KEY_OFF) {
      assertThat(code.reaction()).isEqualTo(Reaction.LOCK);
    } else {
      assertThat(code.reaction()).isLessThan(Reaction.LOCK);
      assertThat(code.clearSeconds()).isPositive();
    }
  }

  @Test
  void reactionsAreOrderedByHowMuchTheyTakeAway() {
    assertThat(Arrays.asList(Reaction.values()))
        .containsExactly(
            Reaction.REPORT, Reaction.SUBSTITUTE, Reaction.NO_TRIM, Reaction.REST, Reaction.LOCK);
  }
}
