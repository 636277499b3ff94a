package org.boostwright.pi.web;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.net.InetAddress;
import java.net.InetSocketAddress;
import java.net.Socket;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermissions;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Who may do what at the page, over real connections to this machine. */
@Tag("W1")
class PageGateTest {
  @TempDir Path folder;
  private PageUnderTest page;

  @BeforeEach
  void open() throws IOException {
    Files.createDirectories(folder.resolve("recordings"));
    Files.writeString(folder.resolve("recordings/drive-000001.csv"), "time_ns\n1\n");
    Files.writeString(folder.resolve("secret.csv"), "do not give away");
    page = new PageUnderTest(folder, 10_000);
    page.car.ticks(700);
  }

  @AfterEach
  void close() {
    page.close();
  }

  private String get(String path, String... headers) throws IOException {
    return page.ask("GET", path, "", headers);
  }

  private static int status(String answer) {
    return PageUnderTest.status(answer);
  }

  @Test
  void looksAreFreeAndEveryAnswerIsHardened() throws IOException {
    for (String path : List.of("/", "/live.css", "/live.js", "/icon.svg", "/api/about")) {
      String answer = get(path);
      assertThat(status(answer)).as(path).isEqualTo(200);
      assertThat(answer.toLowerCase(java.util.Locale.ROOT))
          .as(path)
          .contains("content-security-policy: default-src 'none';")
          .contains("frame-ancestors 'none'")
          .contains("x-content-type-options: nosniff")
          .contains("referrer-policy: no-referrer")
          .contains("cache-control: no-store")
          .doesNotContain("unsafe-inline")
          .doesNotContain("access-control-allow");
    }
    assertThat(get("/")).doesNotContain("<script>").doesNotContain("style=\"");
  }

  @Test
  void foreignNamesOriginsAndMethodsAreRefused() throws IOException {
    String bad = "GET / HTTP/1.1\r\nHost: evil.example\r\nConnection: close\r\n\r\n";
    assertThat(status(page.send(bad.getBytes(StandardCharsets.US_ASCII)))).isEqualTo(421);
    String none = "GET / HTTP/1.0\r\n\r\n";
    assertThat(status(page.send(none.getBytes(StandardCharsets.US_ASCII)))).isEqualTo(421);
    assertThat(status(get("/", "Host: evil.example"))).as("two hosts").isEqualTo(421);
    assertThat(status(get("/", "Origin: http://evil.example"))).isEqualTo(403);
    assertThat(status(get("/", "Origin: null"))).isEqualTo(403);
    assertThat(status(get("/", "Sec-Fetch-Site: cross-site"))).isEqualTo(403);
    assertThat(status(get("/", "Sec-Fetch-Site: same-site"))).isEqualTo(403);
    for (String method : List.of("PUT", "DELETE", "OPTIONS", "TRACE", "PATCH", "CONNECT")) {
      assertThat(status(page.ask(method, "/", ""))).as(method).isIn(405, 400);
    }
  }

  @Test
  void nothingIsDoneWithoutTheTokenAndItsTwinWithIt() throws IOException {
    String begin = "action=begin&steps=ambient,click";
    assertThat(status(page.post("/api/bench", begin))).isEqualTo(401);
    assertThat(status(page.post("/api/bench", begin, "Cookie: boostwright=00ff"))).isEqualTo(401);
    assertThat(status(get("/api/recording/drive-000001.csv"))).isEqualTo(401);
    assertThat(page.guest.busy()).isFalse();
    String key = page.unlock();
    assertThat(status(page.ask("POST", "/api/bench", begin, key))).as("no own header").isEqualTo(403);
    assertThat(
            status(
                page.ask("POST", "/api/bench", begin, key, "X-Boostwright: 1")))
        .as("no origin")
        .isEqualTo(403);
    assertThat(page.guest.busy()).isFalse();
    assertThat(status(page.post("/api/bench", begin, key))).isEqualTo(200);
    assertThat(page.guest.busy()).isTrue();
    assertThat(get("/api/recording/drive-000001.csv", key)).contains("time_ns\n1\n");
  }

  @Test
  void guessingTheTokenIsSlowedAndNeverShown() throws IOException {
    for (int i = 0; i < 6; i++) {
      assertThat(status(page.post("/api/unlock", "token=guess" + i))).isEqualTo(401);
    }
    assertThat(status(page.post("/api/unlock", "token=guess"))).isEqualTo(429);
    assertThat(status(page.post("/api/unlock", "token=" + PageUnderTest.TOKEN))).isEqualTo(429);
    assertThat(get("/api/about")).doesNotContain(PageUnderTest.TOKEN);
  }

  @Test
  void keyIsNoScriptsBusiness() throws IOException {
    assertThat(page.post("/api/unlock", "token=" + PageUnderTest.TOKEN))
        .contains("HttpOnly")
        .contains("SameSite=Strict");
  }

  @Test
  void onlyRecordingsLeaveTheirFolder() throws IOException {
    Files.createSymbolicLink(
        folder.resolve("recordings/drive-000002.csv"), folder.resolve("secret.csv"));
    String key = page.unlock();
    for (String name :
        List.of(
            "..%2Fsecret.csv",
            "../secret.csv",
            "%2e%2e/secret.csv",
            "..%5csecret.csv",
            "drive-000002.csv",
            "drive-000001.csv%00",
            "/etc/passwd",
            "%2Fetc%2Fpasswd",
            ".",
            "")) {
      String answer = get("/api/recording/" + name, key);
      assertThat(status(answer)).as(name).isIn(400, 404);
      assertThat(answer).doesNotContain("do not give away").doesNotContain("root:");
    }
    assertThat(get("/api/recordings")).contains("drive-000001").doesNotContain("drive-000002");
  }

  @Test
  void sizesRatesAndViewersAreBounded() throws IOException {
    assertThat(status(page.post("/api/unlock", "token=" + "x".repeat(2_000)))).isEqualTo(400);
    assertThat(status(get("/" + "x".repeat(200_000)))).isIn(0, 400, 404, 413, 414, 431);
    assertThat(status(get("/", "X-Long: " + "x".repeat(100_000)))).isIn(0, 400, 431);
    List<Socket> viewers = new ArrayList<>();
    try {
      for (int i = 0; i < 6; i++) {
        viewers.add(viewer());
      }
      assertThat(status(get("/api/events"))).isEqualTo(429);
      assertThat(status(get("/"))).as("looks go on").isEqualTo(200);
    } finally {
      for (Socket viewer : viewers) {
        viewer.close();
      }
    }
    try (PageUnderTest slow = new PageUnderTest(folder, 5)) {
      int refused = 0;
      for (int i = 0; i < 20; i++) {
        refused += status(slow.ask("GET", "/", "")) == 429 ? 1 : 0;
      }
      assertThat(refused).isGreaterThan(5);
    }
  }

  private Socket viewer() throws IOException {
    Socket socket = new Socket();
    socket.connect(new InetSocketAddress(InetAddress.getLoopbackAddress(), page.port()));
    String ask = "GET /api/events HTTP/1.1\r\nHost: 127.0.0.1:" + page.port() + "\r\n\r\n";
    socket.getOutputStream().write(ask.getBytes(StandardCharsets.US_ASCII));
    socket.getInputStream().read(); // the answer has begun
    return socket;
  }

  @Test
  void viewersThatNeverReadHoldUpNoTick() throws IOException {
    List<Socket> viewers = new ArrayList<>();
    try {
      for (int i = 0; i < 6; i++) {
        viewers.add(viewer());
      }
      // The loop ticks as often as it is let, whoever listens: a stalled page would hang here.
      long before = page.car.loop().stats().ticks();
      page.car.ticks(4_000);
      assertThat(page.car.loop().stats().ticks()).isEqualTo(before + 4_000L);
    } finally {
      for (Socket viewer : viewers) {
        viewer.close();
      }
    }
  }

  @Test
  void addressOnEveryNetworkIsRefusedAndOneStatedIsTaken() {
    assertThatThrownBy(() -> PageAddress.parse("0.0.0.0:80"))
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessageContaining("state the one address");
    assertThatThrownBy(() -> PageAddress.parse("[::]:80"))
        .isInstanceOf(IllegalArgumentException.class);
    assertThatThrownBy(() -> PageAddress.parse("127.0.0.1:70000"))
        .isInstanceOf(IllegalArgumentException.class);
    assertThat(PageAddress.parse("192.0.2.7").local()).isFalse();
    assertThat(PageAddress.parse("192.0.2.7").port()).isEqualTo(PageAddress.DEFAULT_PORT);
    assertThat(PageAddress.parse("9000").local()).isTrue();
    assertThat(PageAddress.parse("[::1]:81").port()).isEqualTo(81);
  }

  @Test
  void tokenIsMadeForItsOwnerAloneAndRefusedWhenOthersMayReadIt() throws IOException {
    Path file = folder.resolve("token");
    PageToken made = PageToken.load(file);
    assertThat(Files.getPosixFilePermissions(file))
        .isEqualTo(PosixFilePermissions.fromString("rw-------"));
    String secret = Files.readString(file).strip();
    assertThat(secret).hasSizeGreaterThanOrEqualTo(20);
    assertThat(made.matches(secret)).isTrue();
    assertThat(made.matches(secret + "x")).isFalse();
    Files.setPosixFilePermissions(file, PosixFilePermissions.fromString("rw-r--r--"));
    assertThatThrownBy(() -> PageToken.load(file))
        .isInstanceOf(IOException.class)
        .hasMessageContaining("chmod 600")
        .hasMessageNotContaining(secret);
    Path weak = folder.resolve("weak");
    Files.writeString(weak, "short");
    Files.setPosixFilePermissions(weak, PosixFilePermissions.fromString("rw-------"));
    assertThatThrownBy(() -> PageToken.load(weak)).isInstanceOf(IOException.class);
  }
}
