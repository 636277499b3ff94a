package org.boostwright.core.settings.file;

import java.io.IOException;
import java.nio.file.Path;

/** The few things a disk is asked to do, one by one, so that a test can cut the power between. */
interface Disk {
  /** Makes a new empty file beside another and returns it. */
  Path createBeside(Path file) throws IOException;

  /** Writes the content of a new file. */
  void write(Path file, byte[] content) throws IOException;

  /** Does not return before the content of a file is on the medium. */
  void force(Path file) throws IOException;

  /** Gives a file another's name, whose old content goes with it, in one step. */
  void rename(Path from, Path to) throws IOException;

  /** Does not return before the names in a folder are on the medium. */
  void forceFolder(Path folder) throws IOException;

  /** Removes a file if it is there. */
  void remove(Path file) throws IOException;
}
