package org.boostwright.rig.logs.correct;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.boostwright.core.Controller;

/**
 * Rows of the same neighbourhood and visit together: 100 1/min by 5 % demand.
 *
 * @param visit number of the visit
 * @param demandPct mean demand, percent
 * @param rpm mean engine speed, 1/min
 * @param wanted mean change wanted, fraction
 * @param shortKpa mean of target less pressure, kPa
 * @param seconds time in it, s
 * @param mayRaise none of its rows forbids a rise
 */
record EvidenceBin(
    int visit,
    double demandPct,
    double rpm,
    double wanted,
    double shortKpa,
    double seconds,
    boolean mayRaise) {

  private static final double RPM = 100.0;
  private static final double PCT = 5.0;
  private static final double TICK_SECONDS = Controller.TICK_NANOS * 1e-9;

  private record Key(int visit, long rpm, long pct) {}

  /** The settled rows in bins. */
  static List<EvidenceBin> of(List<Evidence> rows) {
    Map<Key, List<Evidence>> groups = new LinkedHashMap<>();
    for (Evidence row : rows) {
      if (row.still()) {
        Key key =
            new Key(row.visit(), Math.round(row.rpm() / RPM), Math.round(row.demandPct() / PCT));
        groups.computeIfAbsent(key, k -> new ArrayList<>()).add(row);
      }
    }
    List<EvidenceBin> bins = new ArrayList<>();
    groups.values().forEach(group -> bins.add(mean(group)));
    return bins;
  }

  private static EvidenceBin mean(List<Evidence> group) {
    double demand = 0.0;
    double rpm = 0.0;
    double wanted = 0.0;
    double shortKpa = 0.0;
    boolean mayRaise = true;
    for (Evidence row : group) {
      demand += row.demandPct();
      rpm += row.rpm();
      wanted += row.wanted();
      shortKpa += row.shortKpa();
      mayRaise &= row.mayRaise();
    }
    int n = group.size();
    return new EvidenceBin(
        group.get(0).visit(),
        demand / n,
        rpm / n,
        wanted / n,
        shortKpa / n,
        n * TICK_SECONDS,
        mayRaise);
  }
}
