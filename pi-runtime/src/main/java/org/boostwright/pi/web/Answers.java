package org.boostwright.pi.web;

import com.sun.net.httpserver.HttpExchange;
import java.io.IOException;
import java.io.InputStream;
import java.net.URLDecoder;
import java.nio.charset.StandardCharsets;
import java.util.HashMap;
import java.util.Map;
import java.util.Optional;

/** Short answers and short questions over HTTP. */
final class Answers {
  private static final int LONGEST_BODY = 1_024;

  private Answers() {}

  /** Plain words. */
  static void text(HttpExchange exchange, int status, String words) throws IOException {
    bytes(exchange, status, "text/plain; charset=utf-8", words.getBytes(StandardCharsets.UTF_8));
  }

  /** A JSON object. */
  static void json(HttpExchange exchange, JsonText json) throws IOException {
    byte[] body = json.toString().getBytes(StandardCharsets.UTF_8);
    bytes(exchange, 200, "application/json", body);
  }

  /** Anything short. */
  static void bytes(HttpExchange exchange, int status, String type, byte[] body)
      throws IOException {
    exchange.getResponseHeaders().set("Content-Type", type);
    boolean head = exchange.getRequestMethod().equals("HEAD");
    exchange.sendResponseHeaders(status, head || body.length == 0 ? -1 : body.length);
    if (!head && body.length > 0) {
      exchange.getResponseBody().write(body);
    }
  }

  /** The fields of a form; empty when the body is too long or is none. */
  static Optional<Map<String, String>> form(HttpExchange exchange) throws IOException {
    byte[] body;
    try (InputStream in = exchange.getRequestBody()) {
      body = in.readNBytes(LONGEST_BODY + 1);
    }
    if (body.length > LONGEST_BODY) {
      return Optional.empty();
    }
    Map<String, String> fields = new HashMap<>();
    for (String pair : new String(body, StandardCharsets.UTF_8).split("&")) {
      int equals = pair.indexOf('=');
      if (equals <= 0) {
        return Optional.empty();
      }
      try {
        fields.put(
            pair.substring(0, equals),
            URLDecoder.decode(pair.substring(equals + 1), StandardCharsets.UTF_8));
      } catch (IllegalArgumentException e) {
        return Optional.empty();
      }
    }
    return Optional.of(fields);
  }
}
