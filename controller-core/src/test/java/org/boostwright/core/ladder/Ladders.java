package org.boostwright.core.ladder;

import java.util.EnumMap;
import java.util.List;
import java.util.Map;

/** Facts and climbed ladders for tests. */
final class Ladders {
  static final String DATE = "2026-03-02T10:00:00Z";
  static final String REASON = "the dynamometer shop proved it, A. Owner answers";

  private Ladders() {}

  /** Present facts: every part fingerprinted with the same version, one bench proof. */
  static Facts facts(String version, String benchSeal) {
    return facts(parts(version), benchSeal, "2026-03-01T10:00:00Z");
  }

  static Facts facts(Map<SettingsPart, String> parts, String benchSeal, String benchDate) {
    boolean proven = !benchSeal.isEmpty();
    return new Facts(parts, proven, proven ? "proven" : "no proof", benchSeal, benchDate, false);
  }

  static Map<SettingsPart, String> parts(String version) {
    Map<SettingsPart, String> parts = new EnumMap<>(SettingsPart.class);
    for (SettingsPart part : SettingsPart.values()) {
      parts.put(part, part.id() + version);
    }
    return parts;
  }

  /** Every rung signed in order. */
  static Ladder climbed(Facts facts) throws LadderRefusedException {
    Ladder ladder = Ladder.EMPTY;
    for (Rung rung : Rung.values()) {
      ladder = ladder.pass(rung, facts, DATE, "0.1.0", "", List.of());
    }
    return ladder;
  }
}
