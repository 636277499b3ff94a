package org.boostwright.core.settings.file;

import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * What the program asks of one key while it reads a file: the reference of the settings file is
 * written from these.
 *
 * @param key dotted name, without a pressure unit at its end
 * @param form what has to stand there
 * @param spelling kind of pressure, which decides the endings the key may have; null for others
 * @param quantity how its numbers are written; null where it holds none
 * @param bounds range of its numbers in the units used inside; null where it holds none
 * @param fallback what stands in when the key is absent; null where that follows from other keys
 * @param choices words that may stand there, in alphabetical order; empty where any may
 */
record KeyNote(
    String key,
    Form form,
    Spelling.@Nullable Kind spelling,
    @Nullable Quantity quantity,
    @Nullable Bounds bounds,
    @Nullable Object fallback,
    List<String> choices) {

  /** What has to stand at a key. */
  enum Form {
    TEXT,
    CHOICE,
    FLAG,
    WHOLE,
    NUMBER,
    LIST,
    ROWS
  }

  /** Takes a note of each key that is asked for. */
  interface Taker {
    /** Nobody wants to know. */
    Taker NONE = note -> {};

    /** A key is asked for, whether it stands in the file or not. */
    void take(KeyNote note);
  }
}
