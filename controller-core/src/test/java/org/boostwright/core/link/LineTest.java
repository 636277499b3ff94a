package org.boostwright.core.link;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayOutputStream;
import java.util.ArrayDeque;
import java.util.Arrays;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/** A line over a port that is pulled out and put back, stepped by hand. */
@Tag("L1")
class LineTest {
  /** A port that is there or not, and bytes that come at their times. */
  private static final class ModelPort implements BytePort {
    boolean there = true;
    boolean open;
    long nowNanos;
    final ArrayDeque<byte[]> coming = new ArrayDeque<>();
    final ByteArrayOutputStream written = new ByteArrayOutputStream();
    int closes;

    @Override
    public String open() {
      open = there;
      return there ? "" : "no such port";
    }

    @Override
    public int read(byte[] into) {
      assertThat(open).isTrue();
      if (!there) {
        return -1;
      }
      byte[] bytes = coming.poll();
      if (bytes == null) {
        return 0;
      }
      System.arraycopy(bytes, 0, into, 0, bytes.length);
      return bytes.length;
    }

    @Override
    public long readNanos() {
      return nowNanos;
    }

    @Override
    public void write(byte[] bytes, int length) {
      assertThat(open).isTrue();
      written.write(bytes, 0, length);
    }

    @Override
    public void close() {
      open = false;
      closes++;
    }
  }

  private final ModelPort port = new ModelPort();
  private final Line line = new Line(port, 4);

  private void send(int... bytes) {
    byte[] frame = new byte[bytes.length];
    for (int i = 0; i < bytes.length; i++) {
      frame[i] = (byte) bytes[i];
    }
    line.send(frame, frame.length);
  }

  @Test
  void bytesComeOutWithTheTimeTheyCame() {
    assertThat(line.readStep()).isTrue();
    port.coming.add(new byte[] {1, 2, 3});
    port.nowNanos = 77L;
    assertThat(line.readStep()).isTrue();
    assertThat(line.incoming().length()).isEqualTo(3);
    assertThat(line.incoming().nanos()).isEqualTo(77L);
    assertThat(Arrays.copyOf(line.incoming().bytes(), 3)).containsExactly(1, 2, 3);
    line.incoming().remove();
    assertThat(line.readStep()).isTrue();
    assertThat(line.incoming().isEmpty()).isTrue();
  }

  @Test
  void framesGoOutInTheirOrder() {
    line.readStep();
    send(1, 2);
    send(3);
    assertThat(line.writeStep()).isTrue();
    assertThat(line.writeStep()).isTrue();
    assertThat(line.writeStep()).isFalse();
    assertThat(port.written.toByteArray()).containsExactly(1, 2, 3);
  }

  @Test
  void aPortThatIsNotThereIsTriedAgainAndItsFramesAreDroppedAndNotKept() {
    port.there = false;
    assertThat(line.readStep()).isFalse();
    assertThat(line.trouble()).isEqualTo("no such port");
    assertThat(line.opens()).isZero();
    send(1);
    assertThat(line.writeStep()).isTrue();
    port.there = true;
    assertThat(line.readStep()).isTrue();
    assertThat(line.trouble()).isEmpty();
    send(2);
    line.writeStep();
    assertThat(port.written.toByteArray()).containsExactly(2);
  }

  @Test
  void aPortThatIsPulledOutIsClosedAndOpenedAgainWhenItIsBack() {
    line.readStep();
    port.there = false;
    assertThat(line.readStep()).isFalse();
    assertThat(port.closes).isEqualTo(1);
    assertThat(line.trouble()).isNotEmpty();
    for (int i = 0; i < 10; i++) {
      assertThat(line.readStep()).isFalse();
    }
    port.there = true;
    assertThat(line.readStep()).isTrue();
    assertThat(line.opens()).isEqualTo(2);
    assertThat(line.trouble()).isEmpty();
  }

  @Test
  void aPeerThatStoppedReadingCostsFramesAndNeverWaiting() {
    line.readStep();
    for (int i = 0; i < 10; i++) {
      send(i);
    }
    assertThat(line.unsent()).isEqualTo(6);
    while (line.writeStep()) {
      // The four that had room.
    }
    assertThat(port.written.toByteArray()).containsExactly(0, 1, 2, 3);
  }

  @Test
  void closingClosesThePortOnceAndOnlyWhenItIsOpen() {
    line.close();
    assertThat(port.closes).isZero();
    line.readStep();
    line.close();
    line.close();
    assertThat(port.closes).isEqualTo(1);
  }
}
