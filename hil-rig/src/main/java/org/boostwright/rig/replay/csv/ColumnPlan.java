package org.boostwright.rig.replay.csv;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * Which columns of a log are read and as what; everything left out is named with its reason.
 *
 * <p>A mapping decides first. What it does not place is recognised by name; of two columns that
 * speak of the same signal the first with a known unit is read.
 */
final class ColumnPlan {
  private final String file;
  private final Layout layout;
  private final LogMapping mapping;
  private final RepairLog repairs;
  private final List<ColumnUse> uses = new ArrayList<>();
  private final List<String> notes = new ArrayList<>();
  private final List<String> unused = new ArrayList<>();
  private int timeCell = -1;

  ColumnPlan(String file, Layout layout, LogMapping mapping, RepairLog repairs)
      throws LogRefusedException {
    this.file = file;
    this.layout = layout;
    this.mapping = mapping;
    this.repairs = repairs;
    placeTime();
    for (LogSignal signal : LogSignal.values()) {
      placeMapped(signal);
    }
    for (LogSignal signal : LogSignal.values()) {
      if (!mapping.about(signal).namesColumn()) {
        placeRecognised(signal);
      }
    }
    if (uses.isEmpty()) {
      throw refused(
          "no column can be read; " + String.join("; ", notes) + "; write a mapping file");
    }
    for (int cell = 0; cell < layout.header().size(); cell++) {
      if (cell != timeCell && !isUsed(cell)) {
        unused.add(RepairLog.shorten(header(cell).text()));
      }
    }
  }

  private void placeTime() throws LogRefusedException {
    timeCell = mapping.time().namesColumn() ? mapped(mapping.time(), "time") : -1;
    for (int cell = 0; timeCell < 0 && cell < layout.header().size(); cell++) {
      if (ColumnNames.isTime(header(cell)) && !isIgnored(cell)) {
        timeCell = cell;
      }
    }
    if (timeCell < 0) {
      throw refused("no time column; name it in a mapping file under [time]");
    }
  }

  private void placeMapped(LogSignal signal) throws LogRefusedException {
    ColumnMapping about = mapping.about(signal);
    if (!about.namesColumn()) {
      return;
    }
    int cell = mapped(about, signal.id());
    if (cell == timeCell || isUsed(cell)) {
      throw refused(
          signal.id() + ": " + about.columnWords() + " is already read as something else");
    }
    String problem = place(signal, cell);
    if (problem != null) {
      throw refused(problem);
    }
  }

  private int mapped(ColumnMapping about, String id) throws LogRefusedException {
    for (int cell = 0; cell < layout.header().size(); cell++) {
      if (about.matches(cell, header(cell).text())) {
        return cell;
      }
    }
    throw refused(
        "there is no " + about.columnWords() + " for " + id + "; correct the mapping file");
  }

  private void placeRecognised(LogSignal signal) {
    List<Integer> candidates = new ArrayList<>();
    for (int cell = 0; cell < layout.header().size(); cell++) {
      HeaderCell header = header(cell);
      boolean free = cell != timeCell && !isUsed(cell) && !isIgnored(cell);
      if (free && ColumnNames.signal(header) == signal) {
        candidates.add(cell);
      }
    }
    candidates.sort(Comparator.comparing(cell -> header(cell).unit() == null));
    int placed = -1;
    for (int cell : candidates) {
      if (placed >= 0) {
        notes.add(
            "'"
                + shown(cell)
                + "' also looks like "
                + signal.id()
                + "; '"
                + shown(placed)
                + "' is read");
        continue;
      }
      String problem = place(signal, cell);
      if (problem == null) {
        placed = cell;
      } else {
        notes.add(problem);
      }
    }
  }

  /** Reads the cell as the signal; says why not when its unit or reference is unknown. */
  private @Nullable String place(LogSignal signal, int cell) {
    ColumnMapping about = mapping.about(signal);
    HeaderCell header = header(cell);
    UnitText written = header.unit();
    LogUnit unit = about.unit();
    if (unit == null) {
      unit = written != null ? written.unit() : unspoken(signal, header);
    }
    boolean assumed = about.unit() == null && written == null;
    if (unit == null || unit.quantity() != signal.quantity()) {
      String stands = header.unitText().isEmpty() ? "has no unit" : "has an unknown unit";
      return "'"
          + shown(cell)
          + "' looks like "
          + signal.id()
          + " but "
          + stands
          + "; declare one of: "
          + LogUnit.labelsFor(signal.quantity());
    }
    if (written != null && written.mangled()) {
      repairs.add(RepairKind.MANGLED_DEGREE, shown(cell), layout.line(), "");
    }
    boolean gauge = false;
    if (signal.quantity() == Quantity.PRESSURE) {
      Reference reference = reference(signal, about, header);
      if (reference == null) {
        return "'"
            + shown(cell)
            + "' does not say whether it is absolute or gauge; declare "
            + "reference = \"absolute\" or \"gauge\" under ["
            + signal.id()
            + "]";
      }
      gauge = reference == Reference.GAUGE;
    }
    uses.add(new ColumnUse(signal, cell, shown(cell), unit, assumed, gauge, about));
    return null;
  }

  /** Percentages and engine speed have one unit so usual that many loggers leave it out. */
  private static @Nullable LogUnit unspoken(LogSignal signal, HeaderCell header) {
    if (!header.unitText().isEmpty()) {
      return null;
    }
    return switch (signal.quantity()) {
      case SHARE -> LogUnit.PERCENT;
      case ENGINE_SPEED -> LogUnit.RPM;
      default -> null;
    };
  }

  private static @Nullable Reference reference(
      LogSignal signal, ColumnMapping about, HeaderCell header) {
    if (about.reference() != null) {
      return about.reference();
    }
    UnitText written = header.unit();
    if (written != null && written.reference() != null) {
      return written.reference();
    }
    if (header.hasAny("absolute", "abs") || signal == LogSignal.BAROMETER) {
      return Reference.ABSOLUTE;
    }
    if (header.hasAny("gauge", "boost")) {
      return Reference.GAUGE;
    }
    return header.has("map") ? Reference.ABSOLUTE : null;
  }

  private HeaderCell header(int cell) {
    return layout.header().get(cell);
  }

  private String shown(int cell) {
    String text = header(cell).text();
    return text.isEmpty() ? "column " + (cell + 1) : RepairLog.shorten(text);
  }

  private boolean isUsed(int cell) {
    return uses.stream().anyMatch(use -> use.cell() == cell);
  }

  private boolean isIgnored(int cell) {
    return mapping.ignoreColumns().contains(header(cell).text());
  }

  private LogRefusedException refused(String message) {
    return new LogRefusedException(file, layout.line(), 0, message);
  }

  /** Columns that are read. */
  List<ColumnUse> uses() {
    return uses;
  }

  /** Place of the time column, from 0. */
  int timeCell() {
    return timeCell;
  }

  /** Format of the time column as far as mapping or header say it; null to be found. */
  @Nullable TimeFormat timeFormat() {
    return mapping.timeFormat() != null ? mapping.timeFormat() : TimeFormat.named(header(timeCell));
  }

  /** Columns that look useful but are not read, with the reason. */
  List<String> notes() {
    return notes;
  }

  /** Headers of columns that are not read. */
  List<String> unused() {
    return unused;
  }
}
