package org.boostwright.pi.web;

import java.io.IOException;
import java.net.InetAddress;
import java.net.InetSocketAddress;
import java.net.Socket;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import org.boostwright.core.settings.Settings;
import org.boostwright.core.state.Permission;
import org.boostwright.pi.loop.GuestBoost;
import org.boostwright.rig.scenario.ProjectCarSettings;

/** The live page over a stepped loop, at a free port of this machine. */
final class PageUnderTest implements AutoCloseable {
  static final String TOKEN = "a-token-of-some-length";
  private static final int ANSWER_MILLIS = 7_000;

  final Settings settings = ProjectCarSettings.load();
  final PageGuest guest = new PageGuest(settings.valve().frequencyHz());
  final SteppedLoop car = new SteppedLoop(settings, guest);
  final GuestBoost driver;
  private final LivePage page;

  PageUnderTest(Path folder, int mostPerSecond) throws IOException {
    car.wires = SteppedLoop.standing(99.0);
    driver = GuestBoost.open(folder);
    PageFacts facts =
        new PageFacts(
            "test",
            settings,
            ProjectCarSettings.text(),
            "0123456789abcdef0123",
            "not proven",
            Permission.FULL,
            "stepped",
            folder.resolve("recordings"));
    page =
        new LivePage(
            facts,
            car.loop().latest(),
            guest,
            driver,
            () -> new PageHealth(car.loop().stats().ticks(), 0, 0, 0, 0, "", "", 0, ""));
    page.start(
        new PageAddress("127.0.0.1", InetAddress.getLoopbackAddress(), 0),
        new PageToken(TOKEN),
        mostPerSecond);
  }

  int port() {
    return page.port();
  }

  /** Sends bytes as they are and returns the whole answer; empty when the page just hung up. */
  String send(byte[] request) throws IOException {
    try (Socket socket = new Socket()) {
      socket.connect(new InetSocketAddress(InetAddress.getLoopbackAddress(), port()), 2_000);
      socket.setSoTimeout(ANSWER_MILLIS);
      try {
        socket.getOutputStream().write(request);
        socket.shutdownOutput();
        return new String(socket.getInputStream().readAllBytes(), StandardCharsets.ISO_8859_1);
      } catch (java.net.SocketTimeoutException e) {
        throw e;
      } catch (IOException e) {
        return ""; // refused by hanging up
      }
    }
  }

  /** A request with its head lines; Host and Connection are added. */
  String ask(String method, String path, String body, String... headers) throws IOException {
    StringBuilder text = new StringBuilder(method + " " + path + " HTTP/1.1\r\n");
    text.append("Host: 127.0.0.1:").append(port()).append("\r\nConnection: close\r\n");
    for (String header : headers) {
      text.append(header).append("\r\n");
    }
    text.append("Content-Length: ").append(body.length()).append("\r\n\r\n").append(body);
    return send(text.toString().getBytes(StandardCharsets.ISO_8859_1));
  }

  /** A post as the page's own script sends it. */
  String post(String path, String body, String... more) throws IOException {
    String[] headers = new String[more.length + 2];
    headers[0] = "Origin: http://127.0.0.1:" + port();
    headers[1] = "X-Boostwright: 1";
    System.arraycopy(more, 0, headers, 2, more.length);
    return ask("POST", path, body, headers);
  }

  /** Gives the token; the cookie header that holds the key. */
  String unlock() throws IOException {
    String answer = post("/api/unlock", "token=" + TOKEN);
    int at = answer.toLowerCase(java.util.Locale.ROOT).indexOf("set-cookie: ");
    String cookie = answer.substring(at + 12);
    return "Cookie: " + cookie.substring(0, cookie.indexOf(';'));
  }

  /** Status of an answer; 0 when there was none. */
  static int status(String answer) {
    return answer.startsWith("HTTP/1.") && answer.length() >= 12
        ? Integer.parseInt(answer.substring(9, 12))
        : 0;
  }

  @Override
  public void close() {
    page.close();
    car.close();
  }
}
