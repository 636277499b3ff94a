package org.boostwright.pi.link;

import com.fazecast.jSerialComm.SerialPort;
import com.fazecast.jSerialComm.SerialPortInvalidPortException;
import java.util.concurrent.locks.LockSupport;
import org.boostwright.core.link.ChunkQueue;
import org.boostwright.core.link.Frame;
import org.boostwright.pi.io.RealTime;

/**
 * A serial port with a thread for each direction, so that neither a full nor a vanished port ever
 * holds the tick. A port that goes is opened again every 0.2 s.
 *
 * <p>A dead peer behind a live port shows only as silence; that is the protocol's business.
 */
public final class SerialLine implements AutoCloseable {
  /** Baud rate when none is asked for. */
  public static final int DEFAULT_BAUD = 460_800;

  private static final long REOPEN_NANOS = 200_000_000L;
  private static final int READ_MILLIS = 50;
  private static final int INCOMING_CHUNKS = 64;
  private static final int INCOMING_BYTES = 1024;

  /** Few, so that a peer that stopped reading finds no old frames when it comes back. */
  private static final int OUTGOING_CHUNKS = 4;

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
  public SerialLine(String name, int baud) {
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
  public void start() {
    reader.start();
    writer.start();
  }

  /** Received bytes with their times; the caller is the only one to take. */
  public ChunkQueue incoming() {
    return incoming;
  }

  /** Sends bytes soon; never waits. False when the port does not take them fast enough. */
  public boolean send(byte[] bytes, int length) {
    boolean taken = outgoing.put(bytes, length, 0L);
    LockSupport.unpark(writer);
    return taken;
  }

  /** Frames not sent because the port did not take them. */
  public long unsent() {
    return outgoing.refused();
  }

  /** How often the port was opened. */
  public long opens() {
    return opens;
  }

  /** Why the port is not open; empty while it is. */
  public String trouble() {
    return trouble;
  }

  @SuppressWarnings("NonAtomicVolatileUpdate") // only the reading thread counts
  private void readAll() {
    RealTime.liftThread();
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
    RealTime.liftThread();
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
