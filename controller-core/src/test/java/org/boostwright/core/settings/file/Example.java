package org.boostwright.core.settings.file;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import org.boostwright.core.settings.Settings;

/** The documented example and small files for tests. */
final class Example {
  /** A file that names only the sensors. */
  static final String SENSORS_ONLY =
      """
      [sensors.map]
      volts = [0.5, 4.5]
      pressure_kpa_abs = [20, 300]
      [sensors.throttle]
      volts = [0.5, 4.5]
      throttle_pct = [0, 100]
      """;

  private Example() {}

  static Path path() {
    return Path.of(System.getProperty("boostwright.root", ".."), "docs", "project-car.toml");
  }

  static byte[] bytes() {
    try {
      return Files.readAllBytes(path());
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  static Settings settings() {
    return SettingsFile.parse("project-car.toml", bytes()).orThrow();
  }

  /** A full settings file that stays as it is when the documented example is tuned. */
  static String full() {
    try (InputStream in = Example.class.getResourceAsStream("full.toml")) {
      return new String(in.readAllBytes(), StandardCharsets.UTF_8);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  static LoadResult parse(String text) {
    return SettingsFile.parse("car.toml", text);
  }
}
