package org.boostwright.core.ladder;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.List;
import org.boostwright.core.bench.proof.DamagedProofException;
import org.boostwright.core.bench.proof.ProofMeasurement;
import org.junit.jupiter.api.Test;

/** What is written is read; no change and no missing end goes unseen. */
class LadderTextTest {
  private static Ladder history() throws LadderRefusedException {
    Facts facts = Ladders.facts("A", "seal-1");
    List<ProofMeasurement> measured =
        List.of(new ProofMeasurement("spring.peak_kpa", 155.25, "kPa", Double.NaN, 190.0));
    return Ladder.EMPTY
        .pass(Rung.BENCH, facts, Ladders.DATE, "0.1.0", "", List.of())
        .pass(Rung.CUT_PROVEN, facts, Ladders.DATE, "0.1.0", "idle.csv", measured)
        .skip(Rung.FIRST_START, facts, Ladders.DATE, "0.1.0", Ladders.REASON)
        .report(Change.FUEL, facts, Ladders.DATE, "0.1.0", "other injectors");
  }

  @Test
  void whatIsWrittenIsRead() throws Exception {
    assertThat(LadderText.read(LadderText.write(history()))).isEqualTo(history());
    assertThat(LadderText.read(LadderText.write(Ladder.EMPTY))).isEqualTo(Ladder.EMPTY);
  }

  @Test
  void everyFlippedBitEveryTruncationAndEveryMissingLineIsFound() throws Exception {
    String text = LadderText.write(history());
    for (int i = 0; i < text.length(); i++) {
      damaged(text.substring(0, i), "cut at " + i);
      for (int bit = 0; bit < 8; bit++) {
        char flipped = (char) (text.charAt(i) ^ 1 << bit);
        damaged(text.substring(0, i) + flipped + text.substring(i + 1), i + " bit " + bit);
      }
    }
    String[] lines = text.split("(?<=\n)");
    for (int skip = 0; skip < lines.length; skip++) {
      StringBuilder rest = new StringBuilder();
      for (int i = 0; i < lines.length; i++) {
        rest.append(i == skip ? "" : lines[i]);
      }
      damaged(rest.toString(), "without line " + skip);
    }
    damaged(text + text, "twice");
    damaged("\n" + text, "line before");
  }

  private static void damaged(String text, String what) {
    assertThatThrownBy(() -> LadderText.read(text))
        .as(what)
        .isInstanceOf(DamagedProofException.class);
  }

  @Test
  void textsThatWouldBreakTheFormAreRefused() {
    Facts facts = Ladders.facts("A", "seal-1");
    for (String words : List.of("a\tb", "a\nb", "Öl")) {
      assertThatThrownBy(() -> Ladder.EMPTY.report(Change.FUEL, facts, Ladders.DATE, "v", words))
          .isInstanceOf(IllegalArgumentException.class);
    }
  }
}
