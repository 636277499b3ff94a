package org.boostwright.pi.web;

import java.util.Locale;

/** JSON text being written (RFC 8259). Numbers that are not finite become null. */
final class JsonText {
  private final StringBuilder out = new StringBuilder(2048);
  private boolean first = true;

  JsonText open() {
    return begin('{');
  }

  JsonText openList() {
    return begin('[');
  }

  private JsonText begin(char bracket) {
    comma();
    out.append(bracket);
    first = true;
    return this;
  }

  JsonText close() {
    out.append('}');
    first = false;
    return this;
  }

  JsonText closeList() {
    out.append(']');
    first = false;
    return this;
  }

  /** Name of the next value; no comma follows it. */
  JsonText name(String name) {
    comma();
    quoted(name);
    out.append(':');
    first = true;
    return this;
  }

  JsonText value(String text) {
    comma();
    quoted(text);
    return this;
  }

  JsonText value(boolean truth) {
    comma();
    out.append(truth);
    return this;
  }

  JsonText value(long number) {
    comma();
    out.append(number);
    return this;
  }

  /** A number with that many decimals. */
  JsonText value(double number, int decimals) {
    comma();
    if (Double.isFinite(number)) {
      out.append(String.format(Locale.ROOT, "%." + decimals + "f", number));
    } else {
      out.append("null");
    }
    return this;
  }

  private void comma() {
    if (!first) {
      out.append(',');
    }
    first = false;
  }

  private void quoted(String text) {
    out.append('"');
    for (int i = 0; i < text.length(); i++) {
      char c = text.charAt(i);
      if (c == '"' || c == '\\') {
        out.append('\\').append(c);
      } else if (c < ' ' || c == '\u2028' || c == '\u2029' || Character.isSurrogate(c)) {
        out.append(String.format(Locale.ROOT, "\\u%04x", (int) c));
      } else {
        out.append(c);
      }
    }
    out.append('"');
  }

  @Override
  public String toString() {
    return out.toString();
  }
}
