package org.boostwright.rig.cli;

import picocli.CommandLine.Option;

/** How a command answers; on every command. */
final class OutputOptions {
  @Option(
      names = "--json",
      description = "Print one JSON object instead of text (fields: docs/json.md).")
  boolean json;

  @Option(
      names = "--quiet",
      description = "No progress and no details, only the verdict in one line.")
  boolean quiet;
}
