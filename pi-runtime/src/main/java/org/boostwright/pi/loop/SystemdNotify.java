package org.boostwright.pi.loop;

import com.sun.jna.Library;
import com.sun.jna.Native;
import java.io.IOException;
import java.nio.ByteOrder;
import java.nio.charset.StandardCharsets;

/**
 * systemd's service watchdog: datagrams to the socket named by {@code NOTIFY_SOCKET}
 * (sd_notify(3)). Java has no datagrams on local sockets, so the C library sends them.
 */
public final class SystemdNotify implements Watchdog {
  /** The few calls that are needed. */
  interface CLibrary extends Library {
    int socket(int domain, int type, int protocol);

    int sendto(int socket, byte[] message, long length, int flags, byte[] address, int bytes);

    int close(int descriptor);
  }

  private static final int AF_UNIX = 1;
  private static final int SOCK_DGRAM = 2;
  private static final int SOCK_CLOEXEC = 02000000;
  private static final int MSG_NOSIGNAL = 0x4000;
  private static final int LONGEST_PATH = 107;

  private final CLibrary c = Native.load("c", CLibrary.class);
  private final int socket;
  private final byte[] address;
  private boolean ready;

  /**
   * @param path value of {@code NOTIFY_SOCKET}: a path, or a name that begins with {@code @}
   */
  public SystemdNotify(String path) throws IOException {
    byte[] name = path.getBytes(StandardCharsets.UTF_8);
    if (name.length == 0 || name.length > LONGEST_PATH) {
      throw new IOException("NOTIFY_SOCKET is no socket's name: " + path);
    }
    boolean named = name[0] != '@';
    address = new byte[2 + name.length + (named ? 1 : 0)];
    address[ByteOrder.nativeOrder() == ByteOrder.LITTLE_ENDIAN ? 0 : 1] = AF_UNIX;
    System.arraycopy(name, 0, address, 2, name.length);
    if (!named) {
      address[2] = 0;
    }
    socket = c.socket(AF_UNIX, SOCK_DGRAM | SOCK_CLOEXEC, 0);
    if (socket < 0) {
      throw new IOException("no socket for systemd");
    }
  }

  private void send(String text) throws IOException {
    byte[] bytes = text.getBytes(StandardCharsets.UTF_8);
    if (c.sendto(socket, bytes, bytes.length, MSG_NOSIGNAL, address, address.length) < 0) {
      throw new IOException("systemd does not take '" + text + "'");
    }
  }

  /** The first time it also says that the service has started: fed is only while it ticks. */
  @Override
  public void feed() throws IOException {
    send(ready ? "WATCHDOG=1" : "READY=1\nWATCHDOG=1");
    ready = true;
  }

  @Override
  public void close() throws IOException {
    try {
      send("STOPPING=1");
    } finally {
      c.close(socket);
    }
  }
}
