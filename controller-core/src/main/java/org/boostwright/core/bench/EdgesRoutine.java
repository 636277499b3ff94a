package org.boostwright.core.bench;

import org.boostwright.core.bench.model.EdgeBracket;
import org.jspecify.annotations.Nullable;

/**
 * Both edges of the window at two frequencies that share no small multiple with common sampling
 * rates. The second frequency starts from what the first found and so shows whether the delays
 * belong to the valve or to the frequency.
 */
final class EdgesRoutine implements Routine {
  static final double FIRST_HZ = 23.0;
  static final double SECOND_HZ = 41.0;
  private static final double FIRST_SLACK_SECONDS = 0.002;
  private static final double SECOND_SLACK_SECONDS = 0.00015;
  private static final double RESOLUTION_SECONDS = 0.0001;
  private static final double ON_GUESS_SECONDS = 0.004;
  private static final double OFF_GUESS_SECONDS = 0.008;

  private int phase = -1;
  private @Nullable EdgeSearch search;

  @Override
  public BenchStep step() {
    return BenchStep.EDGES;
  }

  @Override
  public @Nullable Action next(BenchRecord record, Outcome last) {
    Outcome outcome = last;
    while (true) {
      if (search != null) {
        Action action = search.next(outcome);
        if (action != null) {
          return action;
        }
        EdgeBracket found = search.bracket();
        if (found != null) {
          record.edges.add(found);
        }
      }
      search = start(record, ++phase);
      outcome = Outcome.NONE;
      if (search == null) {
        return null;
      }
    }
  }

  private static @Nullable EdgeSearch start(BenchRecord record, int phase) {
    return switch (phase) {
      case 0 -> first(true, guess(record.ventDeadSeconds, ON_GUESS_SECONDS));
      case 1 -> first(false, guess(record.fillDeadSeconds, OFF_GUESS_SECONDS));
      case 2 -> second(record, true);
      case 3 -> second(record, false);
      default -> null;
    };
  }

  private static double guess(double measured, double otherwise) {
    return measured >= 0.0 && measured < 0.03 ? measured : otherwise;
  }

  private static EdgeSearch first(boolean onEdge, double guess) {
    return new EdgeSearch(FIRST_HZ, onEdge, guess, FIRST_SLACK_SECONDS, RESOLUTION_SECONDS);
  }

  private static @Nullable EdgeSearch second(BenchRecord record, boolean onEdge) {
    for (EdgeBracket edge : record.edges) {
      if (edge.onEdge() == onEdge) {
        return new EdgeSearch(
            SECOND_HZ, onEdge, edge.middleSeconds(), SECOND_SLACK_SECONDS, RESOLUTION_SECONDS);
      }
    }
    return null;
  }
}
