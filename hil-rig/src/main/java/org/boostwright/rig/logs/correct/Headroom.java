package org.boostwright.rig.logs.correct;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.boostwright.core.table.Table2d;

/**
 * Wherever a log has been in control, settled or not: how far base duty may rise before pressure is
 * predicted more than 5 kPa over target. A place that is over it already allows no rise.
 */
final class Headroom {
  private static final double RPM = 100.0;
  private static final double PCT = 5.0;

  private record Key(long rpm, long pct) {}

  private record Place(CornerWeights corners, double room) {}

  private final Map<Key, Place> places = new LinkedHashMap<>();

  static Headroom of(Table2d table, List<Evidence> rows) {
    Headroom headroom = new Headroom();
    for (Evidence row : rows) {
      Key key = new Key(Math.round(row.rpm() / RPM), Math.round(row.demandPct() / PCT));
      Place place =
          new Place(
              CornerWeights.at(table, row.demandPct(), row.rpm()), Math.max(0.0, row.room()));
      headroom.places.merge(key, place, (a, b) -> b.room() < a.room() ? b : a);
    }
    return headroom;
  }

  void limit(CorrectionProblem problem) {
    places.values().forEach(place -> problem.stayBelow(place.corners(), place.room()));
  }

  /** A change of the table that stands at the limit at a place where this cell counts. */
  boolean binds(int cell, double[] changes) {
    for (Place place : places.values()) {
      double rise = 0.0;
      double weight = 0.0;
      for (int i = 0; i < place.corners().cells().length; i++) {
        int at = place.corners().cells()[i];
        rise += place.corners().weights()[i] * changes[at];
        weight += at == cell ? place.corners().weights()[i] : 0.0;
      }
      if (weight > 0.2 && rise >= place.room() - 1e-4) {
        return true;
      }
    }
    return false;
  }
}
