package org.boostwright.rig.bench;

import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.boostwright.core.bench.BenchRecord;
import org.boostwright.core.bench.BenchStep;
import org.boostwright.core.bench.Reading;
import org.boostwright.core.bench.model.GaugeReading;
import org.boostwright.core.bench.model.ReadingsPosterior;
import org.boostwright.rig.plant.BenchValve;

/** Takes given gauge readings through the same reasoning as readings typed one by one. */
public final class ReadingsBench {
  private static final double AMBIENT_KPA = BenchValve.STANDARD_AMBIENT_KPA;
  private static final double LEAST_SUPPLY_KPA = 5.0;

  private ReadingsBench() {}

  /** Supply as the rows at 0 % duty give it, kPa gauge; NaN when there are none. */
  public static double supplyKpaGauge(List<ReadingsFile.Row> rows) {
    double sum = 0.0;
    int count = 0;
    for (ReadingsFile.Row row : rows) {
      if (row.dutyFraction() == 0.0) {
        sum += row.kpaGauge();
        count++;
      }
    }
    return sum / count;
  }

  /** The frequency most rows work the valve at, Hz; NaN when none does. */
  public static double mainHz(List<ReadingsFile.Row> rows) {
    Map<Double, Integer> counts = new TreeMap<>();
    for (ReadingsFile.Row row : rows) {
      if (row.dutyFraction() > 0.0 && row.dutyFraction() < 1.0) {
        counts.merge(row.frequencyHz(), 1, Integer::sum);
      }
    }
    double main = Double.NaN;
    int most = 0;
    for (Map.Entry<Double, Integer> entry : counts.entrySet()) {
      if (entry.getValue() >= most) {
        most = entry.getValue();
        main = entry.getKey();
      }
    }
    return main;
  }

  /**
   * What the rows tell.
   *
   * @param rows readings with at least one at 0 % duty
   */
  public static BenchRecord record(List<ReadingsFile.Row> rows) {
    BenchRecord record = new BenchRecord();
    record.ambientKpaAbs = AMBIENT_KPA;
    double supply = supplyKpaGauge(rows);
    record.rest = reading(rows.get(0).frequencyHz(), 0.0, supply);
    record.completed.add(BenchStep.REST);
    for (ReadingsFile.Row row : rows) {
      if (row.dutyFraction() == 1.0) {
        record.energised = reading(row.frequencyHz(), 1.0, row.kpaGauge());
        record.completed.add(BenchStep.POLARITY);
      }
    }
    if (!(supply > LEAST_SUPPLY_KPA)) {
      return record;
    }
    ReadingsPosterior posterior = new ReadingsPosterior(AMBIENT_KPA + supply, AMBIENT_KPA);
    for (ReadingsFile.Row row : rows) {
      if (row.dutyFraction() > 0.0 && row.dutyFraction() < 1.0) {
        record.sweepUp.add(reading(row.frequencyHz(), row.dutyFraction(), row.kpaGauge()));
        posterior.take(
            GaugeReading.working(
                row.frequencyHz(), row.dutyFraction(), row.kpaGauge(), row.resolutionKpa()));
      }
    }
    if (posterior.count() > 0) {
      record.fit = posterior.result();
      record.completed.add(BenchStep.EDGES);
    }
    return record;
  }

  private static Reading reading(double hz, double duty, double kpaGauge) {
    double abs = AMBIENT_KPA + kpaGauge;
    return new Reading(hz, duty, true, 0.0, abs, 0.0, abs, abs, 0.0, 0.0);
  }
}
