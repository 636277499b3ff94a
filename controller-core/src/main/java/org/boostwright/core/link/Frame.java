package org.boostwright.core.link;

/** What all frames have in common: protocol number, kinds, lengths. */
public final class Frame {
  /** Version of the whole protocol; both ends must have the same. */
  public static final int PROTOCOL = 1;

  /** Handshake, both ways. */
  public static final int HELLO = 1;

  /** What the car's wires say, rig to controller. */
  public static final int INPUTS = 2;

  /** What the controller commands, controller to rig. */
  public static final int OUTPUTS = 3;

  /** Kind (1) and sequence (4). */
  static final int HEADER_BYTES = 5;

  static final int CRC_BYTES = 2;

  /** Longest body: header, payload, checksum. */
  static final int MAX_BODY_BYTES = 128;

  /** Longest frame on the wire, both zeros included. */
  public static final int MAX_WIRE_BYTES = 2 + MAX_BODY_BYTES + 1;

  /**
   * First sequence number of every sender: 20 s of ticks before it rolls over, so that every run
   * longer than that has exercised the roll-over.
   */
  public static final int FIRST_SEQUENCE = -4000;

  /** First time stamp of every sender, us: it rolls over 20 s later, for the same reason. */
  public static final int FIRST_STAMP_MICROS = -20_000_000;

  private Frame() {}

  /** Length of the whole body of a kind; 0 for a kind that does not exist. */
  static int bodyBytes(int kind) {
    int payload;
    switch (kind) {
      case HELLO:
        payload = HelloFrame.PAYLOAD_BYTES;
        break;
      case INPUTS:
        payload = InputsFrame.PAYLOAD_BYTES;
        break;
      case OUTPUTS:
        payload = OutputsFrame.PAYLOAD_BYTES;
        break;
      default:
        return 0;
    }
    return HEADER_BYTES + payload + CRC_BYTES;
  }
}
