package org.boostwright.core.settings.file;

import java.nio.file.Path;
import java.util.List;
import org.boostwright.core.settings.Settings;

/** Turns a settings file into everything its writer wants to know about it. */
public final class SettingsCheck {
  private SettingsCheck() {}

  /** Reads and checks a file; never throws for what is in it. */
  public static CheckReport run(Path path) {
    return report(SettingsFile.fileName(path), SettingsFile.load(path));
  }

  /** The report of a file that has been read already. */
  public static CheckReport report(String name, LoadResult result) {
    Settings settings = result.settings();
    if (settings == null) {
      return new CheckReport(name, result.problems(), List.of(), List.of(), "", "");
    }
    return new CheckReport(
        name,
        result.problems(),
        Listing.of(settings, result.stated()),
        WiringFigures.of(settings),
        SettingsDigest.of(settings),
        SettingsDigest.ofHardware(settings));
  }
}
