package org.boostwright.rig.cli;

import java.io.IOException;
import java.nio.file.Path;
import java.util.Optional;
import org.boostwright.core.settings.file.SettingsDigest;
import org.boostwright.rig.replay.Demand;
import org.boostwright.rig.replay.ReplayOptions;
import org.boostwright.rig.replay.TraceReplay;
import org.boostwright.rig.replay.TraceResult;
import org.boostwright.rig.replay.csv.LogImport;
import org.boostwright.rig.replay.csv.LogMapping;
import org.boostwright.rig.replay.csv.LogRefusedException;
import org.boostwright.rig.replay.csv.MappingFile;
import org.boostwright.rig.replay.csv.RecordedLog;
import org.boostwright.rig.result.ResultBuilder;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** Drives the controller with a recorded log. */
@Command(
    name = "replay",
    description = {
      "Feed a recorded log to the controller: what it would have believed, which faults it would",
      "have raised and what it would have asked of the valve. The recording does not answer back."
    },
    footer = {
      "",
      "Examples:",
      "  boostwright replay drive.csv",
      "  boostwright replay diesel.csv --demand pedal --set sensors.map.location=before_throttle",
      "",
      "Fails when the controller would have raised a fault."
    })
final class ReplayCommand extends Subcommand {
  @Mixin SettingsOption settings = new SettingsOption();
  @Mixin SetOption set = new SetOption();
  @Mixin OutOption out = new OutOption();

  @Parameters(paramLabel = "LOG", description = "CSV file: a header line, then one row per sample.")
  Path log;

  @Option(
      names = "--mapping",
      paramLabel = "FILE",
      description = {
        "TOML file that says which column is which signal and in which unit. Default: columns are",
        "recognised by their names and units."
      })
  Optional<Path> mapping = Optional.empty();

  @Option(
      names = "--demand",
      paramLabel = "SIGNAL",
      defaultValue = "THROTTLE",
      description = {
        "What the driver asks with: throttle, or pedal where the throttle does not follow the",
        "driver. Default: throttle."
      })
  Demand demand = Demand.THROTTLE;

  @Option(
      names = "--ambient-kpa-abs",
      paramLabel = "KPA",
      description =
          "Ambient pressure to start from, kPa absolute, 50 to 110. Default: the settings'.")
  Optional<Double> ambientKpaAbs = Optional.empty();

  ReplayCommand(Terminal terminal) {
    super(terminal);
  }

  @Override
  Outcome work(Progress progress) throws IOException, WrongUseException {
    set.settingsOnly();
    SettingsOption.Loaded loaded = SettingsOption.parse(set.change(settings.find()));
    ReplayOptions options = ReplayOptions.DEFAULT.withDemand(demand);
    if (ambientKpaAbs.isPresent()) {
      double kpa = ambientKpaAbs.get();
      if (!(kpa >= 50.0 && kpa <= 110.0)) {
        throw new WrongUseException(
            "--ambient-kpa-abs " + kpa + " is outside 50 to 110", "give absolute pressure in kPa");
      }
      options = options.withAmbient(kpa);
    }
    progress.begin("replaying " + log, 1);
    try {
      LogMapping columns = mapping.isPresent() ? MappingFile.read(mapping.get()) : LogMapping.NONE;
      RecordedLog recorded = LogImport.read(log, columns);
      TraceResult trace = TraceReplay.run(loaded.settings(), recorded, options);
      ResultBuilder result = new ResultBuilder("replay");
      result.units(loaded.settings().units());
      result.settingsDigest(SettingsDigest.of(loaded.settings()));
      result.provenance("log", log.toString());
      result.provenance("settings", loaded.source().where());
      set.sets.forEach(change -> result.provenance("changed for this run", change));
      ReplayResult.add(result, trace);
      return Outcome.kept(result.build(), out.folder);
    } catch (LogRefusedException e) {
      throw new WrongUseException(String.valueOf(e.getMessage()), "");
    }
  }
}
