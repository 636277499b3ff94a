package org.boostwright.core.link;

/**
 * Consistent overhead byte stuffing: bytes without a zero, so that zero can end a frame.
 *
 * <p>Cheshire and Baker, <i>Consistent Overhead Byte Stuffing</i>, IEEE/ACM Transactions on
 * Networking 7, 1999, 159-172. Overhead: one byte for every started 254.
 */
public final class Cobs {
  private Cobs() {}

  /** Most bytes {@link #encode} can write for {@code length} bytes. */
  public static int encodedBound(int length) {
    return length + length / 254 + 1;
  }

  /**
   * Encodes.
   *
   * @return number of bytes written to {@code to} from {@code offset} on
   */
  public static int encode(byte[] from, int length, byte[] to, int offset) {
    int codeAt = offset;
    int out = offset + 1;
    int code = 1;
    for (int i = 0; i < length; i++) {
      if (from[i] != 0) {
        to[out++] = from[i];
        code++;
      }
      boolean blockFull = code == 0xFF;
      if (from[i] == 0 || (blockFull && i + 1 < length)) {
        to[codeAt] = (byte) code;
        codeAt = out++;
        code = 1;
      }
    }
    to[codeAt] = (byte) code;
    return out - offset;
  }

  /**
   * Decodes.
   *
   * @param length number of encoded bytes, without the zero that ends the frame
   * @return number of bytes written to {@code to}; -1 when the bytes are no encoding, or hold more
   *     than {@code to}
   */
  public static int decode(byte[] from, int length, byte[] to) {
    int in = 0;
    int out = 0;
    while (in < length) {
      int code = from[in++] & 0xFF;
      int data = code - 1;
      if (code == 0 || data > length - in || data > to.length - out) {
        return -1;
      }
      for (int i = 0; i < data; i++) {
        byte b = from[in++];
        if (b == 0) {
          return -1;
        }
        to[out++] = b;
      }
      if (code != 0xFF && in < length) {
        if (out == to.length) {
          return -1;
        }
        to[out++] = 0;
      }
    }
    return out;
  }
}
