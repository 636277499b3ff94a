package org.boostwright.rig.upkeep;

import java.time.Duration;
import java.time.Instant;
import java.time.format.DateTimeParseException;
import java.util.List;
import org.boostwright.core.ladder.Entry;
import org.boostwright.core.ladder.Ladder;
import org.boostwright.core.ladder.Rung;

/** What is looked at once a year. Common practice, no source. */
public final class Yearly {
  /** What a year is, days. */
  public static final long DAYS = 365L;

  /** By hand, engine off and cold, in this order. */
  public static final List<String> LIST =
      List.of(
          "Every hose between compressor, valve, actuator and sensor: soft, cracked, chafed, clamped"
              + " at both ends. Replace what is in doubt; rubber near the turbo every two years.",
          "Actuator rod and gate lever: move by hand, no play, clip on, gate shuts fully.",
          "Vent of the valve: not blocked, its filter clean.",
          "Plugs and wires near the turbo and the valve: dry, not brown, not chafed; coil fuse of"
              + " the stated size.",
          "Spring-only switch: open it; the live page says 'spring only' and the valve does not"
              + " click.",
          "Permit input and the device behind it: make it trip, and the lamp blinks 8.",
          "Lamp: lights with the key on.",
          "Pressure sensor against ambient: 'calibrate' with the engine off.",
          "Heartbeat, engine off: end the program by 'kill -9' while the valve clicks on the bench;"
              + " it is quiet within 0.1 s.",
          "The bench, and 'stage --sign bench': delays, leak and cracking pressure against the"
              + " proofs before.",
          "The cut test, and its rung again.");

  private Yearly() {}

  /**
   * Days since a rung was last passed on the car itself, or on the virtual one.
   *
   * @return NaN when it never was, or the date cannot be read
   */
  public static double daysSince(Rung rung, Ladder ladder, boolean practice, Instant today) {
    double days = Double.NaN;
    for (Entry entry : ladder.entries()) {
      if (entry.rung() == rung
          && entry.kind() == Entry.Kind.PASSED
          && entry.practice() == practice) {
        try {
          days = Duration.between(Instant.parse(entry.date()), today).toSeconds() / 86_400.0;
        } catch (DateTimeParseException e) {
          days = Double.NaN;
        }
      }
    }
    return days;
  }
}
