package org.boostwright.rig.upkeep;

import java.time.Duration;
import java.time.Instant;
import java.time.format.DateTimeParseException;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import org.boostwright.core.bench.proof.ProofMeasurement;
import org.boostwright.core.ladder.Change;
import org.boostwright.core.ladder.Entry;
import org.boostwright.core.ladder.Ladder;
import org.boostwright.core.ladder.Rung;

/**
 * How one number of the bench moved from proof to proof, since the part was last replaced.
 *
 * @param wear what it is
 * @param points oldest first
 */
public record Drift(Wear wear, List<Point> points) {
  private static final double DAYS_PER_YEAR = 365.25;
  private static final int TREND_POINTS = 3;
  private static final double TREND_YEARS = 30.0 / DAYS_PER_YEAR;

  /**
   * One proof.
   *
   * @param date when it was signed
   * @param value measured, in the unit of the wear
   * @param low lower end of its 95 % interval; the value where there is none
   * @param high upper end
   */
  public record Point(Instant date, double value, double low, double high) {}

  /** Copies the list. */
  public Drift {
    points = List.copyOf(points);
  }

  /**
   * The series of one number out of a ladder's signed bench proofs.
   *
   * @param practice the virtual car's, or the car's
   */
  public static Drift of(Wear wear, Ladder ladder, boolean practice) {
    List<Point> points = new ArrayList<>();
    for (Entry entry : ladder.entries()) {
      Change change = entry.change();
      if (entry.practice() != practice) {
        continue;
      }
      if (change != null && wear.anew(change)) {
        points.clear();
      } else if (entry.rung() == Rung.BENCH && entry.kind() == Entry.Kind.PASSED) {
        add(points, wear, entry);
      }
    }
    return new Drift(wear, points);
  }

  private static void add(List<Point> points, Wear wear, Entry entry) {
    Map<String, Double> values =
        entry.measurements().stream()
            .collect(Collectors.toMap(ProofMeasurement::id, ProofMeasurement::value, (a, b) -> b));
    double value = values.getOrDefault(wear.proofId(), Double.NaN);
    if (!Double.isFinite(value)) {
      return;
    }
    try {
      points.add(
          new Point(
              Instant.parse(entry.date()),
              value,
              values.getOrDefault(wear.proofId().replace("_ms", "_low95_ms"), value),
              values.getOrDefault(wear.proofId().replace("_ms", "_high95_ms"), value)));
    } catch (DateTimeParseException e) {
      // A number without a date is on no trend.
    }
  }

  /** Newest less first; NaN with fewer than two proofs. */
  public double change() {
    return points.size() < 2 ? Double.NaN : newest().value() - points.get(0).value();
  }

  /** How far it may move before it is named; NaN without a proof. */
  public double threshold() {
    return points.isEmpty() ? Double.NaN : wear.threshold(points.get(0).value());
  }

  private Point newest() {
    return points.get(points.size() - 1);
  }

  /** Beyond the threshold, and by more than the two measurements could be wrong. */
  public boolean beyond() {
    if (!(Math.abs(change()) > threshold()) || !wear.worse(change())) {
      return false;
    }
    Point first = points.get(0);
    return newest().low() > first.high() || newest().high() < first.low();
  }

  /**
   * Slope of the least-squares line through the proofs, per year; NaN with fewer than three or
   * within a month.
   */
  public double perYear() {
    if (points.size() < TREND_POINTS) {
      return Double.NaN;
    }
    Instant start = points.get(0).date();
    double meanX = 0.0;
    double meanY = 0.0;
    double last = Double.NEGATIVE_INFINITY;
    double first = Double.POSITIVE_INFINITY;
    for (Point p : points) {
      double x = years(start, p);
      meanX += x / points.size();
      meanY += p.value() / points.size();
      last = Math.max(last, x);
      first = Math.min(first, x);
    }
    double across = 0.0;
    double along = 0.0;
    for (Point p : points) {
      double x = years(start, p) - meanX;
      across += x * (p.value() - meanY);
      along += x * x;
    }
    return last - first >= TREND_YEARS ? across / along : Double.NaN;
  }

  private static double years(Instant start, Point p) {
    return Duration.between(start, p.date()).toSeconds() / (86_400.0 * DAYS_PER_YEAR);
  }

  /** Years until the trend reaches the threshold; NaN without a trend or when it leads away. */
  public double yearsLeft() {
    double slope = perYear();
    double room = threshold() - Math.abs(change());
    boolean leads = slope * change() > 0.0 && wear.worse(slope) && room > 0.0;
    return leads ? room / Math.abs(slope) : Double.NaN;
  }
}
