package org.boostwright.rig.replay.csv;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;

/** A log after import: strictly rising times, signals in base units, and what was done to it. */
public final class RecordedLog {
  private final String name;
  private final long[] nanos;
  private final int[] lines;
  private final Map<LogSignal, SignalTrace> traces;
  private final List<Pause> pauses;
  private final List<Repair> repairs;
  private final List<String> notes;
  private final List<String> unusedColumns;

  RecordedLog(
      String name,
      long[] nanos,
      int[] lines,
      Map<LogSignal, SignalTrace> traces,
      List<Pause> pauses,
      List<Repair> repairs,
      List<String> notes,
      List<String> unusedColumns) {
    this.name = name;
    this.nanos = nanos;
    this.lines = lines;
    this.traces = new EnumMap<>(traces);
    this.pauses = List.copyOf(pauses);
    this.repairs = List.copyOf(repairs);
    this.notes = List.copyOf(notes);
    this.unusedColumns = List.copyOf(unusedColumns);
  }

  /** Name shown in messages. */
  public String name() {
    return name;
  }

  /** Number of rows kept. */
  public int rows() {
    return nanos.length;
  }

  /** Time of a row since the first, ns. */
  public long nanos(int row) {
    return nanos[row];
  }

  /** Line of a row in the file, from 1. */
  public int line(int row) {
    return lines[row];
  }

  /** Time from the first to the last row, pauses included, s. */
  public double seconds() {
    return nanos[nanos.length - 1] * 1e-9;
  }

  /** A signal; null when the log has none. */
  public @Nullable SignalTrace trace(LogSignal signal) {
    return traces.get(signal);
  }

  /** A signal that is needed. */
  public SignalTrace require(LogSignal signal) throws LogRefusedException {
    SignalTrace trace = traces.get(signal);
    if (trace == null) {
      String also = notes.isEmpty() ? "" : " (" + String.join("; ", notes) + ")";
      throw new LogRefusedException(
          name,
          "no column for "
              + signal.id()
              + also
              + "; name it in a mapping file under ["
              + signal.id()
              + "]");
    }
    return trace;
  }

  /** Every signal of the log. */
  public List<SignalTrace> traces() {
    return new ArrayList<>(traces.values());
  }

  /** Where the recording starts again. */
  public List<Pause> pauses() {
    return pauses;
  }

  /** What was put right. */
  public List<Repair> repairs() {
    return repairs;
  }

  /** Number of single repairs, all kinds together. */
  public long repairCount() {
    return repairs.stream().mapToLong(Repair::count).sum();
  }

  /** Assumptions made and columns left out that look useful. */
  public List<String> notes() {
    return notes;
  }

  /** Headers of columns that are not read. */
  public List<String> unusedColumns() {
    return unusedColumns;
  }
}
