package org.boostwright.core.bench.proof;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.EnumSet;
import java.util.List;
import java.util.Set;
import org.boostwright.core.bench.BenchStep;
import org.boostwright.core.bench.VerdictCode;
import org.boostwright.core.bench.proof.ProofState.Status;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/** What a bench proof lets through, and that no damage to it goes unseen. */
@Tag("P5")
class ProofTest {
  private static final String HARDWARE = "a1".repeat(32);

  static Proof sound() {
    return new Proof(
        ProofSource.PI,
        HARDWARE,
        "2026-03-01T10:15:00Z",
        "0.1.0",
        EnumSet.allOf(BenchStep.class),
        List.of(VerdictCode.WINDOW_NARROW),
        List.of(
            new ProofMeasurement("valve.t_on_ms", 3.5, "ms", 3.4, 3.6),
            new ProofMeasurement("bench.rest_kpa", 82.7, "kPa gauge", Double.NaN, Double.NaN)));
  }

  private static Proof with(ProofSource source, Set<BenchStep> steps, VerdictCode... verdicts) {
    Proof p = sound();
    return new Proof(
        source,
        p.hardwareDigest(),
        p.date(),
        p.toolVersion(),
        steps,
        List.of(verdicts),
        p.measurements());
  }

  @Test
  void aSoundProofForThisHardwareAllowsControl() {
    ProofState state = ProofState.of(sound(), HARDWARE);
    assertThat(state.status()).isEqualTo(Status.VALID);
    assertThat(state.allowsControl()).isTrue();
  }

  @Test
  void anythingElseDoesNot() {
    Set<BenchStep> all = EnumSet.allOf(BenchStep.class);
    Set<BenchStep> withoutPolarity = EnumSet.complementOf(EnumSet.of(BenchStep.POLARITY));
    assertThat(ProofState.of(null, HARDWARE).status()).isEqualTo(Status.MISSING);
    assertThat(ProofState.of(sound(), "b2".repeat(32)).status()).isEqualTo(Status.HARDWARE_CHANGED);
    assertThat(ProofState.of(with(ProofSource.VIRTUAL, all), HARDWARE).status())
        .isEqualTo(Status.NOT_THIS_CAR);
    assertThat(ProofState.of(with(ProofSource.READINGS, all), HARDWARE).status())
        .isEqualTo(Status.NOT_THIS_CAR);
    assertThat(ProofState.of(with(ProofSource.PI, withoutPolarity), HARDWARE).words())
        .contains("polarity");
    for (VerdictCode code : VerdictCode.values()) {
      boolean allowed = ProofState.of(with(ProofSource.PI, all, code), HARDWARE).allowsControl();
      assertThat(allowed).as(code.id()).isEqualTo(code.grade() == VerdictCode.Grade.ADVICE);
    }
    assertThat(ProofState.damaged("cut short").allowsControl()).isFalse();
  }

  @Test
  void whatIsWrittenIsRead() throws DamagedProofException {
    assertThat(ProofText.read(ProofText.write(sound()))).isEqualTo(sound());
  }

  @Test
  void everyFlippedBitIsFound() {
    String text = ProofText.write(sound());
    for (int i = 0; i < text.length(); i++) {
      for (int bit = 0; bit < 8; bit++) {
        char flipped = (char) (text.charAt(i) ^ 1 << bit);
        String damaged = text.substring(0, i) + flipped + text.substring(i + 1);
        assertThatThrownBy(() -> ProofText.read(damaged))
            .as("character %d bit %d", i, bit)
            .isInstanceOf(DamagedProofException.class);
      }
    }
  }

  @Test
  void everyTruncationAndEveryMissingLineIsFound() {
    String text = ProofText.write(sound());
    for (int i = 0; i < text.length(); i++) {
      String cut = text.substring(0, i);
      assertThatThrownBy(() -> ProofText.read(cut))
          .as("cut at %d", i)
          .isInstanceOf(DamagedProofException.class);
    }
    String[] lines = text.split("(?<=\n)");
    for (int skip = 0; skip < lines.length; skip++) {
      StringBuilder rest = new StringBuilder();
      for (int i = 0; i < lines.length; i++) {
        rest.append(i == skip ? "" : lines[i]);
      }
      assertThatThrownBy(() -> ProofText.read(rest.toString()))
          .as("without line %d", skip)
          .isInstanceOf(DamagedProofException.class);
    }
    assertThatThrownBy(() -> ProofText.read(text + text)).isInstanceOf(DamagedProofException.class);
    assertThatThrownBy(() -> ProofText.read("\n" + text)).isInstanceOf(DamagedProofException.class);
  }

  @Test
  void textsThatWouldBreakTheFormAreRefused() {
    assertThatThrownBy(
            () -> new Proof(ProofSource.PI, "a\nb", "d", "v", Set.of(), List.of(), List.of()))
        .isInstanceOf(IllegalArgumentException.class);
  }
}
