package org.boostwright.rig.scenario;

import java.io.IOException;
import java.io.Writer;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.boostwright.core.record.LogFormat;
import org.boostwright.core.state.Permission;
import org.boostwright.rig.plant.VirtualCar;

/**
 * The rows of one run in memory: the record format's columns, and beside them what was really the
 * case on the virtual car.
 */
public final class RunLog {
  /** Names of the extra columns, after the record format's own. */
  private static final String[] TRUTH = {
    "true_map_kpa_abs",
    "true_boost_kpa_abs",
    "true_actuator_kpa_gauge",
    "true_wastegate_lift",
    "true_turbo_krpm",
    "true_throttle_pct",
    "true_engine_rpm"
  };

  /** Column of the true manifold pressure, kPa absolute. */
  public static final int TRUE_MAP = LogFormat.COLUMN_COUNT;

  /** Column of the true pressure before the throttle, kPa absolute. */
  public static final int TRUE_BOOST = TRUE_MAP + 1;

  /** Column of the true actuator pressure, kPa gauge. */
  public static final int TRUE_ACTUATOR = TRUE_MAP + 2;

  /** Column of the true wastegate lift, 0 to 1. */
  public static final int TRUE_LIFT = TRUE_MAP + 3;

  /** Column of the true turbo speed, 1000/min. */
  public static final int TRUE_TURBO = TRUE_MAP + 4;

  /** Column of the true throttle opening, percent. */
  public static final int TRUE_THROTTLE = TRUE_MAP + 5;

  /** Column of the true engine speed, 1/min. */
  public static final int TRUE_RPM = TRUE_MAP + 6;

  private static final int WIDTH = LogFormat.COLUMN_COUNT + TRUTH.length;

  private final Permission permission;
  private double[] cells = new double[1024 * WIDTH];
  private int rows;

  /** An empty log of a run with every proof given. */
  public RunLog() {
    this(Permission.FULL);
  }

  /** An empty log of a run with the given permission. */
  public RunLog(Permission permission) {
    this.permission = permission;
  }

  /** Adds one tick: a row of the record format and the car as it really is. */
  public void add(double[] row, VirtualCar car) {
    int at = append(row);
    cells[at + TRUE_MAP] = car.mapKpaAbs();
    cells[at + TRUE_BOOST] = car.boostKpaAbs();
    cells[at + TRUE_ACTUATOR] = car.actuatorKpaGauge();
    cells[at + TRUE_LIFT] = car.wastegateLift();
    cells[at + TRUE_TURBO] = car.turboKrpm();
    cells[at + TRUE_THROTTLE] = car.throttlePct();
    cells[at + TRUE_RPM] = car.engineRpm();
  }

  /** Adds a row with made-up truth, for tests of what is measured from logs. */
  void add(double[] row, double mapKpaAbs, double turboKrpm, double rpm) {
    int at = append(row);
    cells[at + TRUE_MAP] = mapKpaAbs;
    cells[at + TRUE_TURBO] = turboKrpm;
    cells[at + TRUE_RPM] = rpm;
  }

  private int append(double[] row) {
    int at = rows * WIDTH;
    if (at + WIDTH > cells.length) {
      cells = Arrays.copyOf(cells, cells.length * 2);
    }
    System.arraycopy(row, 0, cells, at, LogFormat.COLUMN_COUNT);
    rows++;
    return at;
  }

  /** Number of rows. */
  public int rows() {
    return rows;
  }

  /** One cell; columns as in {@link LogFormat} and the constants here. */
  public double get(int row, int column) {
    return cells[row * WIDTH + column];
  }

  /** Time of a row, s on the run's own clock. */
  public double seconds(int row) {
    return get(row, LogFormat.TIME_NS) * 1e-9;
  }

  /** One column from a row on, as a copy. */
  public double[] column(int column, int fromRow) {
    double[] values = new double[rows - fromRow];
    for (int i = 0; i < values.length; i++) {
      values[i] = get(fromRow + i, column);
    }
    return values;
  }

  /** The record format's part of every row, as a copy. */
  public List<double[]> recordRows() {
    List<double[]> copies = new ArrayList<>(rows);
    for (int r = 0; r < rows; r++) {
      copies.add(Arrays.copyOfRange(cells, r * WIDTH, r * WIDTH + LogFormat.COLUMN_COUNT));
    }
    return copies;
  }

  /**
   * Writes the rows as RFC 4180 CSV in the record format, the truth in columns after it.
   *
   * @param settingsDigest fingerprint of the settings, for the first row
   * @param seed seed of the run, for the first row
   */
  public void writeCsv(Path file, String settingsDigest, long seed) throws IOException {
    writeCsv(file, settingsDigest, seed, "");
  }

  /**
   * The same with a remark in the first row.
   *
   * @param remark words of {@link LogFormat}'s meta column; may be empty
   */
  public void writeCsv(Path file, String settingsDigest, long seed, String remark)
      throws IOException {
    String meta = LogFormat.meta(settingsDigest, permission, LogFormat.SOURCE_VIRTUAL);
    try (Writer to = Files.newBufferedWriter(file)) {
      writeCsv(to, meta + " seed=" + seed + (remark.isEmpty() ? "" : " " + remark));
    }
  }

  private void writeCsv(Writer to, String meta) throws IOException {
    StringBuilder line = new StringBuilder(2048);
    LogFormat.appendHeader(line);
    for (String name : TRUTH) {
      line.append(',').append(name);
    }
    to.append(line.append("\r\n"));
    double[] row = new double[LogFormat.COLUMN_COUNT];
    for (int r = 0; r < rows; r++) {
      line.setLength(0);
      System.arraycopy(cells, r * WIDTH, row, 0, row.length);
      LogFormat.appendRow(line, row, r == 0 ? meta : "");
      for (int i = 0; i < TRUTH.length; i++) {
        line.append(',');
        LogFormat.appendNumber(line, get(r, TRUE_MAP + i));
      }
      to.append(line.append("\r\n"));
    }
  }
}
