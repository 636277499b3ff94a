package org.boostwright.rig.cli;

import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import org.boostwright.rig.result.Result;

/**
 * What a command hands back: its result, and the run folder it wants when it leaves files behind.
 *
 * @param result the result, without file names
 * @param run the run to keep; empty when the command leaves nothing behind
 */
record Outcome(Result result, Optional<Run> run) {

  /** A result that is only printed. */
  static Outcome printed(Result result) {
    return new Outcome(result, Optional.empty());
  }

  /** A result that is kept in a run folder with its report and these other files. */
  static Outcome kept(Result result, Optional<Path> folder, Extra... extras) {
    return new Outcome(result, Optional.of(new Run(folder, List.of(extras))));
  }

  /**
   * A run folder to be made.
   *
   * @param folder the folder the person asked for; empty for the next free number below runs/
   * @param extras files besides result.json and report.html
   */
  record Run(Optional<Path> folder, List<Extra> extras) {}

  /**
   * One more file of a run.
   *
   * @param kind name in the result's list of files
   * @param name file name
   * @param writer writes it
   */
  record Extra(String kind, String name, Writer writer) {}

  /** Writes one file. */
  interface Writer {
    void write(Path file) throws IOException;
  }
}
