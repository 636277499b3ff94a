package org.boostwright.rig.result;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;

class SafeTextTest {
  @Test
  void whatCannotBeSeenBecomesAMark() {
    assertThat(SafeText.visible("a\u001B[31m\u0007\u009Bb")).isEqualTo("a\uFFFD[31m\uFFFD\uFFFDb");
    // Directional controls of Unicode Standard Annex 9, zero-width space and joiner, separators.
    assertThat(SafeText.visible("\u202E\u2066\u2069\u200F\u061C\u200B\u200D\uFEFF\u2028\u2029"))
        .isEqualTo("\uFFFD".repeat(10));
    assertThat(SafeText.visible("\uD800x\uDC00")).isEqualTo("\uFFFDx\uFFFD");
    assertThat(SafeText.visible("\uDB40\uDC41")).isEqualTo("\uFFFD\uFFFD");
  }

  @Test
  void ordinaryTextOfAnyLanguageStays() {
    String text = "Drücke 180 kPa\nΔp · ñ · 圧力 · ضغط · לחץ · \uD83D\uDE97\tend";
    assertThat(SafeText.visible(text)).isEqualTo(text);
  }

  @Test
  void aMegabyteIsCutWithItsLength() {
    String text = SafeText.visible("x".repeat(1_000_000));
    assertThat(text).hasSizeLessThan(2_100).endsWith("… (1000000 characters)");
  }
}
