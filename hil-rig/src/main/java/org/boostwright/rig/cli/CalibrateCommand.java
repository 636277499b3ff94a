package org.boostwright.rig.cli;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.boostwright.core.settings.Settings;
import org.boostwright.core.settings.file.AtomicFile;
import org.boostwright.core.settings.file.LoadResult;
import org.boostwright.core.settings.file.SettingsDigest;
import org.boostwright.core.settings.file.SettingsEdit;
import org.boostwright.rig.calibrate.Calibrated;
import org.boostwright.rig.calibrate.Calibration;
import org.boostwright.rig.replay.RecordRows;
import org.boostwright.rig.replay.csv.LogRefusedException;
import org.boostwright.rig.result.ResultBuilder;
import org.boostwright.rig.result.Severity;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** Calibrates sensors from a recording. */
@Command(
    name = "calibrate",
    header = "Sensors against what you read off an instrument; slips are caught.",
    description = {
      "From a recording of 'drive' with the engine off (throttle, pressure, air, supply) or idling",
      "(engine speed), and what your instruments showed. Comments in the settings file stay."
    },
    footer = {
      "",
      "Examples:",
      "  boostwright calibrate engine-off.csv --throttle --ambient-kpa 99.8 --air-c 18",
      "  boostwright calibrate idle.csv --tach-rpm 850 --write car.toml --overwrite",
      "",
      "A changed pressure sensor voids the bench proof: calibrate it before the bench."
    })
final class CalibrateCommand extends Subcommand {
  private static final String THROTTLE_VOLTS = "sensors.throttle.volts";

  /** What the settings file takes where it does not say. */
  private static final double VALID_BEYOND = 0.075;

  private static final double LOWEST_VALID = 0.05;
  private static final double HIGHEST_VALID = 4.95;

  @Mixin SettingsOption settings = new SettingsOption();

  @Parameters(paramLabel = "LOG", description = "Recording of 'drive'.")
  Path log = Path.of("");

  @Option(
      names = "--throttle",
      description = "Closed and full throttle: let go and pushed to the floor, twice, engine off.")
  boolean throttle;

  @Option(names = "--tach-rpm", paramLabel = "R", description = "What the tachometer shows, 1/min.")
  Optional<Double> tachRpm = Optional.empty();

  @Option(
      names = "--ambient-kpa",
      paramLabel = "P",
      description = "Barometer here, not reduced to sea level, kPa absolute.")
  Optional<Double> ambientKpa = Optional.empty();

  @Option(
      names = "--gauge-kpa",
      paramLabel = "P",
      description = "Gauge on the sensor's hose, kPa gauge; needs --ambient-kpa.")
  Optional<Double> gaugeKpa = Optional.empty();

  @Option(names = "--air-c", paramLabel = "C", description = "Thermometer, engine cold, degC.")
  Optional<Double> airC = Optional.empty();

  @Option(names = "--supply-v", paramLabel = "V", description = "Multimeter at the battery, V.")
  Optional<Double> supplyV = Optional.empty();

  @Option(
      names = "--write",
      paramLabel = "FILE",
      description = "Write the settings with the new values here.")
  Optional<Path> write = Optional.empty();

  @Option(names = "--overwrite", description = "Let --write replace a file that is there.")
  boolean overwrite;

  CalibrateCommand(Terminal terminal) {
    super(terminal);
  }

  @Override
  Outcome work(Progress progress) throws IOException, WrongUseException {
    SettingsOption.Loaded loaded = settings.load();
    if (write.isPresent() && Files.exists(write.get()) && !overwrite) {
      throw new WrongUseException(
          write.get() + " is there already", "give another name, or --overwrite to replace it");
    }
    if (gaugeKpa.isPresent() && ambientKpa.isEmpty()) {
      throw new WrongUseException("--gauge-kpa needs the ambient pressure", "add --ambient-kpa");
    }
    List<Calibrated> all;
    try {
      all = calibrate(loaded.settings(), RecordRows.read(log));
    } catch (LogRefusedException e) {
      throw new WrongUseException(String.valueOf(e.getMessage()), "");
    }
    if (all.isEmpty()) {
      throw new WrongUseException("nothing to calibrate was named", "see 'calibrate --help'");
    }
    ResultBuilder result = new ResultBuilder("calibrate").units(loaded.settings().units());
    SettingsEdit edit =
        SettingsEdit.of(loaded.source().name(), SettingsOption.text(loaded.source()));
    int changed = 0;
    for (Calibrated each : all) {
      changed += apply(each, edit, result) ? 1 : 0;
    }
    LoadResult fresh = edit.load();
    if (!fresh.ok()) {
      fresh.problems().forEach(p -> result.add(SettingsFindings.of(p)));
    } else if (write.isPresent() && changed > 0) {
      AtomicFile.write(write.get(), edit.text().getBytes(StandardCharsets.UTF_8));
      result.provenance("written to", write.get().toString());
    }
    result.settingsDigest(SettingsDigest.of(fresh.ok() ? fresh.orThrow() : loaded.settings()));
    result.caution("Engine off, handbrake on. Idling: open air, neutral.");
    return Outcome.printed(
        result
            .headline(
                changed == 0
                    ? "Nothing to change."
                    : changed
                        + (changed == 1 ? " value" : " values")
                        + " to change"
                        + (write.isPresent() ? ", written." : "; --write FILE writes it."))
            .build());
  }

  private List<Calibrated> calibrate(Settings car, List<double[]> rows) {
    Calibration calibration = new Calibration(car, rows);
    List<Calibrated> all = new ArrayList<>();
    if (throttle) {
      all.add(calibration.throttle());
    }
    tachRpm.ifPresent(rpm -> all.add(calibration.pulses(rpm)));
    if (gaugeKpa.isPresent()) {
      all.add(calibration.gauge(gaugeKpa.get(), ambientKpa.orElse(Double.NaN)));
    } else {
      ambientKpa.ifPresent(kpa -> all.add(calibration.ambient(kpa)));
    }
    airC.ifPresent(c -> all.add(calibration.air(c)));
    supplyV.ifPresent(v -> all.add(calibration.supply(v)));
    return all;
  }

  /** True when a new value went into the edit. */
  private static boolean apply(Calibrated each, SettingsEdit edit, ResultBuilder result) {
    String code = "calibrate_" + each.outcome().name().toLowerCase(Locale.ROOT);
    boolean refused = each.outcome() == Calibrated.Outcome.REFUSED;
    result.find(
        code,
        refused ? Severity.PROBLEM : Severity.NOTE,
        each.what() + ": " + each.text() + (each.text().endsWith(".") ? "" : "."),
        each.next());
    if (each.outcome() != Calibrated.Outcome.CHANGED) {
      return false;
    }
    double[] values = each.values().stream().mapToDouble(v -> v).toArray();
    if (values.length == 1) {
      edit.set(each.key(), values[0]);
    } else {
      edit.set(each.key(), values);
    }
    if (each.key().equals(THROTTLE_VOLTS)
        && edit.load().stated().containsKey("sensors.throttle.valid_volts")) {
      double low = Math.min(values[0], values[1]);
      double high = Math.max(values[0], values[1]);
      double beyond = VALID_BEYOND * (high - low);
      edit.set(
          "sensors.throttle.valid_volts",
          Math.max(LOWEST_VALID, Math.rint(1e3 * (low - beyond)) / 1e3),
          Math.min(HIGHEST_VALID, Math.rint(1e3 * (high + beyond)) / 1e3));
    }
    return true;
  }
}
