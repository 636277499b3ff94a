package org.boostwright.rig.wiring.draw;

import de.siegmar.fastcsv.writer.CsvWriter;
import de.siegmar.fastcsv.writer.LineDelimiter;
import java.io.IOException;
import java.io.StringWriter;
import java.io.UncheckedIOException;

/** A CSV text (RFC 4180, lines end in LF) in memory. */
final class CsvText {
  private final StringWriter text = new StringWriter();
  private final CsvWriter csv = CsvWriter.builder().lineDelimiter(LineDelimiter.LF).build(text);

  void row(String... fields) {
    csv.writeRecord(fields);
  }

  String text() {
    try {
      csv.flush();
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
    return text.toString();
  }
}
