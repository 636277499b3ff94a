package org.boostwright.rig.replay;

import java.util.List;
import java.util.Map;
import java.util.Set;
import org.boostwright.core.monitor.FaultCode;
import org.boostwright.core.settings.Settings;
import org.boostwright.core.state.SafetyState;
import org.boostwright.rig.replay.csv.RecordedLog;

/**
 * What a replay showed.
 *
 * @param log the log, with its repairs, pauses and each signal's resolution and refresh
 * @param settings the settings it was replayed with
 * @param notes what the recording cannot show, in words
 * @param channels what was fed
 * @param rows rows of the log that were replayed
 * @param skippedRows rows before every signal had been read once, at the start and after pauses
 * @param restarts how often the recording started again after a pause
 * @param ticks controller ticks
 * @param stateSeconds time in each state, s
 * @param faults confirmed faults in order of time
 * @param findings findings that change no state, in order of time
 * @param overboosts overboosts in order of time
 * @param judged watches that judged at least one sample; the others were not tested
 * @param outsideTable table lookups outside the axes
 * @param peakMapKpaAbs highest manifold pressure, kPa absolute
 * @param peakDutyFraction highest duty, 0 to 1
 * @param splices what became of the spliced faults
 * @param series for plots
 */
public record TraceResult(
    RecordedLog log,
    Settings settings,
    List<String> notes,
    List<FedChannel> channels,
    int rows,
    int skippedRows,
    int restarts,
    long ticks,
    Map<SafetyState, Double> stateSeconds,
    List<FaultEvent> faults,
    List<FaultEvent> findings,
    List<OverboostEvent> overboosts,
    Set<FaultCode> judged,
    long outsideTable,
    double peakMapKpaAbs,
    double peakDutyFraction,
    List<SplicedFault> splices,
    TraceSeries series) {

  /** How often a fault was confirmed. */
  public long count(FaultCode code) {
    return faults.stream().filter(event -> event.code() == code).count();
  }

  /** Time in a state, s. */
  public double secondsIn(SafetyState state) {
    return stateSeconds.getOrDefault(state, 0.0);
  }

  /** False when a spliced fault changed nothing: the run then proves nothing about it. */
  public boolean everySpliceTookEffect() {
    return splices.stream().allMatch(SplicedFault::tookEffect);
  }
}
