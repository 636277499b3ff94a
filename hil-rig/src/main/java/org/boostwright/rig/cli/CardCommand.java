package org.boostwright.rig.cli;

import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import org.boostwright.core.settings.Settings;
import org.boostwright.core.settings.file.SettingsDigest;
import org.boostwright.core.table.Table2d;
import org.boostwright.rig.card.Advice;
import org.boostwright.rig.card.Card;
import org.boostwright.rig.card.Fine;
import org.boostwright.rig.logs.correct.CellChange;
import org.boostwright.rig.logs.correct.CorrectionResult;
import org.boostwright.rig.logs.pulls.DriveLog;
import org.boostwright.rig.logs.pulls.Pull;
import org.boostwright.rig.report.DisplayUnits;
import org.boostwright.rig.result.Result;
import org.boostwright.rig.result.ResultBuilder;
import org.boostwright.rig.result.Severity;
import org.boostwright.rig.result.Units;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** The card after a pull. */
@Command(
    name = "card",
    header = "After a pull: raise, hold, lower or stop, by how much and where.",
    description = {
      "One screen about the pulls of a session in your units. It cannot see mixture, knock or fuel",
      "pressure: it asks you to tick them, and raises nothing without."
    },
    footer = {
      "",
      "Examples:",
      "  boostwright card pull-1.csv pull-2.csv pull-3.csv",
      "  boostwright card pull-*.csv --fine mixture,knock,fuel_pressure",
      "",
      "Fails when the answer is stop. What it says to change is written by 'boostwright correct'."
    })
final class CardCommand extends Subcommand {
  private static final int MOST_CELLS = 8;

  @Mixin SettingsOption settings = new SettingsOption();

  @Parameters(arity = "1..*", paramLabel = "LOG", description = "Logs of one session, in order.")
  List<Path> logs = new ArrayList<>();

  @Option(
      names = "--fine",
      paramLabel = "WHAT",
      split = ",",
      description = "What you saw and found fine: mixture, knock, fuel_pressure.")
  List<String> fine = new ArrayList<>();

  private String cells = "";

  CardCommand(Terminal terminal) {
    super(terminal);
  }

  @Override
  Outcome work(Progress progress) throws IOException, WrongUseException {
    Settings car = settings.load().settings();
    List<DriveLog> drives = LogFiles.read(logs, progress);
    progress.begin("reading the pulls", 1);
    Card card = Card.of(car, drives, ticks());
    ResultBuilder result = new ResultBuilder("card").units(car.units());
    result.settingsDigest(SettingsDigest.of(car));
    DisplayUnits units = new DisplayUnits(car.units());
    measure(result, card);
    if (!card.cells().isEmpty()) {
      tables(result, car, card);
    }
    boolean first = true;
    for (String reason : card.reasons()) {
      result.find(
          "card_" + card.advice().name().toLowerCase(Locale.ROOT),
          card.advice() == Advice.STOP ? Severity.PROBLEM : Severity.NOTE,
          reason.substring(0, 1).toUpperCase(Locale.ROOT) + reason.substring(1) + ".",
          first ? next(card) : "");
      first = false;
    }
    result.caution(
        "This program sees pressure, not mixture, knock or fuel pressure. Listen, and look at the"
            + " gauges.");
    if (card.advice() != Advice.STOP) {
      result.caution("Two to three minutes of gentle driving before the next pull.");
    }
    cells = cells(card, units);
    result.headline(headline(card, units));
    return Outcome.printed(result.build());
  }

  private Set<Fine> ticks() throws WrongUseException {
    Set<Fine> ticks = EnumSet.noneOf(Fine.class);
    for (String word : fine) {
      try {
        ticks.add(Fine.valueOf(word.strip().toUpperCase(Locale.ROOT).replace(' ', '_')));
      } catch (IllegalArgumentException e) {
        throw new WrongUseException(
            "--fine: '" + word + "' is not asked for", "write mixture,knock,fuel_pressure");
      }
    }
    return ticks;
  }

  private static void measure(ResultBuilder result, Card card) {
    result.measure("card.pulls", "pulls that count", card.pulls().size(), Units.COUNT);
    result.measure("card.peak_kpa", "highest pressure", card.peakKpaAbs(), Units.KPA_ABS);
    Pull last = card.pulls().isEmpty() ? null : card.pulls().get(card.pulls().size() - 1);
    result.measure(
        "card.target_kpa", "target", last == null ? Double.NaN : last.goalKpaAbs(), Units.KPA_ABS);
    result.measure("card.over_kpa", "highest over target", card.overKpa(), Units.KPA);
    result.measure("card.under_kpa", "farthest under target", card.underKpa(), Units.KPA);
    result.measure("card.spread_kpa", "the pulls differ by", card.spreadKpa(), Units.KPA);
    result.measure(
        "card.spool_rpm",
        "90 % of the boost at",
        last == null ? Double.NaN : last.most().rpm(),
        Units.RPM);
    result.measure(
        "card.headroom_kpa", "room to the overboost limit", card.headroomKpa(), Units.KPA);
    result.measure("card.sensor_kpa", "room to the sensor's top", card.sensorKpa(), Units.KPA);
    result.measure(
        "card.predicted_kpa", "peak to expect next", card.predictedPeakKpaAbs(), Units.KPA_ABS);
    double most =
        card.cells().stream().mapToDouble(c -> 100.0 * c.change()).reduce(0.0, CardCommand::larger);
    result.measure("card.change_pct", "largest change of a cell", most, Units.PERCENT);
  }

  /** By how much, in which cells, and what it should do; the other cells stay empty. */
  private static void tables(ResultBuilder result, Settings car, Card card) {
    String rows = car.demand().id();
    Table2d duty = car.baseDuty();
    result.add(
        CorrectionResult.heat(
            "change",
            "Change of base duty",
            rows,
            duty,
            card.cells(),
            Units.PERCENT,
            c -> 100.0 * c.change()));
    result.add(
        CorrectionResult.heat(
            "expected",
            "Expected change of boost",
            rows,
            duty,
            card.cells(),
            Units.KPA,
            CellChange::expectedKpa));
  }

  private static double larger(double a, double b) {
    return Math.abs(a) >= Math.abs(b) ? a : b;
  }

  private String next(Card card) {
    return switch (card.advice()) {
      case RAISE, LOWER ->
          card.cells().isEmpty()
              ? "lower base duty where it went over, 2 to 5 % at a time"
              : "'boostwright correct' with the same logs writes the change; then three pulls"
                  + " again";
      case HOLD -> "";
      case STOP -> "no further pull before the cause is found";
    };
  }

  private static String headline(Card card, DisplayUnits units) {
    String peak = units.text(card.peakKpaAbs(), Units.KPA_ABS);
    String expected = units.text(card.predictedPeakKpaAbs(), Units.KPA_ABS);
    return switch (card.advice()) {
      case RAISE -> "RAISE " + count(card) + "; peak " + peak + ", then about " + expected + ".";
      case LOWER -> "LOWER " + count(card) + "; peak " + peak + ", then about " + expected + ".";
      case HOLD -> "HOLD; peak " + peak + ".";
      case STOP -> "STOP.";
    };
  }

  private static String count(Card card) {
    int n = card.cells().size();
    return n + (n == 1 ? " cell" : " cells");
  }

  private static String cells(Card card, DisplayUnits units) {
    if (card.cells().isEmpty()) {
      return "";
    }
    StringBuilder text = new StringBuilder("  cell                    duty, %          expected\n");
    for (CellChange c : card.cells().subList(0, Math.min(MOST_CELLS, card.cells().size()))) {
      text.append(
          String.format(
              Locale.ROOT,
              "  %3.0f %% at %4.0f rpm      %4.1f -> %4.1f     %+5.1f %s%n",
              c.demandPct(),
              c.rpm(),
              100.0 * c.oldDuty(),
              100.0 * c.newDuty(),
              units.value(c.expectedKpa(), Units.KPA),
              units.label(Units.KPA)));
    }
    if (card.cells().size() > MOST_CELLS) {
      text.append("  and ").append(card.cells().size() - MOST_CELLS).append(" smaller ones\n");
    }
    return text.toString();
  }

  @Override
  void print(Result result) {
    super.print(result);
    if (!output.json && !output.quiet && !cells.isEmpty()) {
      terminal.out().println();
      terminal.out().print(cells);
      terminal.out().flush();
    }
  }
}
