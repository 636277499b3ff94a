package org.boostwright.pi.cli;

import java.nio.file.Path;
import org.boostwright.core.link.Line;
import org.boostwright.core.settings.Settings;
import org.boostwright.core.settings.file.LoadResult;
import org.boostwright.core.settings.file.SettingsFile;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Option;

/** What every command that opens the wires is told: which settings, where its files go. */
final class RunOptions {
  @Option(
      names = "--baud",
      paramLabel = "N",
      defaultValue = "" + Line.DEFAULT_BAUD,
      description = "Speed of the serial port, the same at both ends. Default: ${DEFAULT-VALUE}.")
  int baud = Line.DEFAULT_BAUD;

  @Option(
      names = "--settings",
      paramLabel = "FILE",
      defaultValue = "car.toml",
      description = "Settings file. Default: ${DEFAULT-VALUE} in the current folder.")
  Path settingsFile = Path.of("car.toml");

  @Option(
      names = "--data",
      paramLabel = "FOLDER",
      defaultValue = "boostwright-data",
      description =
          "Where recordings, hours, settings history and the last ambient pressure are kept."
              + " Default: ${DEFAULT-VALUE}.")
  Path data = Path.of("boostwright-data");

  @Option(names = "--json", description = "Print one JSON object at the end (docs/json.md).")
  boolean json;

  /**
   * The settings.
   *
   * @param command who asks, for the message
   * @return null when the file was refused, which was then said with every reason
   */
  @Nullable Settings load(String command) {
    LoadResult loaded = SettingsFile.load(settingsFile);
    if (loaded.settings() == null) {
      loaded.problems().forEach(System.err::println);
      System.err.println(
          command + ": " + settingsFile + " was refused as a whole; the coil stays off");
    }
    return loaded.settings();
  }
}
