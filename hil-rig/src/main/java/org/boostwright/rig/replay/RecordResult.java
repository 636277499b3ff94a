package org.boostwright.rig.replay;

import java.util.List;
import java.util.Map;
import org.boostwright.core.state.SafetyState;
import org.jspecify.annotations.Nullable;

/**
 * What replaying a recorded run showed.
 *
 * @param meta text the run had been marked with: format version, settings digest, seed
 * @param rows rows replayed
 * @param incompleteRows rows cut short, as a power cut leaves them; left out
 * @param missingTicks ticks the recorder had dropped: from the first on, equality cannot be
 *     expected
 * @param differingRows rows in which an output differs in a bit from the recorded one
 * @param firstDifference the first of them; null when there is none
 * @param stateSeconds time in each state, s
 * @param faults confirmed faults in order of time
 * @param findings findings that change no state, in order of time
 * @param overboosts overboosts in order of time
 * @param series for plots
 */
public record RecordResult(
    String meta,
    int rows,
    int incompleteRows,
    long missingTicks,
    int differingRows,
    @Nullable Difference firstDifference,
    Map<SafetyState, Double> stateSeconds,
    List<FaultEvent> faults,
    List<FaultEvent> findings,
    List<OverboostEvent> overboosts,
    TraceSeries series) {

  /**
   * An output that differs.
   *
   * @param line line of the row in the file, from 1
   * @param column name of the column
   * @param recorded recorded number
   * @param replayed replayed number
   */
  public record Difference(int line, String column, double recorded, double replayed) {}

  /** True when every output of every row is the recorded one, bit for bit. */
  public boolean bitEqual() {
    return differingRows == 0;
  }
}
