package org.boostwright.rig.replay;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.charset.StandardCharsets;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/** Zeros at a file's end, as the kernel bench found them after a watchdog's reset. */
@Tag("E2")
class RecordRowsTest {
  @Test
  void zerosAtTheEndAreNoRow() {
    byte[] cut = "a,b\n1,2\n3".getBytes(StandardCharsets.US_ASCII);
    byte[] zeros = java.util.Arrays.copyOf(cut, cut.length + 2602);
    assertThat(RecordRows.withoutZeros(zeros)).isEqualTo(cut);
    assertThat(RecordRows.withoutZeros(cut)).isSameAs(cut);
    assertThat(RecordRows.withoutZeros(new byte[9])).isEmpty();
  }
}
