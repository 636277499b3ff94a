package org.boostwright.core.link;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Stuffing and checksum against published values. */
class CobsAndCrcTest {
  private static byte[] bytes(String hex) {
    String compact = hex.replace(" ", "");
    byte[] bytes = new byte[compact.length() / 2];
    for (int i = 0; i < bytes.length; i++) {
      bytes[i] = (byte) Integer.parseInt(compact.substring(2 * i, 2 * i + 2), 16);
    }
    return bytes;
  }

  private static byte[] encode(byte[] plain) {
    byte[] to = new byte[Cobs.encodedBound(plain.length)];
    return Arrays.copyOf(to, Cobs.encode(plain, plain.length, to, 0));
  }

  /** Check value of CRC-16/CCITT-FALSE (catalogue of parametrised CRC algorithms, G. Cook). */
  @Test
  void crcOfTheCheckTextIs29B1() {
    byte[] text = "123456789".getBytes(StandardCharsets.US_ASCII);
    assertThat(Crc16.of(text, text.length)).isEqualTo(0x29B1);
    assertThat(Crc16.of(text, 0)).isEqualTo(0xFFFF);
  }

  /** Bit by bit from the polynomial, without a table. */
  @Test
  void crcEqualsItsDefinitionOnRandomBytes() {
    Random random = new Random(11);
    for (int run = 0; run < 1000; run++) {
      byte[] bytes = new byte[random.nextInt(120)];
      random.nextBytes(bytes);
      int crc = 0xFFFF;
      for (byte b : bytes) {
        for (int bit = 7; bit >= 0; bit--) {
          boolean feedback = ((crc >> 15) & 1) != ((b >> bit) & 1);
          crc = (crc << 1) & 0xFFFF;
          crc ^= feedback ? 0x1021 : 0;
        }
      }
      assertThat(Crc16.of(bytes, bytes.length)).isEqualTo(crc);
    }
  }

  /** Cheshire and Baker, IEEE/ACM ToN 7, 1999; the rest by hand from its rules. */
  @ParameterizedTest
  @CsvSource({
    "00, 01 01",
    "00 00, 01 01 01",
    "11 22 00 33, 03 11 22 02 33",
    "11 22 33 44, 05 11 22 33 44",
    "11 00 00 00, 02 11 01 01 01"
  })
  void stuffingEqualsTheExamples(String plain, String stuffed) {
    assertThat(encode(bytes(plain))).isEqualTo(bytes(stuffed));
    byte[] back = new byte[16];
    int length = Cobs.decode(bytes(stuffed), bytes(stuffed).length, back);
    assertThat(Arrays.copyOf(back, length)).isEqualTo(bytes(plain));
  }

  @Test
  void everyLengthUpTo600ComesBackWithoutAZeroOnTheWay() {
    Random random = new Random(12);
    for (int length = 0; length <= 600; length++) {
      for (int zeroShare = 0; zeroShare <= 4; zeroShare++) {
        byte[] plain = new byte[length];
        for (int i = 0; i < length; i++) {
          plain[i] = random.nextInt(4) < zeroShare ? 0 : (byte) (1 + random.nextInt(255));
        }
        byte[] stuffed = encode(plain);
        assertThat(stuffed).doesNotContain(0);
        byte[] back = new byte[length];
        assertThat(Cobs.decode(stuffed, stuffed.length, back)).isEqualTo(length);
        assertThat(back).isEqualTo(plain);
      }
    }
  }

  @ParameterizedTest
  @CsvSource({"00", "02", "05 11 22", "02 00", "03 11 00 01"})
  void whatIsNoStuffingIsRefused(String hex) {
    byte[] bad = bytes(hex);
    assertThat(Cobs.decode(bad, bad.length, new byte[16])).isEqualTo(-1);
  }

  @Test
  void moreThanTheBufferHoldsIsRefused() {
    byte[] stuffed = bytes("05 11 22 33 44");
    assertThat(Cobs.decode(stuffed, stuffed.length, new byte[3])).isEqualTo(-1);
    byte[] zeros = bytes("01 01 01 01");
    assertThat(Cobs.decode(zeros, zeros.length, new byte[2])).isEqualTo(-1);
    assertThat(Cobs.decode(zeros, zeros.length, new byte[3])).isEqualTo(3);
  }
}
