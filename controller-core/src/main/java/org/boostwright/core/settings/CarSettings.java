package org.boostwright.core.settings;

import java.util.Arrays;
import java.util.Objects;
import org.jspecify.annotations.Nullable;

/**
 * The car and its speed signals.
 *
 * @param name shown in reports
 * @param cylinders number of cylinders, 1 to 12
 * @param pulsesPerRevolution engine-speed pulses per crankshaft revolution: 0.5, 1, 2, 3 or 4
 * @param redlineRpm highest engine speed the driver uses, 1/min; also the plausibility bound (1.25
 *     times this)
 * @param idleRpm engine speed above which the engine counts as running, 1/min
 * @param roadPulsesPerKm road-speed pulses per kilometre; 0 when no road speed is wired
 * @param gearRpmPerKmh engine speed divided by road speed in each forward gear, first gear first;
 *     empty when gears are not told apart
 */
@SuppressWarnings("ArrayRecordComponent") // copied on the way in and out
public record CarSettings(
    String name,
    int cylinders,
    double pulsesPerRevolution,
    double redlineRpm,
    double idleRpm,
    double roadPulsesPerKm,
    double[] gearRpmPerKmh) {

  /** Takes its own copy of the array. */
  public CarSettings {
    gearRpmPerKmh = gearRpmPerKmh.clone();
  }

  /** A copy; inside the tick use {@link #gearRpmPerKmh(int)}, which allocates nothing. */
  @Override
  public double[] gearRpmPerKmh() {
    return gearRpmPerKmh.clone();
  }

  /** Number of gears that are told apart. */
  public int gears() {
    return gearRpmPerKmh.length;
  }

  /** Engine speed divided by road speed in one gear, first gear 0, 1/min per km/h. */
  public double gearRpmPerKmh(int index) {
    return gearRpmPerKmh[index];
  }

  @Override
  public boolean equals(@Nullable Object other) {
    return other instanceof CarSettings that
        && name.equals(that.name)
        && cylinders == that.cylinders
        && Double.compare(pulsesPerRevolution, that.pulsesPerRevolution) == 0
        && Double.compare(redlineRpm, that.redlineRpm) == 0
        && Double.compare(idleRpm, that.idleRpm) == 0
        && Double.compare(roadPulsesPerKm, that.roadPulsesPerKm) == 0
        && Arrays.equals(gearRpmPerKmh, that.gearRpmPerKmh);
  }

  @Override
  public int hashCode() {
    return Objects.hash(
        name,
        cylinders,
        pulsesPerRevolution,
        redlineRpm,
        idleRpm,
        roadPulsesPerKm,
        Arrays.hashCode(gearRpmPerKmh));
  }
}
