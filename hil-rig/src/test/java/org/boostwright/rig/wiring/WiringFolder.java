package org.boostwright.rig.wiring;

import java.nio.file.Path;

/** Where the committed files are. */
public final class WiringFolder {
  private WiringFolder() {}

  /** The project's root. */
  public static Path root() {
    return Path.of(System.getProperty("boostwright.root", ".."));
  }

  static Path wiring() {
    return root().resolve("wiring");
  }
}
