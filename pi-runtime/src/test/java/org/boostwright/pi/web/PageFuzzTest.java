package org.boostwright.pi.web;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.Map;
import java.util.TreeMap;
import org.boostwright.core.state.SafetyState;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.junit.jupiter.api.io.TempDir;

/**
 * Hostile requests, once as limited as on the car and once with the limit of the rate lifted, so
 * that every one of them gets as far as it can. Full count: {@code -Dboostwright.page.full=true}.
 */
@Tag("W1")
class PageFuzzTest {
  private static final int COUNT = Boolean.getBoolean("boostwright.page.full") ? 10_000 : 1_500;
  private static final int TICKS_BETWEEN = 2;

  @TempDir Path folder;

  @ParameterizedTest
  @ValueSource(ints = {100, Integer.MAX_VALUE})
  void noneBreaksThePageMovesTheValveOrHoldsUpATick(int mostPerSecond) throws IOException {
    try (PageUnderTest page = new PageUnderTest(folder, mostPerSecond)) {
      page.car.ticks(700);
      long before = page.car.loop().stats().ticks();
      HostileRequests requests = new HostileRequests(7, page.port());
      Map<Integer, Integer> statuses = new TreeMap<>();
      for (int i = 0; i < COUNT; i++) {
        byte[] request = requests.next();
        int status = requests.send(request);
        statuses.merge(status, 1, Integer::sum);
        // RFC 9112, 6.1: an unknown transfer coding is answered with 501, by the JDK's server.
        assertThat(status < 500 || status == 501 && HostileRequests.unknownCoding(request))
            .as(() -> status + " for " + new String(request, StandardCharsets.ISO_8859_1))
            .isTrue();
        page.car.ticks(TICKS_BETWEEN);
        assertThat(page.guest.busy()).isFalse();
        assertThat(page.car.last.coilSupplyClosed || page.car.last.pwmEnabled).isFalse();
        assertThat(page.car.last.state).isEqualTo(SafetyState.RESTING);
      }
      assertThat(page.car.loop().stats().ticks()).isEqualTo(before + (long) COUNT * TICKS_BETWEEN);
      assertThat(page.car.loop().failure()).isNull();
      System.out.println("statuses at " + mostPerSecond + " a second: " + statuses);
      // Afterwards the page still serves: the recent second has to pass for the limited one.
      if (mostPerSecond == Integer.MAX_VALUE) {
        assertThat(statuses).containsKeys(200, 400, 403, 404, 405, 421);
        assertThat(PageUnderTest.status(page.ask("GET", "/api/about", ""))).isEqualTo(200);
      }
    }
  }
}
