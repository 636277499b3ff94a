package org.boostwright.rig.replay;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.EnumSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.boostwright.core.Controller;
import org.boostwright.core.Outputs;
import org.boostwright.core.monitor.FaultCode;
import org.boostwright.core.state.SafetyState;

/** Watches the outputs of a replay tick by tick and keeps what people want to know. */
final class TraceObserver {
  private static final FaultCode[] CODES = FaultCode.values();
  private static final double TICK_SECONDS = Controller.TICK_NANOS * 1e-9;

  private final long[] stateTicks = new long[SafetyState.values().length];
  private final List<FaultEvent> events = new ArrayList<>();
  private final List<OverboostEvent> overboosts = new ArrayList<>();
  private final Set<FaultCode> judged = EnumSet.noneOf(FaultCode.class);
  private final int[] openEvent = new int[FaultCode.COUNT];
  private final TraceSeries series;
  private long active;
  private long ticks;
  private long outsideTable;
  private double peakMapKpaAbs;
  private double peakDutyFraction;

  TraceObserver(TraceSeries series) {
    this.series = series;
  }

  void tick(double seconds, int line, Outputs out, Controller controller) {
    ticks++;
    stateTicks[out.state.ordinal()]++;
    peakDutyFraction = Math.max(peakDutyFraction, out.dutyFraction);
    if (out.mapKpaAbs > peakMapKpaAbs) {
      peakMapKpaAbs = out.mapKpaAbs;
    }
    series.add(seconds, out);
    long now = out.activeFaults | out.findings;
    // A fault that was cleared and confirmed again in one tick shows only as newly confirmed.
    long raised = (now & ~active) | (controller.faults().newlyConfirmed() & now);
    long changed = raised | (active & ~now);
    for (int i = 0; changed != 0 && i < CODES.length; i++) {
      FaultCode code = CODES[i];
      if ((changed & code.bit()) == 0) {
        continue;
      }
      if ((active & code.bit()) != 0) {
        close(i, seconds);
      }
      if ((raised & code.bit()) != 0) {
        openEvent[i] = events.size();
        double[] frame = controller.faults().frame(code);
        events.add(new FaultEvent(code, seconds, Double.NaN, line, frame));
        if (code == FaultCode.OVERBOOST) {
          overboosts.add(new OverboostEvent(seconds, line, out.mapKpaAbs));
        }
      }
    }
    active = now;
    trackOverboost(out);
  }

  private void close(int fault, double seconds) {
    events.set(openEvent[fault], events.get(openEvent[fault]).cleared(seconds));
  }

  private void trackOverboost(Outputs out) {
    if ((active & FaultCode.OVERBOOST.bit()) == 0) {
      return;
    }
    int last = overboosts.size() - 1;
    OverboostEvent event = overboosts.get(last);
    if (out.mapKpaAbs > event.peakKpaAbs()) {
      overboosts.set(last, new OverboostEvent(event.seconds(), event.line(), out.mapKpaAbs));
    }
  }

  /** A controller's run ends; the next one knows nothing of it. */
  void endOfRun(double seconds, Outputs out, Controller controller, boolean last) {
    for (FaultCode code : CODES) {
      if ((controller.faults().ran() & code.bit()) != 0) {
        judged.add(code);
      }
      if (!last && (active & code.bit()) != 0) {
        close(code.ordinal(), seconds);
      }
    }
    outsideTable += out.outsideTable;
    active = 0L;
  }

  long ticks() {
    return ticks;
  }

  Map<SafetyState, Double> stateSeconds() {
    Map<SafetyState, Double> seconds = new EnumMap<>(SafetyState.class);
    for (SafetyState state : SafetyState.values()) {
      seconds.put(state, stateTicks[state.ordinal()] * TICK_SECONDS);
    }
    return seconds;
  }

  /** Faults (which stand among the active ones) or findings (which do not). */
  List<FaultEvent> events(boolean findings) {
    return events.stream().filter(e -> isFinding(e.code()) == findings).toList();
  }

  private static boolean isFinding(FaultCode code) {
    return code.reaction() == org.boostwright.core.monitor.Reaction.REPORT;
  }

  List<OverboostEvent> overboosts() {
    return List.copyOf(overboosts);
  }

  Set<FaultCode> judged() {
    return judged;
  }

  long outsideTable() {
    return outsideTable;
  }

  double peakMapKpaAbs() {
    return peakMapKpaAbs;
  }

  double peakDutyFraction() {
    return peakDutyFraction;
  }

  TraceSeries series() {
    return series;
  }
}
