package org.boostwright.pi.web;

import com.sun.net.httpserver.Headers;
import com.sun.net.httpserver.HttpExchange;
import java.util.ArrayDeque;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import org.jspecify.annotations.Nullable;

/**
 * What every request has to pass before anything is done for it, and the headers of every answer.
 *
 * <p>Checked: the method, the name it was asked under, the origin of the page that asks, and how
 * many there are. An action also needs a header that no foreign page can send without being asked
 * about first (Fetch standard, CORS-preflight), and a key from the token.
 */
final class PageGuard {
  /** Name of the cookie that holds the key. */
  static final String COOKIE = "boostwright";

  private static final String OWN_HEADER = "X-Boostwright";
  private static final String POLICY =
      "default-src 'none'; script-src 'self'; style-src 'self'; connect-src 'self';"
          + " img-src 'self'; base-uri 'none'; form-action 'none'; frame-ancestors 'none'";

  private final Set<String> names;
  private final Keys keys;
  private final int mostPerSecond;
  private final ArrayDeque<Long> recent = new ArrayDeque<>();

  PageGuard(Set<String> names, Keys keys, int mostPerSecond) {
    this.names = names;
    this.keys = keys;
    this.mostPerSecond = mostPerSecond;
  }

  /**
   * @return the status that refuses the request; 0 when it may go on
   */
  int refusal(HttpExchange exchange, long nowNanos) {
    if (tooMany(nowNanos)) {
      return 429;
    }
    Headers headers = exchange.getRequestHeaders();
    String host = only(headers, "Host");
    if (host == null || !names.contains(host.toLowerCase(Locale.ROOT))) {
      return 421;
    }
    String site = headers.getFirst("Sec-Fetch-Site");
    boolean foreign = site != null && !site.equals("same-origin") && !site.equals("none");
    List<String> origins = headers.get("Origin");
    boolean wrongOrigin =
        origins != null && !(origins.size() == 1 && origins.get(0).equals("http://" + host));
    if (foreign || wrongOrigin) {
      return 403;
    }
    return switch (exchange.getRequestMethod()) {
      case "GET", "HEAD" -> 0;
      case "POST" -> origins == null || !"1".equals(headers.getFirst(OWN_HEADER)) ? 403 : 0;
      default -> 405;
    };
  }

  private static @Nullable String only(Headers headers, String name) {
    List<String> values = headers.get(name);
    return values != null && values.size() == 1 ? values.get(0) : null;
  }

  private synchronized boolean tooMany(long nowNanos) {
    while (!recent.isEmpty() && nowNanos - recent.peekFirst() > 1_000_000_000L) {
      recent.removeFirst();
    }
    if (recent.size() >= mostPerSecond) {
      return true;
    }
    recent.addLast(nowNanos);
    return false;
  }

  /** Whether whoever asks has given the token. */
  boolean unlocked(HttpExchange exchange, long nowNanos) {
    List<String> cookies = exchange.getRequestHeaders().get("Cookie");
    return cookies != null
        && keys.good(String.join(";", cookies), nowNanos);
  }

  /** Headers of every answer (OWASP Secure Headers Project's list, as far as it applies). */
  static void harden(Headers headers) {
    headers.set("Content-Security-Policy", POLICY);
    headers.set("X-Content-Type-Options", "nosniff");
    headers.set("X-Frame-Options", "DENY");
    headers.set("Referrer-Policy", "no-referrer");
    headers.set("Cross-Origin-Resource-Policy", "same-origin");
    headers.set("Cross-Origin-Opener-Policy", "same-origin");
    headers.set("Cache-Control", "no-store");
  }
}
