package org.boostwright.core;

import java.util.Arrays;

/**
 * Everything the controller learns about the outside in one tick: raw volts, pulse periods and
 * switches, each with the time it was taken.
 *
 * <p>A preallocated holder: the runtime, the rig and replay write into it, {@link Controller#step}
 * only reads it. Times are nanoseconds of the same monotonic clock as {@code nowNanos}; only
 * differences are used, so any origin and a roll-over are fine.
 */
public final class Inputs {
  /** Raw volts at the converter, by {@link AnalogChannel#ordinal()}. */
  public final double[] volts = new double[AnalogChannel.COUNT];

  /** When each channel was converted, ns. */
  public final long[] sampleNanos = new long[AnalogChannel.COUNT];

  /** False while the converter does not answer for this channel, or never has. */
  public final boolean[] answered = new boolean[AnalogChannel.COUNT];

  /** Time between the last two engine-speed pulses, ns; 0 when fewer than two were ever seen. */
  public double enginePeriodNanos;

  /** Time of the last engine-speed pulse, ns; meaningless while {@link #engineSeen} is false. */
  public long enginePulseNanos;

  /** True once an engine-speed pulse has been seen since the runtime started. */
  public boolean engineSeen;

  /** Time between the last two road-speed pulses, ns; 0 when fewer than two were ever seen. */
  public double roadPeriodNanos;

  /** Time of the last road-speed pulse, ns; meaningless while {@link #roadSeen} is false. */
  public long roadPulseNanos;

  /** True once a road-speed pulse has been seen since the runtime started. */
  public boolean roadSeen;

  /** Ignition key on; true where no key input is fitted. */
  public boolean keyOn;

  /** Permit from an external safety device; true where none is fitted. Open (false) = rest. */
  public boolean permit;

  /** Spring-only switch lets the coil feed through; true where its position is not sensed. */
  public boolean coilFeed;

  /** Driver asks for the high boost target; false = low target. Lost or implausible reads low. */
  public boolean highBoost;

  /** Coil current seen on the feedback wire; read only where the settings declare the wire. */
  public boolean coilEnergised;

  /** Asks for the bench state; honoured only while the engine is known to be stopped. */
  public boolean benchRequest;

  /** Duty a bench procedure asks for, 0 to 1; used only in the bench state. */
  public double benchDutyFraction;

  /**
   * The outputs of the last tick did not read back as commanded; false where nothing is read back.
   */
  public boolean outputsWrong;

  /** A converter answers on no channel, no pulse was ever seen, switches at rest. */
  public Inputs() {
    clear();
  }

  /** Back to the state of a new holder. */
  public void clear() {
    Arrays.fill(volts, 0.0);
    Arrays.fill(sampleNanos, 0L);
    Arrays.fill(answered, false);
    enginePeriodNanos = 0.0;
    enginePulseNanos = 0L;
    engineSeen = false;
    roadPeriodNanos = 0.0;
    roadPulseNanos = 0L;
    roadSeen = false;
    keyOn = false;
    permit = false;
    coilFeed = false;
    highBoost = false;
    coilEnergised = false;
    benchRequest = false;
    benchDutyFraction = 0.0;
    outputsWrong = false;
  }

  /** Takes over every field of {@code other}. */
  public void copyFrom(Inputs other) {
    System.arraycopy(other.volts, 0, volts, 0, volts.length);
    System.arraycopy(other.sampleNanos, 0, sampleNanos, 0, sampleNanos.length);
    System.arraycopy(other.answered, 0, answered, 0, answered.length);
    enginePeriodNanos = other.enginePeriodNanos;
    enginePulseNanos = other.enginePulseNanos;
    engineSeen = other.engineSeen;
    roadPeriodNanos = other.roadPeriodNanos;
    roadPulseNanos = other.roadPulseNanos;
    roadSeen = other.roadSeen;
    keyOn = other.keyOn;
    permit = other.permit;
    coilFeed = other.coilFeed;
    highBoost = other.highBoost;
    coilEnergised = other.coilEnergised;
    benchRequest = other.benchRequest;
    benchDutyFraction = other.benchDutyFraction;
    outputsWrong = other.outputsWrong;
  }

  /** Writes one answered analogue sample. */
  public void sample(AnalogChannel channel, double channelVolts, long nanos) {
    int i = channel.ordinal();
    volts[i] = channelVolts;
    sampleNanos[i] = nanos;
    answered[i] = true;
  }
}
