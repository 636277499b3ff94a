package org.boostwright.pi.web;

import com.sun.net.httpserver.HttpExchange;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import org.jspecify.annotations.Nullable;

/**
 * The newest frame to everybody who listens (WHATWG HTML, server-sent events). A frame is written
 * once for all; a listener that cannot keep up misses frames and nobody waits for it.
 */
final class EventStream {
  private static final int MOST = 6;
  private static final long QUIET_MILLIS = 2_000L;

  private byte @Nullable [] frame;
  private long number;
  private int listeners;
  private boolean closed;

  /** A new frame. */
  synchronized void publish(String json) {
    frame = ("data: " + json + "\n\n").getBytes(StandardCharsets.UTF_8);
    number++;
    notifyAll();
  }

  /** Nobody gets anything any more. */
  synchronized void close() {
    closed = true;
    notifyAll();
  }

  private synchronized boolean enter() {
    if (listeners >= MOST) {
      return false;
    }
    listeners++;
    return true;
  }

  private synchronized void leave() {
    listeners--;
  }

  /** Listeners now. */
  synchronized int listeners() {
    return listeners;
  }

  /** Serves one listener until it goes away, on the calling thread. */
  void serve(HttpExchange exchange) throws IOException {
    if (!enter()) {
      Answers.text(exchange, 429, "too many viewers");
      return;
    }
    try {
      exchange.getResponseHeaders().set("Content-Type", "text/event-stream");
      exchange.sendResponseHeaders(200, 0);
      OutputStream out = exchange.getResponseBody();
      out.write("retry: 1000\n\n".getBytes(StandardCharsets.UTF_8));
      long seen = -1L;
      while (true) {
        byte[] next;
        synchronized (this) {
          if (number == seen && !closed) {
            wait(QUIET_MILLIS);
          }
          if (closed) {
            return;
          }
          next = number == seen || frame == null ? null : frame;
          seen = number;
        }
        out.write(next == null ? ":\n\n".getBytes(StandardCharsets.UTF_8) : next);
        out.flush();
      }
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
    } finally {
      leave();
    }
  }
}
