package org.boostwright.rig.upkeep;

import java.util.EnumSet;
import java.util.Locale;
import java.util.Set;
import org.boostwright.core.ladder.Change;
import org.boostwright.rig.result.Units;

/**
 * What is compared from bench to bench. The thresholds are common practice and have no source: a
 * fifth of a delay is a coil or a spool that begins to stick, a twentieth of the cracking pressure
 * a spring that has set or a rod that was turned.
 */
public enum Wear {
  ON_DELAY(
      "valve.t_on_ms",
      "delay to switch on",
      Units.MILLISECONDS,
      0.2,
      0.5,
      Change.VALVE,
      Change.WIRING),
  OFF_DELAY(
      "valve.t_off_ms",
      "delay to switch off",
      Units.MILLISECONDS,
      0.2,
      0.5,
      Change.VALVE,
      Change.WIRING),
  LEAK(
      "bench.leak_kpa_per_s",
      "leak of the line",
      Units.KPA_PER_SECOND,
      1.0,
      2.0,
      Change.VALVE,
      Change.HOSE,
      Change.ACTUATOR),
  CRACK(
      "actuator.crack_kpa",
      "pressure at which the gate opens",
      Units.KPA_GAUGE,
      0.05,
      3.0,
      Change.ACTUATOR);

  private final String proofId;
  private final String words;
  private final String unit;
  private final double share;
  private final double least;
  private final Set<Change> anew;

  Wear(String proofId, String words, String unit, double share, double least, Change... anew) {
    this.proofId = proofId;
    this.words = words;
    this.unit = unit;
    this.share = share;
    this.least = least;
    this.anew = EnumSet.copyOf(Set.of(anew));
  }

  /** As in measurement ids and codes. */
  public String id() {
    return name().toLowerCase(Locale.ROOT);
  }

  /** Name of the number in a bench proof. */
  public String proofId() {
    return proofId;
  }

  /** What it is. */
  public String words() {
    return words;
  }

  /** Its unit, see {@link Units}. */
  public String unit() {
    return unit;
  }

  /** How far it may move from the first value before it is named, in its unit. */
  public double threshold(double first) {
    return Math.max(least, share * Math.abs(first));
  }

  /** Whether work begins a new series: another part is not a worn one. */
  public boolean anew(Change change) {
    return anew.contains(change);
  }

  /** Only more of a leak is wear; the others may move either way. */
  boolean worse(double change) {
    return this != LEAK || change > 0.0;
  }
}
