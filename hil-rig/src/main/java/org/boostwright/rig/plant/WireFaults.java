package org.boostwright.rig.plant;

/**
 * What is wrong with one sensor's wire, electronics or converter channel right now.
 *
 * <p>A plain holder: write any field at any moment. A new holder means everything is sound.
 */
public final class WireFaults {
  /** State of the signal wire. */
  public enum Wire {
    SOUND,
    /** Broken: the input goes to its rail through the filter. */
    OPEN,
    SHORT_TO_GROUND,
    /** Touches the 5 V sensor supply. */
    SHORT_TO_SUPPLY
  }

  /** Signal wire. */
  public Wire wire = Wire.SOUND;

  /** Added to the sensor's output, V. */
  public double offsetVolts;

  /** Factor on the sensor's output. */
  public double scale = 1.0;

  /** Factor on the sensor's noise. */
  public double noiseFactor = 1.0;

  /** Share of time a loose contact is open, 0 to 1. */
  public double intermittentFraction;

  /**
   * Mean time of one opening and closing of the loose contact, s; 0 = it sits at the converter and
   * spoils single samples.
   */
  public double intermittentPeriodSeconds;

  /** Voltage forced onto the converter; NaN = none. */
  public double replacedVolts = Double.NaN;

  /** The converter repeats its last code with a new time. */
  public boolean frozen;

  /** The converter repeats its last code with its old time. */
  public boolean stale;

  /** The converter does not answer for this channel. */
  public boolean noAnswer;

  /** Back to sound. */
  public void clear() {
    wire = Wire.SOUND;
    offsetVolts = 0.0;
    scale = 1.0;
    noiseFactor = 1.0;
    intermittentFraction = 0.0;
    intermittentPeriodSeconds = 0.0;
    replacedVolts = Double.NaN;
    frozen = false;
    stale = false;
    noAnswer = false;
  }
}
