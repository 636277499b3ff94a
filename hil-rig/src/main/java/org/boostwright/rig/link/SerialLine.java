package org.boostwright.rig.link;

import java.util.concurrent.locks.LockSupport;
import org.boostwright.core.link.Line;

/**
 * A {@link Line} over a serial port, with a thread for each direction, so that neither a full nor a
 * vanished port ever holds a tick. A port that goes is opened again every 0.2 s.
 *
 * <p>The core may have neither threads nor a serial library, and the controller's program and the rig stay
 * apart: these few lines stand on both sides, what can go wrong in between is {@code Line}'s.
 */
final class SerialLine implements AutoCloseable {
  private static final long REOPEN_NANOS = 200_000_000L;
  private static final long END_MILLIS = 200L;

  private final Line line;
  private final Thread reader = thread(this::readAll, "link-read");
  private final Thread writer = thread(this::writeAll, "link-write");
  private volatile boolean stopping;

  /** A line that is not open yet, with room for this many frames to be sent. */
  SerialLine(String name, int baud, int outgoingFrames) {
    line = new Line(new SerialBytes(name, baud), outgoingFrames);
  }

  private static Thread thread(Runnable run, String name) {
    Thread thread = new Thread(run, name);
    thread.setDaemon(true);
    thread.setPriority(Thread.MAX_PRIORITY);
    return thread;
  }

  /** Starts opening the port and reading from it. */
  void start() {
    reader.start();
    writer.start();
  }

  /** What has come, and how it goes. */
  Line line() {
    return line;
  }

  /** Sends bytes soon; never waits. */
  void send(byte[] bytes, int length) {
    line.send(bytes, length);
    LockSupport.unpark(writer);
  }

  private void readAll() {
    RealTimeThread.lift();
    while (!stopping) {
      if (!line.readStep()) {
        LockSupport.parkNanos(REOPEN_NANOS);
      }
    }
  }

  private void writeAll() {
    RealTimeThread.lift();
    while (!stopping) {
      if (!line.writeStep()) {
        LockSupport.park();
      }
    }
    while (line.writeStep()) {
      // What waits still goes out: the last frame says rest.
    }
  }

  @Override
  public void close() {
    stopping = true;
    LockSupport.unpark(writer);
    LockSupport.unpark(reader);
    try {
      writer.join(END_MILLIS);
      reader.join(END_MILLIS);
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
    }
    line.close();
  }
}
