package org.boostwright.core.bench;

import java.util.List;
import org.boostwright.core.bench.model.EdgeBracket;

/** Looks at the edges a session found. */
final class Edges {
  private Edges() {}

  /** Mean of the brackets' middles, s; NaN when that edge was not found. */
  static double seconds(List<EdgeBracket> edges, boolean onEdge) {
    double sum = 0.0;
    int count = 0;
    for (EdgeBracket edge : edges) {
      if (edge.onEdge() == onEdge) {
        sum += edge.middleSeconds();
        count++;
      }
    }
    return sum / count;
  }

  /** True when the duty lies inside the window by at least the brackets' widths. */
  static boolean inside(List<EdgeBracket> edges, double frequencyHz, double dutyFraction) {
    double pulse = dutyFraction / frequencyHz;
    double pause = (1.0 - dutyFraction) / frequencyHz;
    boolean seenOn = false;
    boolean seenOff = false;
    for (EdgeBracket edge : edges) {
      double time = edge.onEdge() ? pulse : pause;
      if (!(time > edge.movedSeconds())) {
        return false;
      }
      seenOn |= edge.onEdge();
      seenOff |= !edge.onEdge();
    }
    return seenOn && seenOff;
  }
}
