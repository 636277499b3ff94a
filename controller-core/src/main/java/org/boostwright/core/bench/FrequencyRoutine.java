package org.boostwright.core.bench;

import org.jspecify.annotations.Nullable;

/** Three duties inside the expected window at frequencies from 15 to 60 Hz. */
final class FrequencyRoutine implements Routine {
  private static final double[] HZ = {17.0, 23.0, 31.0, 41.0, 53.0};
  private static final double[] PLACES = {0.15, 0.5, 0.85};

  private int at;

  @Override
  public BenchStep step() {
    return BenchStep.FREQUENCY;
  }

  @Override
  public @Nullable Action next(BenchRecord record, Outcome last) {
    if (last.reading() != null) {
      record.frequency.add(last.driven());
    }
    while (at < HZ.length * PLACES.length) {
      double hz = HZ[at / PLACES.length];
      double place = PLACES[at % PLACES.length];
      at++;
      double low = Edges.seconds(record.edges, true) * hz;
      double high = 1.0 - Edges.seconds(record.edges, false) * hz;
      if (high - low > 0.1) {
        return Action.settle(hz, low + place * (high - low), 0.3);
      }
      if (Double.isNaN(low) || Double.isNaN(high)) {
        return Action.settle(hz, 0.2 + 0.6 * place, 0.3);
      }
    }
    return null;
  }
}
