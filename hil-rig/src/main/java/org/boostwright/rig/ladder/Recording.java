package org.boostwright.rig.ladder;

import ch.randelshofer.fastdoubleparser.JavaDoubleParser;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.boostwright.core.record.LogFormat;
import org.boostwright.core.settings.Settings;
import org.boostwright.core.settings.file.SettingsDigest;
import org.boostwright.core.state.Permission;
import org.boostwright.rig.replay.RecordReplay;
import org.boostwright.rig.replay.RecordResult;
import org.boostwright.rig.replay.RecordRows;
import org.boostwright.rig.replay.csv.LogRefusedException;

/**
 * A recording as evidence for a rung: made with exactly the present settings, and every output comes
 * again to the bit when it is replayed, so that a changed number shows.
 *
 * @param name file, for messages
 * @param rows its rows
 * @param permission what the run was allowed
 * @param virtual it is of the virtual car
 * @param cutTestKpaAbs overboost limit it was made with, kPa absolute; NaN where it was the
 *     settings'
 */
public record Recording(
    String name,
    List<double[]> rows,
    Permission permission,
    boolean virtual,
    double cutTestKpaAbs) {

  /** Most rows in a thousand that a recorder may have dropped. */
  private static final double MOST_MISSING = 0.001;

  /** Copies the list. */
  public Recording {
    rows = List.copyOf(rows);
  }

  /**
   * Reads a recording.
   *
   * @throws LogRefusedException when it is no evidence for these settings; the message says why
   */
  public static Recording read(Path file, Settings settings)
      throws IOException, LogRefusedException {
    String name = file.toString();
    byte[] bytes = Files.readAllBytes(file);
    if (!RecordReplay.isRecord(bytes)) {
      throw new LogRefusedException(
          name, "not a recording of 'drive'; only those prove a rung, because they can be replayed");
    }
    String meta = RecordReplay.meta(bytes, name);
    double cut = number(LogFormat.metaValue(meta, LogFormat.META_CUT_TEST));
    Settings used =
        Double.isNaN(cut) ? settings : settings.withLimits(settings.limits().withCutoffKpaAbs(cut));
    if (!LogFormat.metaValue(meta, LogFormat.META_SETTINGS).equals(SettingsDigest.of(used))) {
      throw new LogRefusedException(
          name, "recorded with other settings than the file holds now; drive again with these");
    }
    RecordResult replayed = RecordReplay.run(used, bytes, name);
    if (!(replayed.missingTicks() <= MOST_MISSING * replayed.rows())) {
      throw new LogRefusedException(
          name, replayed.missingTicks() + " rows are missing; see that the disk is not full");
    }
    if (!replayed.bitEqual() && replayed.missingTicks() == 0) {
      throw new LogRefusedException(
          name,
          replayed.differingRows()
              + " rows do not come again when replayed: it was changed, or recorded by another"
              + " version of the program");
    }
    String source = LogFormat.metaValue(meta, LogFormat.META_SOURCE);
    String permission = LogFormat.metaValue(meta, LogFormat.META_PERMISSION);
    return new Recording(
        name,
        RecordRows.read(file),
        permission.isEmpty() ? Permission.FULL : Permission.parse(permission),
        !source.equals("pi"),
        cut);
  }

  private static double number(String text) {
    return text.isEmpty() ? Double.NaN : JavaDoubleParser.parseDouble(text);
  }

  /** True for the run of a cut test. */
  public boolean cutTest() {
    return !Double.isNaN(cutTestKpaAbs);
  }

  /** Time from one row to another, s. */
  double seconds(int from, int to) {
    return (rows.get(to)[LogFormat.TIME_NS] - rows.get(from)[LogFormat.TIME_NS]) * 1e-9;
  }

  /** A cell. */
  double get(int row, int column) {
    return rows.get(row)[column];
  }
}
