package org.boostwright.rig.replay;

import ch.randelshofer.fastdoubleparser.JavaDoubleParser;
import org.boostwright.core.Controller;
import org.boostwright.core.Inputs;
import org.boostwright.core.Outputs;
import org.boostwright.core.record.LogFormat;
import org.boostwright.core.settings.Settings;
import org.boostwright.core.state.Permission;
import org.boostwright.rig.replay.csv.CsvLines;
import org.boostwright.rig.replay.csv.LogRefusedException;
import org.jspecify.annotations.Nullable;

/**
 * Replays a run recorded by Boostwright itself: its inputs are complete, so the same settings give
 * the same outputs to the bit, and other settings show what they would have done in each tick.
 */
public final class RecordReplay {
  private static final int META = LogFormat.COLUMN_COUNT;
  private static final int LATE_TICKS = LogFormat.column("late_ticks");

  private final String file;
  private final Controller controller;
  private final Inputs inputs = new Inputs();
  private final Outputs outputs = new Outputs();
  private final double[] recorded = new double[LogFormat.COLUMN_COUNT];
  private final double[] replayed = new double[LogFormat.COLUMN_COUNT];
  private String meta = "";
  private int rows;
  private int incomplete;
  private long missing;
  private int differing;
  private RecordResult.@Nullable Difference first;

  private RecordReplay(String file, Settings settings, Permission permission) {
    this.file = file;
    this.controller = new Controller(settings, permission);
  }

  /** True when the bytes begin with the header of a recorded run. */
  public static boolean isRecord(byte[] bytes) {
    StringBuilder header = new StringBuilder();
    LogFormat.appendHeader(header);
    if (bytes.length < header.length()) {
      return false;
    }
    for (int i = 0; i < header.length(); i++) {
      if (bytes[i] != header.charAt(i)) {
        return false;
      }
    }
    return true;
  }

  /**
   * Replays a recorded run with the permission it had, as its first row says; one that does not say
   * is of the virtual car, which had {@link Permission#FULL}.
   *
   * @param bytes the file
   * @param name name shown in messages
   */
  public static RecordResult run(Settings settings, byte[] bytes, String name)
      throws LogRefusedException {
    return run(settings, permission(meta(bytes, name), name), bytes, name);
  }

  private static Permission permission(String meta, String name) throws LogRefusedException {
    String text = LogFormat.metaValue(meta, LogFormat.META_PERMISSION);
    try {
      return text.isEmpty() ? Permission.FULL : Permission.parse(text);
    } catch (IllegalArgumentException e) {
      throw new LogRefusedException(name, "its first row names no permission that exists: " + text);
    }
  }

  /** What the first row of a recorded run says about it; empty when there is no complete row. */
  public static String meta(byte[] bytes, String name) throws LogRefusedException {
    if (!isRecord(bytes)) {
      return "";
    }
    CsvLines lines = new CsvLines(bytes, name);
    lines.next();
    return lines.next() && lines.cells() > META ? lines.cell(META) : "";
  }

  /**
   * Replays a recorded run.
   *
   * @param bytes the file
   * @param name name shown in messages
   * @param permission permission to replay it with
   */
  public static RecordResult run(
      Settings settings, Permission permission, byte[] bytes, String name)
      throws LogRefusedException {
    if (!isRecord(bytes)) {
      throw new LogRefusedException(
          name, "not a run recorded by this version; import it as a log instead");
    }
    return new RecordReplay(name, settings, permission)
        .run(new CsvLines(RecordRows.withoutZeros(bytes), name));
  }

  private RecordResult run(CsvLines lines) throws LogRefusedException {
    lines.next(); // the header
    long expected = lines.mostRows();
    TraceObserver observer =
        new TraceObserver(new TraceSeries(expected, ReplayOptions.DEFAULT.plotPoints()));
    while (lines.next()) {
      if (lines.cells() <= META) {
        incomplete++;
        continue;
      }
      double lastNanos = recorded[LogFormat.TIME_NS];
      double lastLate = recorded[LATE_TICKS];
      parse(lines);
      countMissing(lastNanos, lastLate);
      long now = (long) recorded[LogFormat.TIME_NS];
      LogFormat.restoreInputs(recorded, inputs);
      controller.step(now, inputs, outputs);
      LogFormat.fill(replayed, now, inputs, outputs);
      compare(lines.line());
      observer.tick(now * 1e-9, lines.line(), outputs, controller);
      rows++;
    }
    if (rows == 0) {
      throw new LogRefusedException(file, "a header and no complete row; nothing was recorded");
    }
    observer.endOfRun(recorded[LogFormat.TIME_NS] * 1e-9, outputs, controller, true);
    return new RecordResult(
        meta,
        rows,
        incomplete,
        missing,
        differing,
        first,
        observer.stateSeconds(),
        observer.events(false),
        observer.events(true),
        observer.overboosts(),
        observer.series());
  }

  private void parse(CsvLines lines) throws LogRefusedException {
    for (int column = 0; column < LogFormat.COLUMN_COUNT; column++) {
      String cell = lines.cell(column);
      try {
        if (LogFormat.isWords(column)) {
          recorded[column] = LogFormat.parseWords(column, cell);
        } else {
          recorded[column] = cell.isEmpty() ? Double.NaN : JavaDoubleParser.parseDouble(cell);
        }
      } catch (IllegalArgumentException e) {
        throw new LogRefusedException(
            file,
            lines.line(),
            column + 1,
            "'"
                + lines.shown(column)
                + "' is no "
                + LogFormat.name(column)
                + "; the record is damaged");
      }
    }
    if (rows == 0) {
      meta = lines.cell(META);
      recallAmbient();
    }
  }

  /** The run began with what an earlier one had measured; without it nothing is the same. */
  private void recallAmbient() {
    String number = LogFormat.metaValue(meta, LogFormat.META_AMBIENT);
    if (!number.isEmpty()) {
      controller.monitor().recallAmbient(JavaDoubleParser.parseDouble(number));
    }
  }

  /** A gap between rows that the recording controller had not seen as a late tick is a lost row. */
  private void countMissing(double lastNanos, double lastLate) {
    double ticks = (recorded[LogFormat.TIME_NS] - lastNanos) / Controller.TICK_NANOS;
    if (rows > 0 && ticks >= 1.5 && recorded[LATE_TICKS] == lastLate) {
      missing += Math.round(ticks) - 1;
    }
  }

  private void compare(int line) {
    boolean differs = false;
    for (int column = LogFormat.DUTY; column < LogFormat.COLUMN_COUNT; column++) {
      if (Double.doubleToLongBits(recorded[column]) != Double.doubleToLongBits(replayed[column])) {
        differs = true;
        if (first == null) {
          first =
              new RecordResult.Difference(
                  line, LogFormat.name(column), recorded[column], replayed[column]);
        }
      }
    }
    differing += differs ? 1 : 0;
  }
}
