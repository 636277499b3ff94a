package org.boostwright.rig.cli;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.boostwright.core.settings.Settings;
import org.boostwright.core.settings.file.AtomicFile;
import org.boostwright.core.settings.file.SettingsDigest;
import org.boostwright.core.settings.file.SettingsEdit;
import org.boostwright.rig.logs.correct.Caution;
import org.boostwright.rig.logs.correct.Correction;
import org.boostwright.rig.logs.correct.CorrectionResult;
import org.boostwright.rig.logs.correct.TableCorrection;
import org.boostwright.rig.logs.diagnosis.Cause;
import org.boostwright.rig.logs.diagnosis.DiagnosisResult;
import org.boostwright.rig.logs.pulls.DriveLog;
import org.boostwright.rig.logs.pulls.Pull;
import org.boostwright.rig.logs.pulls.PullFinder;
import org.boostwright.rig.logs.pulls.PullRules;
import org.boostwright.rig.logs.pulls.PullsResult;
import org.boostwright.rig.plant.PlantParams;
import org.boostwright.rig.result.ResultBuilder;
import org.boostwright.rig.result.Severity;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** A corrected base duty table from logs. */
@Command(
    name = "correct",
    header = "Correct the base duty table from recorded drives, with a reason for every cell.",
    description = {
      "Work out from settled boost in recorded drives how base duty should change, cell by cell,"
          + " and",
      "leave a new settings file behind with every comment kept. Give the settings the logs were",
      "driven with and the logs of one session: three pulls at least.",
      "A cell rises by at most 5 %% duty in one session, only where two pulls agree, and never so"
          + " far",
      "that boost is predicted more than 5 kPa over target."
    },
    footer = {
      "",
      "Examples:",
      "  boostwright correct pull-1.csv pull-2.csv pull-3.csv",
      "  boostwright correct --settings car.toml --write car-2.toml runs/pull-*/log.csv",
      "",
      "CAUTION: look at every change before you drive on it. Stay ready to lift, and keep the"
          + " overboost",
      "limit where it was proven."
    })
final class CorrectCommand extends Subcommand {
  /** A settings file holds duty to the tenth of a percent; half of it, and rounding. */
  private static final double WRITTEN_STEP = 0.000501;

  @Mixin SettingsOption settings = new SettingsOption();
  @Mixin SetOption set = new SetOption();
  @Mixin OutOption out = new OutOption();
  @Mixin SoundOption sound = new SoundOption();

  @Parameters(paramLabel = "LOG", arity = "1..*", description = "Logs of one session.")
  List<Path> logs = new ArrayList<>();

  @Option(
      names = "--write",
      paramLabel = "FILE",
      description = "Also write the new settings here. Default: only into the run's folder.")
  Optional<Path> write = Optional.empty();

  @Option(
      names = "--overwrite",
      description = "Let --write replace a file that is there, such as the settings themselves.")
  boolean overwrite;

  CorrectCommand(Terminal terminal) {
    super(terminal);
  }

  @Override
  Outcome work(Progress progress) throws IOException, WrongUseException {
    set.virtualCarOnly();
    SettingsOption.Loaded loaded = settings.load();
    PlantParams start = set.change(PlantParams.PROJECT_CAR);
    if (write.isPresent() && Files.exists(write.get()) && !overwrite) {
      throw new WrongUseException(
          write.get() + " is there already", "give another name, or --overwrite to replace it");
    }
    List<DriveLog> drives = LogFiles.read(logs, progress);
    ResultBuilder result =
        new ResultBuilder("correct")
            .units(loaded.settings().units())
            .settingsDigest(SettingsDigest.of(loaded.settings()));
    boolean mayRaise = mayRaise(drives, loaded.settings(), start, result, progress);
    progress.begin("working out the correction", 1);
    Correction correction =
        TableCorrection.of(loaded.settings(), start, drives, Caution.DEFAULT, mayRaise);
    result.provenance("settings", loaded.source().where());
    logs.forEach(log -> result.provenance("log " + log.getFileName(), log.toString()));
    set.record(result);
    CorrectionResult.add(result, correction, loaded.settings());
    if (correction.refused() || !correction.changes()) {
      return Outcome.kept(result.build(), out.folder);
    }
    byte[] fresh = edited(loaded, correction);
    if (write.isPresent()) {
      AtomicFile.write(write.get(), fresh);
      result.provenance("written to", write.get().toString());
      result.find(
          "settings_written",
          Severity.NOTE,
          "The new settings are in " + write.get() + ".",
          "check them: ./boostwright check " + write.get());
    }
    return Outcome.kept(
        result.build(),
        out.folder,
        new Outcome.Extra("settings", "car.toml", file -> AtomicFile.write(file, fresh)));
  }

  /** Nothing is raised while something is suspected that more duty would make worse or hide. */
  private boolean mayRaise(
      List<DriveLog> drives,
      Settings driven,
      PlantParams start,
      ResultBuilder result,
      Progress progress)
      throws IOException, WrongUseException {
    PlantParams car = sound.car(start, driven, result, progress);
    boolean mayRaise = true;
    List<Pull> all = new ArrayList<>();
    for (DriveLog drive : drives) {
      List<Pull> pulls = PullFinder.find(drive, PullRules.FULL_THROTTLE);
      all.addAll(pulls);
      for (Cause cause : DiagnosisResult.add(result, drive, pulls, driven, car, Double.NaN)) {
        mayRaise &= !cause.forbidsRaising();
      }
    }
    if (!all.isEmpty()) {
      result.add(PullsResult.overlay(all));
    }
    if (!mayRaise) {
      result.find(
          "nothing_raised",
          Severity.CAUTION,
          "No cell is raised: something is suspected that more duty would make worse or hide.",
          "settle the suspicion first");
    }
    return mayRaise;
  }

  /** The settings file with the new table, read back and found good. */
  private static byte[] edited(SettingsOption.Loaded loaded, Correction correction) {
    SettingsEdit edit =
        SettingsEdit.of(loaded.source().name(), SettingsOption.text(loaded.source()))
            .setBaseDuty(correction.after());
    double[] read = edit.load().orThrow().baseDuty().values();
    double[] meant = correction.after().values();
    for (int i = 0; i < meant.length; i++) {
      if (!(Math.abs(read[i] - meant[i]) <= WRITTEN_STEP)) {
        throw new IllegalStateException("the new table does not read back as it was written");
      }
    }
    return edit.text().getBytes(StandardCharsets.UTF_8);
  }
}
