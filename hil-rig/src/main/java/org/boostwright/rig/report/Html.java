package org.boostwright.rig.report;

import org.boostwright.rig.result.SafeText;

/** HTML text being written: every text and attribute value goes through the escape. */
final class Html {
  private final StringBuilder out = new StringBuilder(1 << 16);

  /** Markup of our own, never anything that came from outside. */
  Html raw(String markup) {
    out.append(markup);
    return this;
  }

  /** Text from anywhere. */
  Html text(String text) {
    out.append(escape(text));
    return this;
  }

  /** An element of one text, with a class unless that is empty. */
  Html element(String tag, String className, String text) {
    out.append('<').append(tag);
    if (!className.isEmpty()) {
      attribute("class", className);
    }
    out.append('>').append(escape(text)).append("</").append(tag).append('>');
    return this;
  }

  /** An attribute, with the blank before it. */
  Html attribute(String name, String value) {
    out.append(' ').append(name).append("=\"").append(escape(value)).append('"');
    return this;
  }

  /** Safe in text and in quoted attribute values; what cannot be seen becomes a visible mark. */
  static String escape(String raw) {
    String text = SafeText.visible(raw);
    StringBuilder safe = new StringBuilder(text.length() + 16);
    for (int i = 0; i < text.length(); i++) {
      char c = text.charAt(i);
      switch (c) {
        case '&' -> safe.append("&amp;");
        case '<' -> safe.append("&lt;");
        case '>' -> safe.append("&gt;");
        case '"' -> safe.append("&quot;");
        case '\'' -> safe.append("&#39;");
        default -> safe.append(c);
      }
    }
    return safe.toString();
  }

  @Override
  public String toString() {
    return out.toString();
  }
}
