package org.boostwright.rig.link;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.boostwright.rig.link.LineFaults.Kind;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/** What the line does to frames, kind by kind. */
@Tag("L1")
class LineFaultsTest {
  private static final long TICK = 5_000_000L;

  private final List<byte[]> out = new ArrayList<>();
  private final LineFaults line =
      new LineFaults(7L, (bytes, length) -> out.add(Arrays.copyOf(bytes, length)));
  private long nowNanos;

  private static byte[] frame(int number) {
    byte[] frame = new byte[40];
    Arrays.fill(frame, (byte) number);
    return frame;
  }

  private void send(int from, int count) {
    for (int i = from; i < from + count; i++) {
      nowNanos += TICK;
      line.send(frame(i), 40, nowNanos);
    }
  }

  private List<Integer> firstBytes() {
    return out.stream().map(bytes -> (int) bytes[5]).toList();
  }

  @Test
  void aSoundLineCarriesEveryFrameAsItIs() {
    send(1, 3);
    assertThat(out).containsExactly(frame(1), frame(2), frame(3));
    assertThat(line.affected()).isZero();
  }

  @Test
  void aSilentLineCarriesNothingAndIsSoundAgainAfterwards() {
    line.set(Kind.SILENT);
    send(1, 10);
    assertThat(out).isEmpty();
    assertThat(line.affected()).isEqualTo(10);
    line.set(Kind.NONE);
    send(11, 1);
    assertThat(out).containsExactly(frame(11));
    assertThat(line.affected()).as("of the last fault").isEqualTo(10);
  }

  @Test
  void corruptFramesHaveTheirLengthAndOneToThreeWrongBits() {
    line.set(Kind.CORRUPT);
    send(1, 50);
    assertThat(out).hasSize(50);
    int spoiled = 0;
    for (int i = 0; i < 50; i++) {
      int wrong = 0;
      for (int k = 0; k < 40; k++) {
        wrong += Integer.bitCount((out.get(i)[k] ^ (i + 1)) & 0xFF);
      }
      assertThat(wrong).isLessThanOrEqualTo(3);
      spoiled += wrong > 0 ? 1 : 0;
    }
    assertThat(spoiled).isGreaterThanOrEqualTo(48);
  }

  @Test
  void repeatSendsTheLastSoundFrameAgainAndAgain() {
    send(1, 2);
    line.set(Kind.REPEAT);
    send(3, 3);
    assertThat(firstBytes()).containsExactly(1, 2, 2, 2, 2);
  }

  @Test
  void reorderReversesBlocksOfSixteen() {
    line.set(Kind.REORDER);
    send(1, 15);
    assertThat(out).isEmpty();
    send(16, 1);
    assertThat(firstBytes())
        .containsExactly(16, 15, 14, 13, 12, 11, 10, 9, 8, 7, 6, 5, 4, 3, 2, 1);
  }

  @Test
  void delayedFramesComeInOrderAndAsLateAsAskedFor() {
    line.set(Kind.DELAY);
    send(1, 30);
    assertThat(out).isEmpty();
    send(31, 10);
    assertThat(firstBytes()).containsExactly(1, 2, 3, 4, 5, 6, 7, 8, 9, 10);
    line.set(Kind.NONE);
    send(41, 1);
    assertThat(firstBytes()).as("what was on its way is lost").hasSize(11).endsWith(41);
  }

  @Test
  void noiseHasTheLengthOfAFrameAndNothingOfIt() {
    line.set(Kind.NOISE);
    send(1, 5);
    assertThat(out).hasSize(5).allSatisfy(bytes -> assertThat(bytes).hasSize(40));
    assertThat(out).doesNotContain(frame(1), frame(2), frame(3));
  }
}
