package org.boostwright.rig.cli;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.boostwright.core.settings.FeedbackSettings;
import org.boostwright.core.settings.Settings;
import org.boostwright.core.settings.file.AtomicFile;
import org.boostwright.core.settings.file.SettingsDigest;
import org.boostwright.core.settings.file.SettingsEdit;
import org.boostwright.core.table.Curve;
import org.boostwright.rig.logs.gains.GainAdvice;
import org.boostwright.rig.logs.gains.GainProof;
import org.boostwright.rig.logs.gains.GainsResult;
import org.boostwright.rig.logs.gains.Pace;
import org.boostwright.rig.logs.identify.CarTwin;
import org.boostwright.rig.logs.identify.RecordedDrive;
import org.boostwright.rig.logs.identify.TwinFit;
import org.boostwright.rig.logs.pulls.DriveLog;
import org.boostwright.rig.logs.pulls.Pull;
import org.boostwright.rig.logs.pulls.PullFinder;
import org.boostwright.rig.logs.pulls.PullRules;
import org.boostwright.rig.logs.pulls.PullsResult;
import org.boostwright.rig.plant.PlantParams;
import org.boostwright.rig.result.ResultBuilder;
import org.boostwright.rig.result.Severity;
import org.boostwright.rig.result.Verdict;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** Gains of the pressure feedback from logs. */
@Command(
    name = "gains",
    header = "How boost answers duty, and feedback gains that suit it, from recorded pulls.",
    description = {
      "Identify from recorded pulls how boost answers duty over engine speed, work out gains of"
          + " the",
      "pressure feedback with their margins, and prove them on virtual cars within tolerances.",
      "Only gains that pass are written, into a new settings file with every comment kept."
    },
    footer = {
      "",
      "Examples:",
      "  boostwright gains pull-1.csv pull-2.csv",
      "  boostwright gains --pace brisk --cars 200 runs/pull-*/log.csv",
      "",
      "CAUTION: correct base duty first; try new gains on a short pull, ready to lift."
    })
final class GainsCommand extends Subcommand {
  private static final double PERCENT = 100.0;

  @Mixin SettingsOption settings = new SettingsOption();
  @Mixin SetOption set = new SetOption();
  @Mixin OutOption out = new OutOption();

  @Parameters(paramLabel = "LOG", arity = "1..*", description = "Logs with full-throttle pulls.")
  List<Path> logs = new ArrayList<>();

  @Option(
      names = "--pace",
      paramLabel = "PACE",
      defaultValue = "CALM",
      description = "calm or brisk. Default: calm.")
  Pace pace = Pace.CALM;

  @Option(
      names = "--cars",
      paramLabel = "N",
      defaultValue = "40",
      description = "Virtual cars of the proof, 20 to 1000. Default: ${DEFAULT-VALUE}.")
  int cars;

  @Option(
      names = "--seed",
      paramLabel = "N",
      defaultValue = "1",
      description = "Seed of the cars. Default: ${DEFAULT-VALUE}.")
  long seed;

  GainsCommand(Terminal terminal) {
    super(terminal);
  }

  @Override
  Outcome work(Progress progress) throws IOException, WrongUseException {
    Range.check("--cars", cars, 20, 1000);
    set.virtualCarOnly();
    SettingsOption.Loaded loaded = settings.load();
    Settings car = loaded.settings();
    PlantParams start = set.change(PlantParams.PROJECT_CAR);
    List<Pull> pulls = new ArrayList<>();
    for (DriveLog log : LogFiles.read(logs, progress)) {
      PullFinder.find(log, PullRules.FULL_THROTTLE).stream()
          .filter(pull -> pull.usable() && log.controlled())
          .forEach(pulls::add);
    }
    ResultBuilder result = new ResultBuilder("gains").units(car.units()).seed(seed);
    result.settingsDigest(SettingsDigest.of(car));
    result.provenance("settings", loaded.source().where());
    result.provenance("pace", pace.name().toLowerCase(Locale.ROOT));
    set.record(result);
    if (pulls.isEmpty()) {
      result.refuse(
          "no_usable_pull",
          "No log holds a full-throttle pull with recorded duty that can be learnt from.",
          "record two pulls with Boostwright, in one gear from 2500 rpm to the red line");
      return Outcome.kept(result.build(), out.folder);
    }
    progress.begin("fitting the virtual car", 1);
    CarTwin twin = TwinFit.fit(start.withPwmHz(car.valve().frequencyHz()), pulls);
    if (!twin.resembles()) {
      result.refuse(
          "car_not_identified",
          String.format(
              Locale.ROOT,
              "No car like the virtual one explains these pulls: %.1f kPa off.",
              twin.rmsKpa()),
          "look at what 'replay' says about the pulls first");
      return Outcome.kept(result.build(), out.folder);
    }
    progress.begin("identifying and tuning", 1);
    GainAdvice advice = GainAdvice.of(twin, RecordedDrive.air(pulls.get(0)), car, pace, seed);
    progress.begin("proving on " + cars + " virtual cars", 100);
    GainProof proof =
        GainProof.of(
            advice.in(car),
            twin.car(),
            1.0,
            cars,
            seed,
            share -> progress.at(Math.round(100 * share)));
    GainsResult.add(result, twin, advice, proof);
    result.add(PullsResult.overlay(pulls));
    boolean offered = result.verdict() == Verdict.PASSED;
    result.headline(
        offered
            ? "Gains found, proven on " + cars + " virtual cars."
            : "The gains did not pass their proof and are not offered.");
    if (!offered) {
      return Outcome.kept(result.build(), out.folder);
    }
    result.find(
        "gains_offered",
        Severity.NOTE,
        "The gains stand in the car.toml beside this result, every comment kept.",
        "look at them, make it your settings file, and try a short pull in a high gear, ready to"
            + " lift");
    byte[] fresh = edited(loaded, advice.in(car)).getBytes(StandardCharsets.UTF_8);
    return Outcome.kept(
        result.build(),
        out.folder,
        new Outcome.Extra("settings", "car.toml", file -> AtomicFile.write(file, fresh)));
  }

  private static String edited(SettingsOption.Loaded loaded, Settings tuned) {
    FeedbackSettings feedback = tuned.feedback();
    SettingsEdit edit =
        SettingsEdit.of(loaded.source().name(), SettingsOption.text(loaded.source()))
            .set("feedback.enabled", true)
            .set("feedback.rpm", feedback.kpDutyPerKpa().axis().points())
            .set("feedback.kp_pct_per_kpa", percent(feedback.kpDutyPerKpa()))
            .set("feedback.ki_pct_per_kpa_s", percent(feedback.kiDutyPerKpaSecond()))
            .set("feedback.kd_pct_s_per_kpa", percent(feedback.kdDutySecondPerKpa()))
            .set("feedback.tracking_s", rounded(feedback.trackingSeconds()))
            .set("feedback.derivative_filter_s", feedback.derivativeFilterSeconds())
            .set("feedback.active_within_kpa", feedback.activeWithinKpa())
            .set("spool.lead_s", rounded(tuned.spool().leadSeconds()));
    edit.load().orThrow();
    return edit.text();
  }

  private static double[] percent(Curve gains) {
    double[] values = gains.values();
    for (int i = 0; i < values.length; i++) {
      values[i] = rounded(PERCENT * values[i]);
    }
    return values;
  }

  private static double rounded(double value) {
    return Math.rint(value * 1e3) / 1e3;
  }
}
