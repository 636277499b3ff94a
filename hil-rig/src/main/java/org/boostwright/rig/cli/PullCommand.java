package org.boostwright.rig.cli;

import java.io.IOException;
import java.util.List;
import java.util.Locale;
import org.boostwright.core.settings.file.SettingsDigest;
import org.boostwright.rig.plant.PlantParams;
import org.boostwright.rig.result.ResultBuilder;
import org.boostwright.rig.result.SettingsTables;
import org.boostwright.rig.scenario.PullPlan;
import org.boostwright.rig.scenario.PullResult;
import org.boostwright.rig.scenario.PullRun;
import org.boostwright.rig.scenario.VirtualPull;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** A virtual full-throttle pull. */
@Command(
    name = "pull",
    header = "A virtual full-throttle pull with your settings.",
    description = {
      "Drive the virtual car through a full-throttle pull with your settings: key on, start, idle,",
      "part throttle in gear, full throttle to the top, throttle shut."
    },
    footer = {
      "",
      "Examples:",
      "  boostwright pull",
      "  boostwright pull --settings car.toml --gear 4 --altitude-m 1500 --air-c 35",
      "  boostwright pull --set feedback.enabled=false --set virtual.spring_cracks_kpa_gauge=50",
      "",
      "Keys that begin with virtual. change the virtual car; a wrong one lists what there is.",
      "Fails above the overboost limit, and when a fault puts the valve at rest."
    })
final class PullCommand extends Subcommand {
  @Mixin SettingsOption settings = new SettingsOption();
  @Mixin SetOption set = new SetOption();
  @Mixin OutOption out = new OutOption();

  @Option(
      names = "--gear",
      paramLabel = "N",
      defaultValue = "3",
      description = "Gear, 1 to 5. Default: ${DEFAULT-VALUE}.")
  int gear;

  @Option(
      names = "--from-rpm",
      paramLabel = "R",
      defaultValue = "2500",
      description = "Engine speed at which the throttle opens, 1/min. Default: ${DEFAULT-VALUE}.")
  double fromRpm;

  @Option(
      names = "--to-rpm",
      paramLabel = "R",
      defaultValue = "6200",
      description = "Engine speed at which it shuts, 1/min. Default: ${DEFAULT-VALUE}.")
  double toRpm;

  @Option(
      names = "--altitude-m",
      paramLabel = "M",
      defaultValue = "0",
      description = "Altitude, m, -300 to 4000. Default: ${DEFAULT-VALUE}.")
  double altitudeM;

  @Option(
      names = "--air-c",
      paramLabel = "C",
      defaultValue = "20",
      description = "Outside air, degC, -30 to 50. Default: ${DEFAULT-VALUE}.")
  double airC;

  @Option(
      names = "--seed",
      paramLabel = "N",
      defaultValue = "1",
      description =
          "Seed of the sensors' noise; the same seed gives the same run to the bit."
              + " Default: ${DEFAULT-VALUE}.")
  long seed;

  PullCommand(Terminal terminal) {
    super(terminal);
  }

  @Override
  Outcome work(Progress progress) throws IOException, WrongUseException {
    PlantParams car = set.change(PlantParams.PROJECT_CAR);
    Range.check("--gear", gear, 1, car.car().gears().length);
    Range.check("--from-rpm", fromRpm, 1200, 6500);
    Range.check("--to-rpm", toRpm, fromRpm + 100, 7500);
    Range.check("--altitude-m", altitudeM, -300, 4000);
    Range.check("--air-c", airC, -30, 50);
    SettingsOption.Loaded loaded = SettingsOption.parse(set.change(settings.find()));
    progress.begin("pull", 100);
    PullPlan plan = new PullPlan(gear, fromRpm, toRpm, altitudeM, airC, seed, List.of());
    PullRun run =
        VirtualPull.run(
            loaded.settings(), car, plan, share -> progress.at(Math.round(100 * share)));
    String digest = SettingsDigest.of(loaded.settings());
    ResultBuilder result = new ResultBuilder("pull").settingsDigest(digest).seed(seed);
    result.units(loaded.settings().units());
    result.provenance("settings", loaded.source().where());
    result.provenance(
        "pull",
        String.format(
            Locale.ROOT,
            "gear %d from %.0f to %.0f rpm, %.0f m, %.0f °C",
            gear,
            fromRpm,
            toRpm,
            altitudeM,
            airC));
    set.record(result);
    PullResult.add(result, run);
    SettingsTables.add(result, loaded.settings());
    return Outcome.kept(
        result.build(),
        out.folder,
        new Outcome.Extra("log", "log.csv", file -> run.log().writeCsv(file, digest, seed)));
  }
}
