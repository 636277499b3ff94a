package org.boostwright.core.bench;

/**
 * What a bench session is told at each sample. A preallocated holder; the caller overwrites it.
 *
 * <p>Times are nanoseconds of the clock of {@code nowNanos}; only differences are used.
 */
public final class BenchInputs {
  /** Pressure on the actuator line as the sensor reads it, kPa absolute; NaN when it is lost. */
  public double lineKpaAbs = Double.NaN;

  /** When that sample was taken, ns. */
  public long sampleNanos;

  /** The controller kept the coil off although the session asked for its supply. */
  public boolean refused;

  /** The person, the page or the command line wants to stop now. */
  public boolean abort;

  /** The open question has been answered; {@link #answer} holds the number. */
  public boolean answered;

  /** Number given to the open question, in the question's unit; NaN = does not know. */
  public double answer = Double.NaN;
}
