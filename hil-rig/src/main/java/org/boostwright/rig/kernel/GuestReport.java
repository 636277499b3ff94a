package org.boostwright.rig.kernel;

import java.io.EOFException;
import java.io.IOException;
import java.io.InputStream;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;

/**
 * What the guest did since the last exchange; the layout is that of {@code struct bw_report}.
 *
 * @param nanos time in the guest, CLOCK_MONOTONIC, ns
 * @param outputs level of every output line, bit by bit
 * @param transfers transfers on the I2C bus since boot
 * @param lostEvents events that found the guest's buffer full since boot
 * @param events what the drivers were told, in order
 * @param text what the guest's shell said
 */
record GuestReport(
    long nanos,
    int outputs,
    long transfers,
    long lostEvents,
    List<KernelEvent> events,
    String text) {
  private static final int MAGIC = 0x42775231;
  private static final int HEAD_BYTES = 32;
  private static final int EVENT_BYTES = 32;
  private static final int MOST_EVENTS = 1024;
  private static final int MOST_TEXT = 32_768;

  /** Copies the events. */
  GuestReport {
    events = List.copyOf(events);
  }

  /**
   * Reads the next report; waits for it.
   *
   * @throws EOFException when the guest has ended
   */
  static GuestReport read(InputStream from) throws IOException {
    ByteBuffer head = take(from, HEAD_BYTES);
    if (head.getInt() != MAGIC) {
      throw new IOException("the guest's report does not begin as one");
    }
    int count = head.getInt();
    int textBytes = head.getInt();
    if (count < 0 || count > MOST_EVENTS || textBytes < 0 || textBytes > MOST_TEXT) {
      throw new IOException("the guest's report is longer than any");
    }
    long lost = Integer.toUnsignedLong(head.getInt());
    long nanos = head.getLong();
    int outputs = head.getInt();
    long transfers = Integer.toUnsignedLong(head.getInt());
    ByteBuffer body = take(from, count * EVENT_BYTES);
    List<KernelEvent> events = new ArrayList<>(count);
    for (int i = 0; i < count; i++) {
      events.add(event(body));
    }
    byte[] text = take(from, textBytes).array();
    return new GuestReport(
        nanos, outputs, transfers, lost, events, new String(text, StandardCharsets.UTF_8));
  }

  private static KernelEvent event(ByteBuffer from) throws IOException {
    int wire = from.getInt();
    KernelEvent.Kind kind = KernelEvent.Kind.of(wire);
    if (kind == null) {
      throw new IOException("the guest reports an event of unknown kind " + wire);
    }
    int number = Short.toUnsignedInt(from.getShort());
    int flags = Short.toUnsignedInt(from.getShort());
    return new KernelEvent(kind, number, flags, from.getLong(), from.getLong(), from.getLong());
  }

  private static ByteBuffer take(InputStream from, int bytes) throws IOException {
    byte[] all = from.readNBytes(bytes);
    if (all.length < bytes) {
      throw new EOFException("the guest has ended");
    }
    return ByteBuffer.wrap(all).order(ByteOrder.LITTLE_ENDIAN);
  }
}
