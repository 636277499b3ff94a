package org.boostwright.pi.web;

import java.io.IOException;
import java.net.InetAddress;
import java.net.InetSocketAddress;
import java.net.Socket;
import java.net.SocketTimeoutException;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Random;
import java.util.TreeMap;

/**
 * Malformed and hostile requests from a seed: {@code HostileRequests PORT COUNT [SEED]} sends them
 * to a page on this machine, one after the other, and prints what came back.
 */
public final class HostileRequests {
  private static final int ANSWER_MILLIS = 8_000;
  private static final List<String> PATHS =
      List.of(
          "/",
          "/api/about",
          "/api/faults",
          "/api/recordings",
          "/api/recording/drive-000001.csv",
          "/api/recording/../../../../etc/passwd",
          "/api/recording/%2e%2e%2f%2e%2e%2fetc%2fpasswd",
          "/api/recording/" + "A".repeat(3_000),
          "/api/bench",
          "/api/unlock",
          "/live.js?x=1",
          "//evil.example/",
          "http://evil.example/",
          "*",
          "mailto:x",
          "/%",
          "/%zz",
          "/\u0000",
          "/<script>alert(1)</script>",
          "");
  private static final List<String> METHODS =
      List.of("GET", "POST", "HEAD", "PUT", "get", "OPTIONS", "TRACE", "X".repeat(300), "", "G ET");
  private static final List<String> BODIES =
      List.of(
          "",
          "action=begin",
          "action=begin&steps=click",
          "action=stop",
          "action=answer&question=click_count&value=5",
          "token=" + "a".repeat(20),
          "{\"action\":\"begin\"}",
          "a=%zz&b=%",
          "=",
          "&&&&",
          "x".repeat(5_000));

  private final Random random;
  private final int port;

  HostileRequests(long seed, int port) {
    random = new Random(seed);
    this.port = port;
  }

  private <T> T any(List<T> of) {
    return of.get(random.nextInt(of.size()));
  }

  /** The next one. */
  byte[] next() {
    if (random.nextInt(8) == 0) {
      byte[] noise = new byte[random.nextInt(600)];
      random.nextBytes(noise);
      return noise;
    }
    if (random.nextBoolean()) {
      return wellFormed().getBytes(StandardCharsets.ISO_8859_1);
    }
    StringBuilder text = new StringBuilder();
    text.append(any(METHODS)).append(' ').append(any(PATHS));
    text.append(any(List.of(" HTTP/1.1", " HTTP/1.0", " HTTP/9.9", " ", "", " HTTP/1.1 extra")));
    text.append(end());
    text.append("Host: ");
    text.append(
        any(
            List.of(
                "127.0.0.1:" + port,
                "localhost:" + port,
                "127.0.0.1:" + port,
                "evil.example",
                "127.0.0.1",
                "",
                "[::1",
                "a".repeat(2_000))));
    text.append(end());
    String body = any(BODIES);
    for (int i = random.nextInt(6); i > 0; i--) {
      text.append(header(body.length())).append(end());
    }
    if (random.nextInt(40) == 0) {
      text.append("X: y").append(end()).append(("A: b" + end()).repeat(500));
    }
    text.append(end()).append(body);
    byte[] bytes = text.toString().getBytes(StandardCharsets.ISO_8859_1);
    if (random.nextInt(4) == 0 && bytes.length > 0) {
      bytes[random.nextInt(bytes.length)] = (byte) random.nextInt(256);
    }
    if (random.nextInt(6) == 0) {
      return Arrays.copyOf(bytes, random.nextInt(bytes.length + 1));
    }
    return bytes;
  }

  /** Without a flaw in its form, so that it gets as far as what it asks for. */
  private String wellFormed() {
    boolean post = random.nextBoolean();
    String body = post ? any(BODIES) : "";
    StringBuilder text = new StringBuilder(post ? "POST " : "GET ");
    String path = any(PATHS.subList(0, 12));
    text.append(path).append(" HTTP/1.1\r\nHost: 127.0.0.1:").append(port).append("\r\n");
    text.append("Connection: close\r\nContent-Length: ").append(body.length()).append("\r\n");
    if (post) {
      text.append("Origin: http://127.0.0.1:").append(port).append("\r\nX-Boostwright: 1\r\n");
    }
    text.append("Cookie: boostwright=").append(Long.toHexString(random.nextLong()));
    return text.append("\r\n\r\n").append(body).toString();
  }

  private String end() {
    return random.nextInt(30) == 0 ? any(List.of("\n", "\r", "", "\r\n\r\n")) : "\r\n";
  }

  private String header(int length) {
    return any(
        List.of(
            "Content-Length: " + length,
            "Content-Length: " + length,
            "Content-Length: -1",
            "Content-Length: 99999999999999999999",
            "Content-Length: 4294967297",
            "Content-Length: abc",
            "Content-Length: 0\r\nContent-Length: 5",
            "Transfer-Encoding: chunked",
            "Transfer-Encoding: chunked\r\nContent-Length: 3",
            "Transfer-Encoding: gzip",
            "Origin: http://127.0.0.1:" + port,
            "Origin: http://evil.example",
            "Origin: null",
            "X-Boostwright: 1",
            "X-Boostwright: 1",
            "Cookie: boostwright=" + "0".repeat(48),
            "Cookie: boostwright=;;;==;boostwright",
            "Cookie: " + ";".repeat(4_000),
            "Expect: 100-continue",
            "Connection: keep-alive, Upgrade\r\nUpgrade: websocket",
            "Range: bytes=0-18446744073709551615",
            "Accept: text/event-stream",
            ": nameless",
            "No colon here",
            " folded: line",
            "Sec-Fetch-Site: cross-site"));
  }

  /** Whether a request names a transfer coding the page does not know. */
  static boolean unknownCoding(byte[] request) {
    String text =
        new String(request, StandardCharsets.ISO_8859_1).toLowerCase(Locale.ROOT);
    return text.contains("transfer-encoding:");
  }

  /**
   * Sends one.
   *
   * @return its status; 0 when the page hung up without a word
   * @throws SocketTimeoutException when nothing came at all
   */
  int send(byte[] request) throws IOException {
    try (Socket socket = new Socket()) {
      socket.connect(new InetSocketAddress(InetAddress.getLoopbackAddress(), port), ANSWER_MILLIS);
      socket.setSoTimeout(ANSWER_MILLIS);
      byte[] head = new byte[12];
      int got;
      try {
        socket.getOutputStream().write(request);
        socket.shutdownOutput();
        got = socket.getInputStream().readNBytes(head, 0, head.length);
      } catch (SocketTimeoutException e) {
        throw e;
      } catch (IOException e) {
        return 0;
      }
      String text = new String(head, 0, got, StandardCharsets.ISO_8859_1);
      return text.matches("HTTP/1\\.\\d \\d{3}") ? Integer.parseInt(text.substring(9)) : 0;
    }
  }

  /** See the class. */
  public static void main(String[] arguments) throws IOException {
    int port = Integer.parseInt(arguments[0]);
    int count = Integer.parseInt(arguments[1]);
    long seed = arguments.length > 2 ? Long.parseLong(arguments[2]) : 1L;
    HostileRequests requests = new HostileRequests(seed, port);
    Map<Integer, Integer> statuses = new TreeMap<>();
    long begin = System.nanoTime();
    for (int i = 0; i < count; i++) {
      statuses.merge(requests.send(requests.next()), 1, Integer::sum);
    }
    System.out.printf(
        "%d requests in %.1f s, statuses (0 = hung up): %s%n",
        count, (System.nanoTime() - begin) * 1e-9, statuses);
  }
}
