package org.boostwright.core.link;

/**
 * Finds good frames in a stream of bytes.
 *
 * <p>Whatever comes in, it never throws, and at the next zero it starts afresh. A frame is good
 * when its stuffing decodes, its kind exists, its length is that of its kind and its checksum fits;
 * everything else is counted and dropped.
 */
public final class FrameDecoder {
  private final byte[] encoded = new byte[Cobs.encodedBound(Frame.MAX_BODY_BYTES)];
  private final byte[] body = new byte[Frame.MAX_BODY_BYTES];
  private int count;
  private boolean tooLong;
  private int position;
  private long good;
  private long rejected;

  /**
   * Takes one byte.
   *
   * @return true when it completed a good frame; its fields can be read until the next byte
   */
  public boolean take(byte b) {
    if (b != 0) {
      if (count == encoded.length) {
        tooLong = true;
      } else {
        encoded[count++] = b;
      }
      return false;
    }
    int received = count;
    boolean fits = !tooLong;
    count = 0;
    tooLong = false;
    if (received == 0 && fits) {
      return false; // zeros between frames are ordinary
    }
    if (fits && isGood(Cobs.decode(encoded, received, body))) {
      good++;
      rewind();
      return true;
    }
    rejected++;
    return false;
  }

  private boolean isGood(int length) {
    if (length < Frame.HEADER_BYTES + Frame.CRC_BYTES || length != Frame.bodyBytes(kind())) {
      return false;
    }
    int sent = (body[length - 2] & 0xFF) << 8 | (body[length - 1] & 0xFF);
    return sent == Crc16.of(body, length - Frame.CRC_BYTES);
  }

  /** Forgets a half-received frame; for a port that was opened anew. */
  public void clear() {
    count = 0;
    tooLong = false;
  }

  /** Kind of the frame just completed. */
  public int kind() {
    return body[0] & 0xFF;
  }

  /** Sequence number of the frame just completed. */
  public int sequence() {
    return int32At(1);
  }

  /** Good frames so far. */
  public long good() {
    return good;
  }

  /** Frames dropped so far: stuffing, kind, length or checksum wrong. */
  public long rejected() {
    return rejected;
  }

  /** Back to the first field of the payload. */
  void rewind() {
    position = Frame.HEADER_BYTES;
  }

  int get8() {
    return body[position++] & 0xFF;
  }

  int get16() {
    int high = get8();
    return high << 8 | get8();
  }

  int get32() {
    position += 4;
    return int32At(position - 4);
  }

  long get64() {
    long high = get32();
    return high << 32 | (get32() & 0xFFFFFFFFL);
  }

  double getFloat() {
    return Float.intBitsToFloat(get32());
  }

  private int int32At(int at) {
    return (body[at] & 0xFF) << 24
        | (body[at + 1] & 0xFF) << 16
        | (body[at + 2] & 0xFF) << 8
        | (body[at + 3] & 0xFF);
  }
}
