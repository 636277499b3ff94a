package org.boostwright.rig.cli;

import java.nio.file.Path;
import java.util.Optional;
import picocli.CommandLine.Option;

/** Where a run is kept. */
final class OutOption {
  @Option(
      names = "--out",
      paramLabel = "FOLDER",
      description =
          "Folder to keep the run in. Default: runs/ and the command's name and next number.")
  Optional<Path> folder = Optional.empty();
}
