package org.boostwright.rig.link;

import java.util.List;

/**
 * What a rig run measured.
 *
 * @param connected a controller answered and speaks the same protocol
 * @param health words about the wires
 * @param sameSettings both ends work with the same settings
 * @param realTime the rig's own ticks had a place before other programs
 * @param frames controller frames received
 * @param brokenFrames frames whose duty was no share, or above 0 in a rest state
 * @param missedAtRig controller frames that never came, before any fault was injected
 * @param missedAtController rig frames that never came, as the controller's program says at its
 *     end; NaN when it was not asked, or faults were injected on the line
 * @param roundTripP50Millis half of all round trips were shorter, ms
 * @param roundTripP99Millis 99 % of all round trips were shorter, ms
 * @param tickP999Millis 99.9 % of all tick intervals were shorter, ms
 * @param tickMaxMillis longest tick interval before any fault was injected, ms
 * @param rigLateMaxMillis latest tick of the rig itself before any fault was injected, ms
 * @param lateTicks late ticks the controller counted before any fault was injected
 * @param driveFaults faults reported while driving, before any was injected, as bits
 * @param driveHighestDuty highest duty while driving, 0 to 1
 * @param startSeconds from starting the program to its first frame, s; NaN when not started here
 * @param restartSeconds the same after it was killed, s; NaN when it was not
 * @param restartAtRest after it was killed it came up at rest with the engine running
 * @param rolledOver sequence numbers and time stamps have rolled over
 * @param outcomes fault cases
 */
public record RigReport(
    boolean connected,
    String health,
    boolean sameSettings,
    boolean realTime,
    long frames,
    long brokenFrames,
    long missedAtRig,
    double missedAtController,
    double roundTripP50Millis,
    double roundTripP99Millis,
    double tickP999Millis,
    double tickMaxMillis,
    double rigLateMaxMillis,
    long lateTicks,
    long driveFaults,
    double driveHighestDuty,
    double startSeconds,
    double restartSeconds,
    boolean restartAtRest,
    boolean rolledOver,
    List<CaseOutcome> outcomes) {

  /** The same with what the controller's program said it missed. */
  RigReport missedAtController(double missed) {
    return new RigReport(
        connected,
        health,
        sameSettings,
        realTime,
        frames,
        brokenFrames,
        missedAtRig,
        missed,
        roundTripP50Millis,
        roundTripP99Millis,
        tickP999Millis,
        tickMaxMillis,
        rigLateMaxMillis,
        lateTicks,
        driveFaults,
        driveHighestDuty,
        startSeconds,
        restartSeconds,
        restartAtRest,
        rolledOver,
        outcomes);
  }
}
