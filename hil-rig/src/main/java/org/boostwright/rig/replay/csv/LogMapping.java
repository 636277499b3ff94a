package org.boostwright.rig.replay.csv;

import java.util.List;
import java.util.Map;
import org.boostwright.core.settings.UnitSettings;
import org.jspecify.annotations.Nullable;

/**
 * What a mapping file declares about a log.
 *
 * @param separator between cells; null to be found
 * @param decimalComma true for decimal commas, false for points; null to be found
 * @param headerLine line of the header from 1, 0 when there is none; -1 to be found
 * @param ambientKpaAbs what gauge pressures are counted from, kPa absolute
 * @param pauseSeconds a longer time between two rows is a pause of the logger, s; NaN to be found
 * @param ignoreColumns headers of columns that are left alone whatever their name
 * @param time the time column; {@link ColumnMapping#NONE} to be recognised
 * @param timeFormat how time is written; null to be found
 * @param signals what is declared about each signal
 */
public record LogMapping(
    @Nullable Character separator,
    @Nullable Boolean decimalComma,
    int headerLine,
    double ambientKpaAbs,
    double pauseSeconds,
    List<String> ignoreColumns,
    ColumnMapping time,
    @Nullable TimeFormat timeFormat,
    Map<LogSignal, ColumnMapping> signals) {

  /** Declares nothing: everything is recognised or found. */
  public static final LogMapping NONE =
      new LogMapping(
          null,
          null,
          -1,
          UnitSettings.STANDARD_ATMOSPHERE_KPA,
          Double.NaN,
          List.of(),
          ColumnMapping.NONE,
          null,
          Map.of());

  /** What is declared about a signal; {@link ColumnMapping#NONE} when nothing is. */
  ColumnMapping about(LogSignal signal) {
    return signals.getOrDefault(signal, ColumnMapping.NONE);
  }
}
