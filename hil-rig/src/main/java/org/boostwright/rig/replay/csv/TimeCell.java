package org.boostwright.rig.replay.csv;

/** Reads the time of one row. */
final class TimeCell {
  /** Stands for a time that could not be read. */
  static final long UNREADABLE = Long.MIN_VALUE;

  /** Times beyond this (ns, 69 years: clocks that count from 1970 until 2039) are no times. */
  private static final double LARGEST_NANOS = 2.2e18;

  private TimeCell() {}

  /** Time in ns, or {@link #UNREADABLE}. */
  static long parse(String cell, TimeFormat format, boolean decimalComma) {
    if (format == TimeFormat.TIME_OF_DAY) {
      return timeOfDay(cell);
    }
    String text = decimalComma ? cell.replace(',', '.') : cell;
    double nanos = NumberCell.parse(text, false) * format.nanosPerUnit();
    if (!(Math.abs(nanos) <= LARGEST_NANOS)) {
      return UNREADABLE;
    }
    long exact = exact(text, (long) format.nanosPerUnit());
    return exact == UNREADABLE ? Math.round(nanos) : exact;
  }

  /** Plain decimals without rounding: as a double, a clock that counts from 1970 loses 256 ns. */
  private static long exact(String text, long nanosPerUnit) {
    int point = text.indexOf('.');
    long whole = digits(text, 0, point < 0 ? text.length() : point, 18);
    long fraction = point < 0 || point + 1 == text.length() ? 0 : fraction(text, point + 1);
    if (whole < 0 || fraction < 0) {
      return UNREADABLE;
    }
    return whole * nanosPerUnit + fraction / (1_000_000_000L / nanosPerUnit);
  }

  /** {@code HH:MM:SS}, decimals after point or comma; a date before it is skipped. */
  private static long timeOfDay(String cell) {
    int from = Math.max(cell.lastIndexOf(' '), cell.lastIndexOf('T')) + 1;
    for (int i = 0; i < from - 1; i++) {
      char c = cell.charAt(i);
      if (!isDigit(c) && c != '-' && c != '/' && c != '.') {
        return UNREADABLE;
      }
    }
    String text = cell.substring(from, cell.endsWith("Z") ? cell.length() - 1 : cell.length());
    int first = text.indexOf(':');
    int second = text.indexOf(':', first + 1);
    if (first < 1 || second < 0) {
      return UNREADABLE;
    }
    int point = Math.max(text.indexOf('.'), text.indexOf(','));
    int end = point < 0 ? text.length() : point;
    long hours = digits(text, 0, first, 2);
    long minutes = digits(text, first + 1, second, 2);
    long seconds = digits(text, second + 1, end, 2);
    long fraction = point < 0 ? 0 : fraction(text, point + 1);
    if (hours < 0
        || hours > 23
        || minutes < 0
        || minutes > 59
        || seconds < 0
        || seconds > 60
        || fraction < 0) {
      return UNREADABLE;
    }
    return ((hours * 60 + minutes) * 60 + seconds) * 1_000_000_000L + fraction;
  }

  private static long fraction(String text, int from) {
    long value = digits(text, from, text.length(), 9);
    for (int i = text.length() - from; i < 9 && value > 0; i++) {
      value *= 10;
    }
    return value;
  }

  /** The digits as a number; -1 when there is none, too many or something else. */
  private static long digits(String text, int from, int to, int most) {
    if (to <= from || to - from > most) {
      return -1;
    }
    long value = 0;
    for (int i = from; i < to; i++) {
      char c = text.charAt(i);
      if (!isDigit(c)) {
        return -1;
      }
      value = 10 * value + (c - '0');
    }
    return value;
  }

  private static boolean isDigit(char c) {
    return c >= '0' && c <= '9';
  }
}
