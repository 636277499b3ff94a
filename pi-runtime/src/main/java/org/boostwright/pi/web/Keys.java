package org.boostwright.pi.web;

import java.security.SecureRandom;
import java.util.ArrayDeque;
import java.util.HexFormat;
import java.util.LinkedHashMap;
import java.util.Map;
import org.jspecify.annotations.Nullable;

/**
 * Who gave the token: a few random keys held in browsers' cookies, each good for some hours.
 * Guessing is slowed to a few tries a minute for everybody together.
 */
final class Keys {
  private static final int MOST_KEYS = 8;
  private static final long GOOD_NANOS = 12L * 3600L * 1_000_000_000L;
  private static final int TRIES = 6;
  private static final long TRIES_NANOS = 60_000_000_000L;
  private static final int BYTES = 24;

  /** What became of an attempt to unlock. */
  enum Outcome {
    GIVEN,
    WRONG,
    TOO_MANY
  }

  /**
   * What became of it, and the key.
   *
   * @param key empty unless given
   */
  record Answer(Outcome outcome, String key) {}

  private final @Nullable PageToken token;
  private final SecureRandom random = new SecureRandom();
  private final Map<String, Long> untilNanos = new LinkedHashMap<>();
  private final ArrayDeque<Long> tries = new ArrayDeque<>();

  /**
   * @param token null where nothing but looking is allowed
   */
  Keys(@Nullable PageToken token) {
    this.token = token;
  }

  /** Whether there is a token at all. */
  boolean canUnlock() {
    return token != null;
  }

  /** Tries a token. */
  synchronized Answer unlock(String given, long nowNanos) {
    while (!tries.isEmpty() && nowNanos - tries.peekFirst() > TRIES_NANOS) {
      tries.removeFirst();
    }
    if (tries.size() >= TRIES) {
      return new Answer(Outcome.TOO_MANY, "");
    }
    if (token == null || !token.matches(given)) {
      tries.addLast(nowNanos);
      return new Answer(Outcome.WRONG, "");
    }
    byte[] bytes = new byte[BYTES];
    random.nextBytes(bytes);
    String key = HexFormat.of().formatHex(bytes);
    if (untilNanos.size() >= MOST_KEYS) {
      untilNanos.remove(untilNanos.keySet().iterator().next());
    }
    untilNanos.put(key, nowNanos + GOOD_NANOS);
    return new Answer(Outcome.GIVEN, key);
  }

  /** Whether a cookie header holds a good key. */
  synchronized boolean good(String cookies, long nowNanos) {
    for (String cookie : cookies.split(";")) {
      String[] parts = cookie.strip().split("=", 2);
      if (parts.length == 2 && parts[0].equals(PageGuard.COOKIE)) {
        Long until = untilNanos.get(parts[1]);
        if (until != null && until - nowNanos > 0L) {
          return true;
        }
      }
    }
    return false;
  }
}
