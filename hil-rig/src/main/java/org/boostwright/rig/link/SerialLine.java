package org.boostwright.rig.link;

import com.fazecast.jSerialComm.SerialPort;
import com.fazecast.jSerialComm.SerialPortInvalidPortException;
import java.util.concurrent.locks.LockSupport;
import org.boostwright.core.link.ChunkQueue;
import org.boostwright.core.link.Frame;

/**
 * A serial port with a thread for each direction, so that neither a full nor a vanished port ever
 * holds the tick. A port that goes is opened again every 0.2 s.
 *
 * <p>A dead peer behind a live port shows only as silence; that is the protocol's business. The
 * controller's program has the same class of its own: the two share nothing but the core.
 */
final class SerialLine implements AutoCloseable {
  /** Baud rate when none is asked for. */
  static final int DEFAULT_BAUD = 460_800;

  private static final long REOPEN_NANOS = 200_000_000L;
  private static final int READ_MILLIS = 50;
  private static final int INCOMING_CHUNKS = 64;
  private static final int INCOMING_BYTES = 1024;

  /** Enough for a block of frames in reverse order. */
  private static final int OUTGOING_CHUNKS = 16;

  private final String name;
  private final int baud;
  private final ChunkQueue incoming = new ChunkQueue(INCOMING_CHUNKS, INCOMING_BYTES);
  private final ChunkQueue outgoing = new ChunkQueue(OUTGOING_CHUNKS, Frame.MAX_WIRE_BYTES);
  private final Thread reader;
  private final Thread writer;
  private volatile SerialPort port;
  private volatile boolean stopping;
  private volatile long opens;
  private volatile String trouble = "not opened yet";

  /** A line that is not open yet. */
  SerialLine(String name, int baud) {
    this.name = name;
    this.baud = baud;
    reader = new Thread(this::readAll, "link-read");
    writer = new Thread(this::writeAll, "link-write");
    reader.setDaemon(true);
    writer.setDaemon(true);
    reader.setPriority(Thread.MAX_PRIORITY);
    writer.setPriority(Thread.MAX_PRIORITY);
  }

  /** Starts opening the port and reading from it. */
  void start() {
    reader.start();
    writer.start();
  }

  /** Received bytes with their times; the caller is the only one to take. */
  ChunkQueue incoming() {
    return incoming;
  }

  /** Sends bytes soon; never waits. False when the port does not take them fast enough. */
  boolean send(byte[] bytes, int length) {
    boolean taken = outgoing.put(bytes, length, 0L);
    LockSupport.unpark(writer);
    return taken;
  }

  /** Frames not sent because the port did not take them. */
  long unsent() {
    return outgoing.refused();
  }

  /** How often the port was opened. */
  long opens() {
    return opens;
  }

  /** Why the port is not open; empty while it is. */
  String trouble() {
    return trouble;
  }

  @SuppressWarnings("NonAtomicVolatileUpdate") // only the reading thread counts
  private void readAll() {
    RealTimeThread.lift();
    byte[] bytes = new byte[INCOMING_BYTES];
    while (!stopping) {
      SerialPort open = open();
      if (open == null) {
        LockSupport.parkNanos(REOPEN_NANOS);
        continue;
      }
      opens++;
      trouble = "";
      port = open;
      readUntilGone(open, bytes);
      port = null;
      open.closePort();
    }
  }

  private void readUntilGone(SerialPort open, byte[] bytes) {
    while (!stopping) {
      int count = open.readBytes(bytes, 1);
      if (count < 0) {
        trouble = name + " has gone";
        return;
      }
      if (count == 0) {
        continue;
      }
      long now = System.nanoTime();
      int waiting = Math.min(open.bytesAvailable(), bytes.length - 1);
      if (waiting > 0) {
        int more = open.readBytes(bytes, waiting, 1);
        count += Math.max(0, more);
      }
      incoming.put(bytes, count, now);
    }
  }

  private SerialPort open() {
    try {
      SerialPort candidate = SerialPort.getCommPort(name);
      candidate.setComPortParameters(baud, 8, SerialPort.ONE_STOP_BIT, SerialPort.NO_PARITY);
      candidate.setFlowControl(SerialPort.FLOW_CONTROL_DISABLED);
      candidate.setComPortTimeouts(SerialPort.TIMEOUT_READ_SEMI_BLOCKING, READ_MILLIS, 0);
      if (candidate.openPort(0)) {
        return candidate;
      }
      trouble = name + " cannot be opened (in use, or not allowed)";
    } catch (SerialPortInvalidPortException e) {
      trouble = name + " does not exist";
    }
    return null;
  }

  private void writeAll() {
    RealTimeThread.lift();
    while (!stopping || (port != null && !outgoing.isEmpty())) {
      if (outgoing.isEmpty()) {
        LockSupport.park();
        continue;
      }
      SerialPort open = port;
      if (open != null) {
        open.writeBytes(outgoing.bytes(), outgoing.length());
      }
      outgoing.remove(); // without a port it is old by the time there is one
    }
  }

  @Override
  public void close() {
    stopping = true;
    LockSupport.unpark(writer);
    LockSupport.unpark(reader);
    try {
      writer.join(2L * READ_MILLIS);
      reader.join(4L * READ_MILLIS);
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
    }
  }
}
