package org.boostwright.core.settings.file;

import org.tomlj.TomlPosition;

/** Finds places in the text of a file that is known to be good TOML. */
final class TextSpan {
  private TextSpan() {}

  /** Offset of a place given by line and column, both from 1; columns count characters. */
  static int offset(String text, TomlPosition at) {
    int start = 0;
    for (int line = 1; line < at.line(); line++) {
      start = text.indexOf('\n', start) + 1;
    }
    return text.offsetByCodePoints(start, at.column() - 1);
  }

  /** Offset of the opening bracket of the list that belongs to the key at an offset. */
  static int listStart(String text, int key) {
    int i = key;
    while (text.charAt(i) != '=') {
      char c = text.charAt(i);
      i = c == '"' || c == '\'' ? afterString(text, i) : i + 1;
    }
    return text.indexOf('[', i);
  }

  /** Offset just behind the closing bracket of the list that opens at an offset. */
  static int listEnd(String text, int open) {
    int depth = 0;
    int i = open;
    while (true) {
      char c = text.charAt(i);
      if (c == '#') {
        i = text.indexOf('\n', i);
      } else if (c == '"' || c == '\'') {
        i = afterString(text, i) - 1;
      } else if (c == '[') {
        depth++;
      } else if (c == ']') {
        depth--;
        if (depth == 0) {
          return i + 1;
        }
      }
      i++;
    }
  }

  /** Offset just behind the number that begins at an offset. */
  static int numberEnd(CharSequence text, int start) {
    int i = start;
    while (i < text.length() && ",]# \t\r\n".indexOf(text.charAt(i)) < 0) {
      i++;
    }
    return i;
  }

  private static int afterString(String text, int start) {
    char quote = text.charAt(start);
    int i = start + 1;
    while (text.charAt(i) != quote) {
      i += quote == '"' && text.charAt(i) == '\\' ? 2 : 1;
    }
    return i + 1;
  }
}
