package org.boostwright.pi.cli;

import java.io.IOException;
import org.boostwright.core.settings.Settings;
import org.boostwright.pi.io.CarIo;
import org.boostwright.pi.io.Clock;
import org.boostwright.pi.io.PiIo;
import org.boostwright.pi.io.SysfsPlaces;
import org.boostwright.pi.io.pi4j.Pi4jHardware;
import org.boostwright.pi.link.LinkIo;
import org.boostwright.pi.link.SerialLine;
import picocli.CommandLine.ITypeConverter;
import picocli.CommandLine.TypeConversionException;

/**
 * Where the wires are: {@code pi}, or {@code link:PORT} for a rig at a serial port.
 *
 * @param port serial port; empty for the Pi's own pins
 */
record IoChoice(String port) {
  /** The Pi's own pins. */
  static final IoChoice PI = new IoChoice("");

  private static final String LINK = "link:";

  boolean isLink() {
    return !port.isEmpty();
  }

  /**
   * Opens the wires, outputs off.
   *
   * @param baud speed of the serial port
   * @param digest digest of these settings, hexadecimal
   */
  CarIo open(Settings settings, String digest, int baud) throws IOException {
    if (!isLink()) {
      PiIo io = PiIo.open(settings, new Pi4jHardware(), SysfsPlaces.SYSTEM, Clock.SYSTEM);
      io.start();
      return io;
    }
    SerialLine line = new SerialLine(port, baud, LinkIo.OUTGOING_FRAMES);
    line.start();
    int session = (int) (System.nanoTime() ^ ProcessHandle.current().pid() << 20);
    long shortDigest = Long.parseUnsignedLong(digest.substring(0, 16), 16);
    return new LinkIo(
        line, System.nanoTime(), session, shortDigest, settings.valve().frequencyHz());
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
        return PI;
      }
      if (text.startsWith(LINK) && text.length() > LINK.length()) {
        return new IoChoice(text.substring(LINK.length()));
      }
      throw new TypeConversionException("write pi, or link: and a serial port");
    }
  }
}
