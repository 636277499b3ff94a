package org.boostwright.rig.scenario.campaign;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.boostwright.rig.scenario.fault.FaultFacts;
import org.boostwright.rig.scenario.fault.Injection;
import org.boostwright.rig.scenario.fault.TwinRun;

/**
 * One run of a campaign as it stands in {@code runs.csv}.
 *
 * @param index number of the run; with the campaign's seed it brings the very run back
 * @param verdict what became of it
 * @param drive what was driven
 * @param faults each fault
 * @param peakOverKpa highest true pressure over the limit, kPa
 * @param aboveSeconds longest time above the limit, s
 * @param reported faults confirmed, as bits
 * @param falseAlarms faults of the twin that nothing justifies, as bits
 * @param twinPeakOverKpa highest true pressure of the twin over the limit, kPa
 * @param why what was broken or unsafe, in words; empty
 */
public record CaseRow(
    long index,
    CaseVerdict verdict,
    String drive,
    List<Fault> faults,
    double peakOverKpa,
    double aboveSeconds,
    long reported,
    long falseAlarms,
    double twinPeakOverKpa,
    String why) {

  /** First line of the file. */
  public static final String HEADER =
      "run,verdict,drive,fault_1,amount_1,from_s_1,until_s_1,boost_1,detection_s_1,reaction_s_1,"
          + "fault_2,amount_2,from_s_2,until_s_2,boost_2,detection_s_2,reaction_s_2,"
          + "peak_over_limit_kpa,above_limit_s,faults_hex,false_alarms_hex,"
          + "twin_peak_over_limit_kpa,why";

  static final String DUTY_AFTER_REACTION = "coil fed after the reaction time";

  private static final int FAULT_CELLS = 7;
  private static final int FAULTS = 2;
  private static final int CELLS = 3 + FAULTS * FAULT_CELLS + 6;

  /**
   * One fault of a run.
   *
   * @param id kind
   * @param amount how much
   * @param fromSeconds when, s
   * @param untilSeconds until when, s; infinite = it stayed
   * @param boost boost was controlled in that moment
   * @param detectionSeconds from taking effect to the first fitting report, s; NaN = none
   * @param reactionSeconds from taking effect to the coil without current, s; NaN = never
   */
  public record Fault(
      String id,
      double amount,
      double fromSeconds,
      double untilSeconds,
      boolean boost,
      double detectionSeconds,
      double reactionSeconds) {}

  /** Drives a run and writes down what came of it. */
  public static CaseRow of(CaseDraw draw) {
    TwinRun run = new TwinRun(draw.setup(), draw.injections()).drive();
    List<Fault> faults = new ArrayList<>();
    for (FaultFacts f : run.faults()) {
      Injection i = f.injection();
      faults.add(
          new Fault(
              i.kind().id(),
              rounded(i.amount()),
              rounded(i.fromSeconds()),
              rounded(i.untilSeconds()),
              f.controlledBoost(),
              rounded(f.detectionSeconds()),
              rounded(f.reactionSeconds())));
    }
    String why = why(run);
    return new CaseRow(
        draw.index(),
        verdict(run, why),
        draw.driveWords(),
        List.copyOf(faults),
        rounded(run.facts().peakOverKpa()),
        rounded(run.facts().longestAboveSeconds()),
        run.facts().faults(),
        run.falseAlarms(),
        rounded(run.twin().peakOverKpa()),
        why);
  }

  private static CaseVerdict verdict(TwinRun run, String why) {
    if (!run.facts().broken().isEmpty() || !run.twin().broken().isEmpty()) {
      return CaseVerdict.BROKEN;
    }
    if (!run.controllable()) {
      return CaseVerdict.APART;
    }
    if (!why.isEmpty()) {
      return CaseVerdict.UNSAFE;
    }
    return run.everyFaultTookEffect() ? CaseVerdict.SAFE : CaseVerdict.INVALID;
  }

  private static String why(TwinRun run) {
    if (!run.facts().broken().isEmpty()) {
      return run.facts().broken();
    }
    if (!run.twin().broken().isEmpty()) {
      return "without the fault: " + run.twin().broken();
    }
    if (run.overPressure()) {
      return "pressure";
    }
    if (run.dutyAfterReaction()) {
      return DUTY_AFTER_REACTION;
    }
    return "";
  }

  private static double rounded(double value) {
    return Double.isFinite(value) ? Math.rint(value * 1e4) / 1e4 : value;
  }

  /** The row as text, without the end of the line. */
  public String line() {
    StringBuilder line = new StringBuilder(256);
    line.append(index).append(',').append(verdict.word()).append(',').append(drive);
    for (int i = 0; i < FAULTS; i++) {
      if (i < faults.size()) {
        Fault f = faults.get(i);
        line.append(',').append(f.id());
        number(line, f.amount());
        number(line, f.fromSeconds());
        number(line, f.untilSeconds());
        line.append(',').append(f.boost() ? 1 : 0);
        number(line, f.detectionSeconds());
        number(line, f.reactionSeconds());
      } else {
        line.append(",".repeat(FAULT_CELLS));
      }
    }
    number(line, peakOverKpa);
    number(line, aboveSeconds);
    line.append(',').append(Long.toHexString(reported));
    line.append(',').append(Long.toHexString(falseAlarms));
    number(line, twinPeakOverKpa);
    return line.append(',').append(why.replace(',', ';')).toString();
  }

  private static void number(StringBuilder line, double value) {
    line.append(',').append(Double.isNaN(value) ? "" : value);
  }

  /**
   * Reads a row back.
   *
   * @throws IllegalArgumentException when it is none
   */
  public static CaseRow parse(String line) {
    String[] cells = line.split(",", -1);
    if (cells.length != CELLS) {
      throw new IllegalArgumentException(
          String.format(Locale.ROOT, "%d cells instead of %d", cells.length, CELLS));
    }
    List<Fault> faults = new ArrayList<>();
    for (int i = 0; i < FAULTS; i++) {
      int at = 3 + i * FAULT_CELLS;
      if (!cells[at].isEmpty()) {
        faults.add(
            new Fault(
                cells[at],
                number(cells[at + 1]),
                number(cells[at + 2]),
                number(cells[at + 3]),
                cells[at + 4].equals("1"),
                number(cells[at + 5]),
                number(cells[at + 6])));
      }
    }
    int at = 3 + FAULTS * FAULT_CELLS;
    return new CaseRow(
        Long.parseLong(cells[0]),
        CaseVerdict.of(cells[1]),
        cells[2],
        List.copyOf(faults),
        number(cells[at]),
        number(cells[at + 1]),
        Long.parseUnsignedLong(cells[at + 2], 16),
        Long.parseUnsignedLong(cells[at + 3], 16),
        number(cells[at + 4]),
        cells[at + 5]);
  }

  private static double number(String cell) {
    return cell.isEmpty() ? Double.NaN : Double.parseDouble(cell);
  }
}
