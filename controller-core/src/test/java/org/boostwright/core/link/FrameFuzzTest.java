package org.boostwright.core.link;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Arrays;
import java.util.Random;
import org.boostwright.core.Inputs;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/** A million spoiled frames: no exception, and no more accepted than CRC-16 allows. */
@Tag("L1")
class FrameFuzzTest {
  private static final int FRAMES = 1_000_000;

  private final Random random = new Random(4);
  private final Inputs inputs = new Inputs();
  private final StampClock clock = new StampClock(0L);
  private final FrameWriter writer = new FrameWriter();
  private final InputsFrame frame = new InputsFrame();

  private byte[] goodFrame(int sequence) {
    for (int c = 0; c < inputs.volts.length; c++) {
      inputs.volts[c] = 5.0 * random.nextDouble();
      inputs.sampleNanos[c] = sequence * 5_000_000L;
    }
    frame.stampMicros = sequence * 5000;
    frame.echo = sequence - 1;
    frame.echoValid = true;
    frame.inputs.copyFrom(inputs);
    frame.write(writer, sequence, clock);
    return Arrays.copyOf(writer.wire(), writer.wireLength());
  }

  /** Body of the frame the decoder has just completed. */
  private static byte[] bodyOf(byte[] wire) {
    byte[] body = new byte[Frame.MAX_BODY_BYTES];
    byte[] inner = Arrays.copyOfRange(wire, 1, wire.length - 1);
    return Arrays.copyOf(body, Cobs.decode(inner, inner.length, body));
  }

  private byte[] spoil(byte[] good) {
    byte[] bad = good.clone();
    switch (random.nextInt(6)) {
      case 0: // up to eight bits
        for (int i = 0; i <= random.nextInt(8); i++) {
          bad[random.nextInt(bad.length)] ^= (byte) (1 << random.nextInt(8));
        }
        return bad;
      case 1: // a burst of random bytes
        int from = random.nextInt(bad.length);
        for (int i = from; i < Math.min(bad.length, from + 1 + random.nextInt(20)); i++) {
          bad[i] = (byte) random.nextInt(256);
        }
        return bad;
      case 2: // cut short
        return Arrays.copyOf(bad, random.nextInt(bad.length));
      case 3: // bytes lost inside
        int lost = 1 + random.nextInt(4);
        int at = random.nextInt(bad.length - lost);
        byte[] shorter = Arrays.copyOf(bad, bad.length - lost);
        System.arraycopy(good, at + lost, shorter, at, good.length - at - lost);
        return shorter;
      case 4: // right length, random stuffed content without zeros: only the checksum can tell
        for (int i = 2; i < bad.length - 1; i++) {
          bad[i] = (byte) (1 + random.nextInt(255));
        }
        bad[1] = (byte) (bad.length - 2);
        return bad;
      default: // random bytes of any length
        byte[] noise = new byte[random.nextInt(200)];
        random.nextBytes(noise);
        return noise;
    }
  }

  @Test
  void aMillionSpoiledFramesDoNoHarm() {
    FrameDecoder decoder = new FrameDecoder();
    long accepted = 0;
    long acceptedBad = 0;
    long goodLost = 0;
    byte[] bodyBefore = new byte[0];
    for (int i = 0; i < FRAMES; i++) {
      byte[] good = goodFrame(i);
      byte[] sentBody = bodyOf(good);
      byte[] bad = spoil(good);
      for (byte b : bad) {
        if (decoder.take(b)) {
          accepted++;
          // A frame that lost only its last zero is completed by the first zero of the next one.
          boolean asSent = sameAs(sentBody, decoder) || sameAs(bodyBefore, decoder);
          acceptedBad += asSent ? 0 : 1;
        }
      }
      bodyBefore = sentBody;
      if (i % 10 == 0) {
        // A zero ends whatever came before; the next good frame must come through.
        boolean through = false;
        for (byte b : good) {
          through |= decoder.take(b);
        }
        goodLost += through ? 0 : 1;
      }
    }
    System.out.printf(
        "fuzz: %d spoiled frames, %d dropped, %d unchanged in content, %d wrong ones accepted%n",
        FRAMES, decoder.rejected(), accepted - acceptedBad, acceptedBad);
    assertThat(goodLost).isZero();
    assertThat(decoder.rejected()).isGreaterThan(FRAMES / 2);
    // At most every frame gets as far as its checksum: expected FRAMES/65536 = 15.3; a Poisson
    // count is above 40 with probability 1e-7.
    assertThat(acceptedBad).isLessThanOrEqualTo(40);
  }

  /** Compares through what the frame says, in the order of the body. */
  private static boolean sameAs(byte[] body, FrameDecoder decoder) {
    if (body.length != Frame.bodyBytes(decoder.kind()) || decoder.kind() != (body[0] & 0xFF)) {
      return false;
    }
    FrameDecoder other = new FrameDecoder();
    byte[] wire = new byte[Frame.MAX_WIRE_BYTES];
    int length = Cobs.encode(body, body.length, wire, 0);
    boolean complete = false;
    for (int i = 0; i <= length; i++) {
      complete = other.take(i < length ? wire[i] : 0);
    }
    assertThat(complete).isTrue();
    boolean same = decoder.sequence() == other.sequence();
    decoder.rewind();
    for (int i = Frame.HEADER_BYTES; i < body.length - Frame.CRC_BYTES; i++) {
      same &= decoder.get8() == other.get8();
    }
    return same;
  }

  /** One, two and three wrong bits inside the body are always found (Hamming distance 4). */
  @Test
  void upToThreeWrongBitsInABodyAreAlwaysFound() {
    byte[] body = bodyOf(goodFrame(77));
    for (int run = 0; run < 200_000; run++) {
      byte[] bad = body.clone();
      int bits = 1 + random.nextInt(3);
      for (int i = 0; i < bits; i++) {
        bad[random.nextInt(bad.length)] ^= (byte) (1 << random.nextInt(8));
      }
      if (Arrays.equals(bad, body)) {
        continue;
      }
      int sent = (bad[bad.length - 2] & 0xFF) << 8 | (bad[bad.length - 1] & 0xFF);
      assertThat(Crc16.of(bad, bad.length - 2)).isNotEqualTo(sent);
    }
  }
}
