package org.boostwright.core.ladder;

import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import org.boostwright.core.bench.proof.ProofMeasurement;
import org.jspecify.annotations.Nullable;

/**
 * One line of a car's commissioning history.
 *
 * @param kind what happened
 * @param rung rung that was passed or skipped; null for a change
 * @param change work that was reported; null otherwise
 * @param practice it happened on the virtual car and counts for no other
 * @param date when, ISO 8601; given by the caller
 * @param toolVersion version of this program
 * @param settings fingerprint of each part of the settings then
 * @param benchSeal seal of the bench proof then; empty when there was none
 * @param words reason or remark; printable ASCII, may be empty
 * @param measurements what was measured
 */
public record Entry(
    Kind kind,
    @Nullable Rung rung,
    @Nullable Change change,
    boolean practice,
    String date,
    String toolVersion,
    Map<SettingsPart, String> settings,
    String benchSeal,
    String words,
    List<ProofMeasurement> measurements) {

  /** What an entry records. */
  public enum Kind {
    /** A rung was proven from recordings. */
    PASSED,
    /** A person skipped a rung, in words. */
    SKIPPED,
    /** Work on the car was reported. */
    CHANGED
  }

  /** Copies every collection; refuses text that would break the written form. */
  public Entry {
    settings = settings.isEmpty() ? Map.of() : Map.copyOf(new EnumMap<>(settings));
    measurements = List.copyOf(measurements);
    if ((rung == null) != (kind == Kind.CHANGED) || (change == null) == (kind == Kind.CHANGED)) {
      throw new IllegalArgumentException("a rung or a change, as the kind says");
    }
    for (String text : List.of(date, toolVersion, benchSeal, words)) {
      if (!plain(text)) {
        throw new IllegalArgumentException(
            "only plain letters, digits and signs, without line breaks: '" + text + "'");
      }
    }
  }

  /** True for text that can stand in the ladder's file: printable ASCII. */
  public static boolean plain(String text) {
    for (int i = 0; i < text.length(); i++) {
      if (text.charAt(i) < ' ' || text.charAt(i) > '~') {
        return false;
      }
    }
    return true;
  }
}
