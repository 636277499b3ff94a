package org.boostwright.pi.bench;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.boostwright.core.bench.Heard;
import org.boostwright.core.bench.Question;
import org.boostwright.core.settings.PressureUnit;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;

/** What a person at the bench may type. */
class TypedAnswerTest {
  private static TypedAnswer typed(Question question, String text) {
    return TypedAnswer.parse(question, text, PressureUnit.KPA);
  }

  @ParameterizedTest
  @CsvSource({
    "CLICK_COUNT, 5, 5",
    "COIL_OHMS, '29,5', 29.5",
    "COIL_OHMS, open, Infinity",
    "BATTERY_CLICK, Yes, 1",
    "BATTERY_CLICK, n, 0",
    "ROD_PRELOAD, 2, 2",
    "AIR_ON, 0.9 bar, 90",
    "AIR_ON, 90, 90"
  })
  void anAnswerIsTakenAsItIsMeant(Question question, String text, double number) {
    assertThat(typed(question, text).complaint()).isNull();
    assertThat(typed(question, text).number()).isEqualTo(number, within(1e-9));
  }

  @Test
  void psiIsConverted() {
    // 1 psi = 6.894757 kPa (NIST SP 811).
    assertThat(typed(Question.UNPLUG_COIL, "12 psi").number()).isEqualTo(82.737, within(0.001));
  }

  @Test
  void whatIsHeardAtTheVentHasItsWords() {
    assertThat(typed(Question.LISTEN_AT_VENT, "puff").number())
        .isEqualTo(Heard.PUFF.asAnswer());
    assertThat(typed(Question.LISTEN_AT_VENT, "loud").complaint()).contains("nothing, puff");
  }

  @ParameterizedTest
  @EnumSource(Question.class)
  void notKnowingIsAnAnswerToEverythingAndNonsenseToNothing(Question question) {
    assertThat(typed(question, "?").complaint()).isNull();
    assertThat(typed(question, "?").number()).isNaN();
    assertThat(typed(question, "-3 bananas").complaint()).isNotNull();
  }
}
