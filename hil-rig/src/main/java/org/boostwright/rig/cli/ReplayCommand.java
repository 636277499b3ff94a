package org.boostwright.rig.cli;

import java.io.IOException;
import java.nio.file.Path;
import java.util.Optional;
import org.boostwright.core.AnalogChannel;
import org.boostwright.core.settings.file.SettingsDigest;
import org.boostwright.rig.replay.RecordReplay;
import org.boostwright.rig.replay.RecordResult;
import org.boostwright.rig.replay.ReplayOptions;
import org.boostwright.rig.replay.TraceReplay;
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
    header = "Feed a recorded log to the controller.",
    description = {
      "Feed a recorded log to the controller: what it would have believed, which faults it would",
      "have raised and what it would have asked of the valve. The recording does not answer back.",
      "A run recorded by Boostwright itself is replayed to the bit; any other log is imported."
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
      description =
          "TOML file that says which column is which signal and in which unit. Default: "
              + "columns are recognised by their names and units.")
  Optional<Path> mapping = Optional.empty();

  /** Signals that can stand for what the driver asks for. */
  enum DemandChoice {
    THROTTLE(AnalogChannel.THROTTLE),
    PEDAL(AnalogChannel.PEDAL);

    private final AnalogChannel channel;

    DemandChoice(AnalogChannel channel) {
      this.channel = channel;
    }
  }

  @Option(
      names = "--demand",
      paramLabel = "SIGNAL",
      description =
          "What the driver asks with: throttle, or pedal where the throttle does not "
              + "follow the driver. Default: what the rows of the settings' tables are.")
  Optional<DemandChoice> demand = Optional.empty();

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
    ReplayOptions options = ReplayOptions.DEFAULT;
    if (demand.isPresent()) {
      options = options.withDemand(demand.get().channel);
    }
    if (ambientKpaAbs.isPresent()) {
      double kpa = ambientKpaAbs.get();
      Range.check("--ambient-kpa-abs", kpa, 50, 110);
      options = options.withAmbient(kpa);
    }
    progress.begin("replaying " + log, 1);
    try {
      LogMapping columns = mapping.isPresent() ? MappingFile.read(mapping.get()) : LogMapping.NONE;
      byte[] bytes = LogImport.bytes(log);
      String digest = SettingsDigest.of(loaded.settings());
      ResultBuilder result = new ResultBuilder("replay");
      if (mapping.isEmpty() && RecordReplay.isRecord(bytes)) {
        RecordResult run =
            RecordReplay.run(loaded.settings(), bytes, log.toString());
        ReplayResult.add(result, run, loaded.settings(), run.meta().contains(digest));
      } else {
        RecordedLog recorded = LogImport.parse(bytes, log.toString(), columns);
        ReplayResult.add(result, TraceReplay.run(loaded.settings(), recorded, options));
      }
      result.units(loaded.settings().units());
      result.settingsDigest(digest);
      result.provenance("log", log.toString());
      result.provenance("settings", loaded.source().where());
      set.record(result);
      return Outcome.kept(result.build(), out.folder);
    } catch (LogRefusedException e) {
      throw new WrongUseException(String.valueOf(e.getMessage()), "");
    }
  }
}
