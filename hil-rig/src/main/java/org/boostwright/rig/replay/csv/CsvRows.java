package org.boostwright.rig.replay.csv;

import de.siegmar.fastcsv.reader.CloseableIterator;
import de.siegmar.fastcsv.reader.CsvParseException;
import de.siegmar.fastcsv.reader.CsvReader;
import de.siegmar.fastcsv.reader.CsvRecord;
import de.siegmar.fastcsv.reader.CsvRecordHandler;
import de.siegmar.fastcsv.reader.FieldMismatchStrategy;
import java.io.UncheckedIOException;
import org.jspecify.annotations.Nullable;

/** The rows of a text, one by one; what the CSV reader refuses becomes a refusal with its line. */
final class CsvRows {
  /** Longest cell read, characters. */
  static final int MAX_CELL = 1000;

  /** Most cells in a row. */
  static final int MAX_CELLS = 2000;

  private final CloseableIterator<CsvRecord> rows;
  private final String file;
  private long line;

  CsvRows(String text, char separator, String file) {
    this.file = file;
    CsvRecordHandler handler =
        CsvRecordHandler.of(b -> b.maxFields(MAX_CELLS).maxFieldSize(MAX_CELL));
    this.rows =
        CsvReader.builder()
            .fieldSeparator(separator)
            .extraFieldStrategy(FieldMismatchStrategy.IGNORE)
            .missingFieldStrategy(FieldMismatchStrategy.IGNORE)
            .allowUnclosedQuote(false)
            .skipEmptyLines(true)
            .build(handler, text)
            .iterator();
  }

  /** The next row; null at the end. */
  @Nullable CsvRecord next() throws LogRefusedException {
    try {
      if (!rows.hasNext()) {
        return null;
      }
      CsvRecord row = rows.next();
      line = row.getStartingLineNumber();
      return row;
    } catch (CsvParseException | UncheckedIOException e) {
      String why = e.getCause() == null ? e.getMessage() : e.getCause().getMessage();
      throw new LogRefusedException(
          file,
          (int) line + 1,
          0,
          "no readable row here or shortly after ("
              + why
              + "); look for an unclosed quote or a cell longer than "
              + MAX_CELL
              + " characters");
    }
  }
}
