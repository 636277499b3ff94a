package org.boostwright.core.settings.file;

/** How much a problem in a settings file matters. */
public enum Severity {
  /** The whole file is refused. */
  ERROR("error"),
  /** The file loads; the reader should think again. */
  WARNING("caution"),
  /** The file loads; worth knowing. */
  NOTE("note");

  private final String word;

  Severity(String word) {
    this.word = word;
  }

  /** The word shown to people. */
  public String word() {
    return word;
  }
}
