package org.boostwright.rig.kernel;

import java.util.List;
import org.boostwright.rig.link.CaseOutcome;

/**
 * What came of a run.
 *
 * @param outcomes every case
 * @param pwmApplies states the kernel was told for the PWM channel while driving
 * @param pwmUpdates of these, changes of duty of a running channel
 * @param pwmWrongs what must not be in that log, in words
 * @param recordings what the recordings show
 */
public record KernelBenchReport(
    List<CaseOutcome> outcomes,
    long pwmApplies,
    long pwmUpdates,
    List<String> pwmWrongs,
    List<Recording> recordings) {

  /**
   * One recording of the program in the guest.
   *
   * @param name file name
   * @param rows whole rows
   * @param differing rows whose replay on this machine differs in a bit; -1 when it could not be
   *     replayed
   */
  public record Recording(String name, long rows, long differing) {}

  /** Copies the lists. */
  public KernelBenchReport {
    outcomes = List.copyOf(outcomes);
    pwmWrongs = List.copyOf(pwmWrongs);
    recordings = List.copyOf(recordings);
  }
}
