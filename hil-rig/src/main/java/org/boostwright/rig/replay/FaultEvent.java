package org.boostwright.rig.replay;

import org.boostwright.core.monitor.FaultCode;
import org.boostwright.core.record.LogFormat;

/**
 * One fault or finding from its confirmation to its end.
 *
 * @param code what was confirmed
 * @param seconds when, since the first row of the log, s
 * @param clearedSeconds when it was taken back, s; NaN when it was still there at the end
 * @param line line of the log that was the newest then
 * @param frame freeze frame: what was true in that tick, columns as in {@link LogFormat}
 */
public record FaultEvent(
    FaultCode code, double seconds, double clearedSeconds, int line, double[] frame) {

  /** Takes its own copy of the frame. */
  public FaultEvent {
    frame = frame.clone();
  }

  /** A copy of the frame. */
  @Override
  public double[] frame() {
    return frame.clone();
  }

  FaultEvent cleared(double when) {
    return new FaultEvent(code, seconds, when, line, frame);
  }

  /** Manifold pressure in use when it was confirmed, kPa absolute. */
  public double mapKpaAbs() {
    return frame[LogFormat.MAP];
  }

  /** Throttle in use when it was confirmed, percent. */
  public double throttlePct() {
    return frame[LogFormat.column("throttle_pct")];
  }

  /** Engine speed in use when it was confirmed, 1/min. */
  public double engineRpm() {
    return frame[LogFormat.column("engine_rpm")];
  }
}
