package org.boostwright.rig.wiring.draw;

/**
 * A line of text on a drawing, in grid units of ten pixels.
 *
 * @param x anchor, grid units
 * @param y base line, grid units
 * @param anchor which end of the text stands at x
 * @param size height of the letters' body, grid units
 * @param bold heavy letters
 * @param text the text
 */
record Label(double x, double y, Anchor anchor, double size, boolean bold, String text) {
  /** Which end of a text is held. */
  enum Anchor {
    START("start"),
    MIDDLE("middle"),
    END("end");

    private final String word;

    Anchor(String word) {
      this.word = word;
    }

    String word() {
      return word;
    }
  }

  /** Text width over size and letters: wide letters of a common sans-serif face, on purpose. */
  private static final double WIDTH_PER_LETTER = 0.56;

  double width() {
    return WIDTH_PER_LETTER * (bold ? 1.08 : 1.0) * size * text.length();
  }

  Room room() {
    double left =
        switch (anchor) {
          case START -> x;
          case MIDDLE -> x - width() / 2;
          case END -> x - width();
        };
    return new Room(left, y - 0.75 * size, left + width(), y + 0.22 * size);
  }
}
