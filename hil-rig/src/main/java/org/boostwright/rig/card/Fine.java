package org.boostwright.rig.card;

import java.util.Locale;

/** What only the person can say was fine; the program sees none of it. */
public enum Fine {
  MIXTURE("mixture"),
  KNOCK("knock"),
  FUEL_PRESSURE("fuel pressure");

  private final String words;

  Fine(String words) {
    this.words = words;
  }

  /** As typed. */
  public String id() {
    return name().toLowerCase(Locale.ROOT);
  }

  /** For people. */
  public String words() {
    return words;
  }
}
