package org.boostwright.rig.link;

import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import org.boostwright.core.settings.Settings;

/**
 * What a rig run is to be.
 *
 * @param port serial port of the controller; empty to start the controller's program on a cable in
 *     software
 * @param baud speed of the port
 * @param program command line that starts the controller's program, without its options
 * @param settingsFile settings both ends work with
 * @param settings the same, read
 * @param settingsDigest digest of these settings, hexadecimal
 * @param driveSeconds ordinary driving before the faults, s
 * @param cases ids of the fault cases; empty for none
 * @param trace rows of a recorded trace instead of the virtual car; empty for the car
 * @param seed seed of noise and faults
 * @param folder for what the programs say and leave behind
 */
public record RigPlan(
    Optional<String> port,
    int baud,
    List<String> program,
    Path settingsFile,
    Settings settings,
    String settingsDigest,
    double driveSeconds,
    List<String> cases,
    List<double[]> trace,
    long seed,
    Path folder) {

  /** Copies the lists. */
  public RigPlan {
    program = List.copyOf(program);
    cases = List.copyOf(cases);
    trace = List.copyOf(trace);
  }
}
