package org.boostwright.pi.link;

import com.fazecast.jSerialComm.SerialPort;
import com.fazecast.jSerialComm.SerialPortInvalidPortException;
import org.boostwright.core.link.BytePort;
import org.jspecify.annotations.Nullable;

/** A {@link BytePort} by jSerialComm. */
final class SerialBytes implements BytePort {
  private static final int READ_MILLIS = 50;

  private final String name;
  private final int baud;
  private volatile @Nullable SerialPort port;
  private long readNanos;

  SerialBytes(String name, int baud) {
    this.name = name;
    this.baud = baud;
  }

  @Override
  public String open() {
    try {
      SerialPort candidate = SerialPort.getCommPort(name);
      candidate.setComPortParameters(baud, 8, SerialPort.ONE_STOP_BIT, SerialPort.NO_PARITY);
      candidate.setFlowControl(SerialPort.FLOW_CONTROL_DISABLED);
      candidate.setComPortTimeouts(SerialPort.TIMEOUT_READ_SEMI_BLOCKING, READ_MILLIS, 0);
      if (!candidate.openPort(0)) {
        return name + " cannot be opened (in use, or not allowed)";
      }
      port = candidate;
      return "";
    } catch (SerialPortInvalidPortException e) {
      return name + " does not exist";
    }
  }

  @Override
  public int read(byte[] into) {
    SerialPort open = port;
    int count = open == null ? -1 : open.readBytes(into, 1);
    if (open == null || count <= 0) {
      return count;
    }
    readNanos = System.nanoTime();
    int waiting = Math.min(open.bytesAvailable(), into.length - 1);
    if (waiting <= 0) {
      return count;
    }
    int more = open.readBytes(into, waiting, 1);
    return more > 0 ? count + more : count;
  }

  @Override
  public long readNanos() {
    return readNanos;
  }

  @Override
  public void write(byte[] bytes, int length) {
    SerialPort open = port;
    if (open != null) {
      open.writeBytes(bytes, length);
    }
  }

  @Override
  public void close() {
    SerialPort open = port;
    port = null;
    if (open != null) {
      open.closePort();
    }
  }
}
