package org.boostwright.rig.scenario;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import org.boostwright.core.settings.Settings;
import org.boostwright.core.settings.file.SettingsFile;

/** The settings of the built-in project car: the very file of the documentation. */
public final class ProjectCarSettings {
  /** Name the file has in messages. */
  public static final String FILE_NAME = "project-car.toml";

  private ProjectCarSettings() {}

  /** The file's text. */
  public static String text() {
    try (InputStream in = ProjectCarSettings.class.getResourceAsStream("/" + FILE_NAME)) {
      if (in == null) {
        throw new IllegalStateException(FILE_NAME + " is missing from the program's archive");
      }
      return new String(in.readAllBytes(), StandardCharsets.UTF_8);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /** The settings. */
  public static Settings load() {
    return SettingsFile.parse(FILE_NAME, text()).orThrow();
  }
}
