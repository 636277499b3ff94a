package org.boostwright.core.link;

/** Builds one frame: header, payload in network byte order, checksum, stuffing, zeros. */
public final class FrameWriter {
  private final byte[] body = new byte[Frame.MAX_BODY_BYTES];
  private final byte[] wire = new byte[Frame.MAX_WIRE_BYTES];
  private int length;
  private int wireLength;

  /** Starts a frame. */
  void begin(int kind, int sequence) {
    length = 0;
    put8(kind);
    put32(sequence);
  }

  void put8(int value) {
    body[length++] = (byte) value;
  }

  void put16(int value) {
    put8(value >> 8);
    put8(value);
  }

  void put32(int value) {
    put16(value >> 16);
    put16(value);
  }

  void put64(long value) {
    put32((int) (value >> 32));
    put32((int) value);
  }

  void putFloat(double value) {
    put32(Float.floatToIntBits((float) value));
  }

  /** Ends the frame; it then stands in {@link #wire()}. */
  void end() {
    put16(Crc16.of(body, length));
    wire[0] = 0;
    int encoded = Cobs.encode(body, length, wire, 1);
    wire[1 + encoded] = 0;
    wireLength = encoded + 2;
  }

  /** The bytes to send, {@link #wireLength()} of them; overwritten by the next frame. */
  public byte[] wire() {
    return wire;
  }

  /** Number of bytes to send. */
  public int wireLength() {
    return wireLength;
  }
}
