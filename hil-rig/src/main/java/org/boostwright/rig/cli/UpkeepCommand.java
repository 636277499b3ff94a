package org.boostwright.rig.cli;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.boostwright.core.bench.proof.DamagedProofException;
import org.boostwright.core.ladder.Ladder;
import org.boostwright.core.ladder.Rung;
import org.boostwright.core.ladder.Standing;
import org.boostwright.core.settings.Settings;
import org.boostwright.core.settings.file.AtomicFile;
import org.boostwright.core.settings.file.HoursFile;
import org.boostwright.core.settings.file.LadderFile;
import org.boostwright.core.settings.file.ProofFile;
import org.boostwright.core.settings.file.SettingsDigest;
import org.boostwright.core.upkeep.OperatingHours;
import org.boostwright.rig.report.DisplayUnits;
import org.boostwright.rig.result.ResultBuilder;
import org.boostwright.rig.result.ResultJson;
import org.boostwright.rig.result.Severity;
import org.boostwright.rig.result.Units;
import org.boostwright.rig.upkeep.CarRecord;
import org.boostwright.rig.upkeep.Drift;
import org.boostwright.rig.upkeep.Wear;
import org.boostwright.rig.upkeep.Yearly;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** What a built car needs year after year. */
@Command(
    name = "upkeep",
    header = "Hours, drift from bench to bench, yearly list, old settings, the record of the car.",
    description = {
      "Without a word: hours, drift and what is due. 'history' lists the settings files that were",
      "driven with, 'diff N [M]' names what differs (M: default the present file), 'restore N'",
      "brings one back, 'record' writes the car's record to print and keep."
    },
    footer = {
      "",
      "Examples:",
      "  boostwright upkeep --data /var/lib/boostwright",
      "  boostwright upkeep history",
      "  boostwright upkeep diff 3",
      "  boostwright upkeep restore 3",
      "  boostwright upkeep record --campaign runs/faults-1 --out record",
      "",
      "A restored file counts when 'drive' next starts; what it was not proven with falls. See",
      "docs/upkeep.md."
    })
final class UpkeepCommand extends Subcommand {
  @Mixin SettingsOption settings = new SettingsOption();
  @Mixin OutOption out = new OutOption();

  @Parameters(
      arity = "0..3",
      paramLabel = "WHAT",
      description = "history, diff N [M], restore N, or record.")
  List<String> what = new ArrayList<>();

  @Option(
      names = "--data",
      paramLabel = "FOLDER",
      description = "Folder of 'drive --data', or a copy of it. Default: ${DEFAULT-VALUE}.",
      defaultValue = "boostwright-data")
  Path data = Path.of("boostwright-data");

  @Option(
      names = "--campaign",
      paramLabel = "RUN",
      description = "With record: a run of 'faults' to take into it.")
  Optional<Path> campaign = Optional.empty();

  @Option(names = "--practice", description = "The ladder of the virtual car.")
  boolean practice;

  private Path file = Path.of("car.toml");

  UpkeepCommand(Terminal terminal) {
    super(terminal);
  }

  @Override
  Outcome work(Progress progress) throws IOException, WrongUseException {
    file =
        settings
            .path()
            .orElseThrow(
                () ->
                    new WrongUseException(
                        "upkeep is of your car's settings file, and there is none",
                        "copy docs/project-car.toml to car.toml, or give --settings FILE"));
    String word = what.isEmpty() ? "" : what.get(0);
    int numbers = Math.max(0, what.size() - 1);
    boolean fits =
        switch (word) {
          case "", "history", "record" -> numbers == 0;
          case "diff" -> numbers == 1 || numbers == 2;
          case "restore" -> numbers == 1;
          default -> false;
        };
    if (!fits || (campaign.isPresent() && !word.equals("record"))) {
      throw new WrongUseException(
          "'" + String.join(" ", what) + "' is nothing upkeep does",
          "history, diff N [M], restore N, or record (with --campaign RUN)");
    }
    ResultBuilder result = new ResultBuilder("upkeep").provenance("settings", file.toString());
    if (word.equals("restore")) {
      history().restore(what.get(1), result);
      return Outcome.printed(result.build());
    }
    Settings car = settings.load().settings();
    result.units(car.units()).settingsDigest(SettingsDigest.of(car));
    switch (word) {
      case "history" -> history().list(car, result);
      case "diff" -> history().diff(what.subList(1, what.size()), car, result);
      case "record" -> {
        return record(car, result);
      }
      default -> show(car, result);
    }
    return Outcome.printed(result.build());
  }

  private UpkeepHistory history() {
    return new UpkeepHistory(data, file, practice);
  }

  private Optional<Ladder> ladder(ResultBuilder result) throws IOException {
    try {
      return Optional.of(LadderFile.read(LadderFile.beside(file, practice)));
    } catch (DamagedProofException e) {
      result.refuse(
          "ladder_damaged",
          "The record of the ladder is damaged: " + e.getMessage() + ". Nothing counts as proven.",
          "bring back an undamaged copy, or begin at the bench");
      return Optional.empty();
    }
  }

  private void show(Settings car, ResultBuilder result) throws IOException {
    hours(result);
    Optional<Ladder> ladder = ladder(result);
    int due = 0;
    if (ladder.isPresent()) {
      due += drift(ladder.get(), car, result);
      due += due(ladder.get(), Instant.now(), result);
    }
    for (String item : Yearly.LIST) {
      result.find("yearly", Severity.NOTE, "Once a year: " + item, "");
    }
    if (ladder.isPresent()) {
      result.headline(due == 0 ? "Nothing is due." : due + " to look at.");
    }
    result.caution("A number that has not moved is no proof that a hose will hold.");
  }

  private void hours(ResultBuilder result) throws IOException {
    Path counted = HoursFile.in(data);
    try {
      Optional<OperatingHours> hours = HoursFile.read(counted);
      if (hours.isEmpty()) {
        result.find(
            "hours_none",
            Severity.NOTE,
            "No hours are counted in " + data + ".",
            "give the folder of 'drive --data' with --data, or a copy of it");
        return;
      }
      OperatingHours h = hours.get();
      result.measure("upkeep.engine_h", "engine ran", h.engineSeconds() / 3600.0, "h");
      result.measure("upkeep.driven_h", "valve was driven", h.drivenSeconds() / 3600.0, "h");
      result.measure(
          "upkeep.valve_cycles", "strokes of the valve", Math.rint(h.valveCycles()), Units.COUNT);
      result.measure("upkeep.starts", "engine starts", h.starts(), Units.COUNT);
      result.provenance("hours counted since", h.since());
    } catch (DamagedProofException e) {
      result.find(
          "hours_damaged",
          Severity.CAUTION,
          counted + " is damaged: " + e.getMessage() + ".",
          "the next 'drive' moves it aside and begins to count anew");
    }
  }

  /** Returns how many moved too far. */
  private int drift(Ladder ladder, Settings car, ResultBuilder result) {
    DisplayUnits units = new DisplayUnits(car.units());
    int beyond = 0;
    for (Wear wear : Wear.values()) {
      Drift drift = Drift.of(wear, ladder, practice);
      if (drift.points().isEmpty()) {
        continue;
      }
      if (drift.points().size() > 1) {
        result.measure(
            "drift." + wear.id(), wear.words() + ", moved by", drift.change(), change(wear));
      }
      boolean far = drift.beyond();
      beyond += far ? 1 : 0;
      result.find(
          "drift_" + wear.id(),
          far ? Severity.CAUTION : Severity.NOTE,
          words(drift, units),
          far ? next(wear) : "");
    }
    return beyond;
  }

  /** A difference of gauge pressures is a difference. */
  private static String change(Wear wear) {
    return wear.unit().equals(Units.KPA_GAUGE) ? Units.KPA : wear.unit();
  }

  private static String words(Drift drift, DisplayUnits units) {
    Wear wear = drift.wear();
    int count = drift.points().size();
    String last = units.text(drift.points().get(count - 1).value(), wear.unit());
    String text = wear.words() + ": " + last;
    if (count > 1) {
      text +=
          ", "
              + units.text(drift.points().get(0).value(), wear.unit())
              + " at first; named from "
              + units.text(drift.threshold(), change(wear))
              + " on";
    }
    text += "; " + count + (count == 1 ? " bench" : " benches") + " of this part";
    if (Double.isFinite(drift.perYear())) {
      text += "; " + units.text(drift.perYear(), change(wear)) + " a year";
    }
    if (Double.isFinite(drift.yearsLeft())) {
      text += String.format(Locale.ROOT, ", so in about %.1f years", drift.yearsLeft());
    }
    return text.substring(0, 1).toUpperCase(Locale.ROOT) + text.substring(1) + ".";
  }

  private static String next(Wear wear) {
    return switch (wear) {
      case ON_DELAY, OFF_DELAY ->
          "supply voltage at the valve, dirt or oil in it, its driver; replace the valve when it"
              + " stays";
      case LEAK -> "hoses and clamps of the actuator line, then actuator and valve one by one";
      case CRACK -> "rod length and lock nut, gate's lever, then the spring";
    };
  }

  /** Returns how many are due. */
  private int due(Ladder ladder, Instant today, ResultBuilder result) {
    int due = 0;
    for (Rung rung : new Rung[] {Rung.BENCH, Rung.CUT_PROVEN}) {
      double days = Yearly.daysSince(rung, ladder, practice, today);
      if (days >= 0.0) {
        result.measure(
            "upkeep." + rung.id() + "_days", "since '" + rung.words() + "'", Math.floor(days), "d");
      }
      if (days > Yearly.DAYS) {
        due++;
        result.find(
            "due_" + rung.id(),
            Severity.CAUTION,
            "'" + rung.words() + "' was proven more than a year ago.",
            rung.next());
      }
    }
    return due;
  }

  private Outcome record(Settings car, ResultBuilder result) throws IOException {
    CarRecord record = new CarRecord(result, car);
    Standing standing = LadderFile.standing(file, car, practice);
    List<Outcome.Extra> extras = new ArrayList<>();
    copy(file, "settings", extras);
    record.parts();
    hours(result);
    Optional<Ladder> ladder = ladder(result);
    if (ladder.isPresent()) {
      record.ladder(ladder.get(), standing, practice);
      drift(ladder.get(), car, result);
      copy(LadderFile.beside(file, practice), "ladder", extras);
    }
    Path proof = ProofFile.beside(file, practice);
    if (Files.exists(proof)) {
      try {
        record.proof(ProofFile.read(proof));
        copy(proof, "proof", extras);
      } catch (DamagedProofException e) {
        result.find(
            "bench_damaged", Severity.CAUTION, "The bench proof: " + e.getMessage() + ".", "");
      }
    }
    if (campaign.isPresent()) {
      Path run = campaign.get();
      record.campaign(
          ResultJson.read(Files.isDirectory(run) ? run.resolve(RunFolder.RESULT) : run),
          SettingsDigest.of(car));
    }
    result.provenance("date", Instant.now().toString());
    result.provenance("fingerprint of the hardware", SettingsDigest.ofHardware(car));
    result.caution(CarRecord.TO_SPRING);
    if (practice) {
      result.caution("The ladder in it is the virtual car's; it proves nothing about yours.");
    }
    result.headline("Record of " + car.car().name() + ": " + standing.words() + ".");
    return Outcome.kept(result.build(), out.folder, extras.toArray(Outcome.Extra[]::new));
  }

  private static void copy(Path from, String kind, List<Outcome.Extra> extras) throws IOException {
    if (Files.exists(from)) {
      byte[] bytes = Files.readAllBytes(from);
      extras.add(
          new Outcome.Extra(
              kind, String.valueOf(from.getFileName()), to -> AtomicFile.write(to, bytes)));
    }
  }
}
