package org.boostwright.pi.cli;

import org.boostwright.pi.link.SerialLine;
import picocli.CommandLine.ITypeConverter;
import picocli.CommandLine.TypeConversionException;

/**
 * Where the wires are: {@code pi}, or {@code link:PORT} for a rig at a serial port.
 *
 * @param port serial port; empty for the Pi's own pins
 */
record IoChoice(String port) {
  private static final String LINK = "link:";

  boolean isLink() {
    return !port.isEmpty();
  }

  SerialLine line(int baud) {
    return new SerialLine(port, baud);
  }

  @Override
  public String toString() {
    return isLink() ? LINK + port : "pi";
  }

  /** From the command line. */
  static final class Converter implements ITypeConverter<IoChoice> {
    @Override
    public IoChoice convert(String text) {
      if (text.equals("pi")) {
        return new IoChoice("");
      }
      if (text.startsWith(LINK) && text.length() > LINK.length()) {
        return new IoChoice(text.substring(LINK.length()));
      }
      throw new TypeConversionException("write pi, or link: and a serial port");
    }
  }
}
