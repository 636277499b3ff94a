package org.boostwright.core.ladder;

import java.util.Map;

/**
 * What a ladder is judged against.
 *
 * @param settings fingerprint of each part of the present settings
 * @param benchProven the bench proof holds
 * @param benchWords why, or why not
 * @param benchSeal seal of the bench proof; empty when there is none that can be read
 * @param benchDate when it was made, ISO 8601; empty when there is none
 * @param practice judge the virtual car's ladder: entries made on it count, and no others
 */
public record Facts(
    Map<SettingsPart, String> settings,
    boolean benchProven,
    String benchWords,
    String benchSeal,
    String benchDate,
    boolean practice) {
  /** Copies the map. */
  public Facts {
    settings = Map.copyOf(settings);
  }
}
