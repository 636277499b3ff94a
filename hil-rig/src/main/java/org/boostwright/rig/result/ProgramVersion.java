package org.boostwright.rig.result;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.util.Properties;

/** The program's version, filled in by the build. */
public final class ProgramVersion {
  private static final String RESOURCE = "/org/boostwright/rig/version.properties";

  private ProgramVersion() {}

  /** For example {@code 0.1.0}; {@code unbuilt} where the build has not filled it in. */
  public static String get() {
    Properties properties = new Properties();
    try (InputStream in = ProgramVersion.class.getResourceAsStream(RESOURCE)) {
      if (in != null) {
        properties.load(in);
      }
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
    String version = properties.getProperty("version", "unbuilt");
    return version.startsWith("$") ? "unbuilt" : version;
  }
}
