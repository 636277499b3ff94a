package org.boostwright.core;

import org.boostwright.core.state.SafetyState;
import org.boostwright.core.state.Waiting;

/**
 * Everything the controller decides in one tick: the commands to the hardware first, then what it
 * believed and why, for the recorder and for people.
 *
 * <p>A preallocated holder, overwritten whole by each {@link Controller#step}. A new holder is at
 * rest.
 */
public final class Outputs {
  /** Share of each PWM period the coil is energised, 0 to 1; 0 in every rest state. */
  public double dutyFraction;

  /** PWM channel enabled; false in every rest state. */
  public boolean pwmEnabled;

  /** High-side coil supply switch commanded closed; false in every rest state. */
  public boolean coilSupplyClosed;

  /** Ask the user's own engine cut to act. False unless the settings allow it. */
  public boolean engineCutRequest;

  /** The tick found nothing that forbids the heartbeat pulse. */
  public boolean heartbeatPermitted;

  /** Safety state after this tick. */
  public SafetyState state = SafetyState.RESTING;

  /** What keeps the controller from going further; {@link Waiting#NOTHING} when nothing does. */
  public Waiting waiting = Waiting.NOTHING;

  /** Confirmed faults, bit i = {@link org.boostwright.core.monitor.FaultCode} with ordinal i. */
  public long activeFaults;

  /** Findings that change no state, bits as in {@link #activeFaults}. */
  public long findings;

  /** Manifold pressure the loop uses, kPa absolute; NaN while unknown. */
  public double mapKpaAbs;

  /** Throttle, percent; NaN while unknown. */
  public double throttlePct;

  /** Engine speed, 1/min; 0 when known to be stopped or unknown. */
  public double engineRpm;

  /** Road speed, km/h; 0 when unknown. */
  public double roadKmh;

  /** Gear worked out from engine and road speed; 0 when unknown. */
  public int gear;

  /** Intake air temperature in use, degC. */
  public double intakeAirC;

  /** Ambient pressure in use, kPa absolute; NaN while unknown. */
  public double ambientKpaAbs;

  /** Boost target after every adjustment, kPa absolute; NaN while unknown. */
  public double targetKpaAbs;

  /** Base duty from the table, 0 to 1. */
  public double baseDutyFraction;

  /** Trim of the pressure feedback, as duty -1 to 1. */
  public double trimDutyFraction;

  /** True while the spool strategy holds the wastegate shut. */
  public boolean spooling;

  /** Lookups that fell outside the tables' axes since start. */
  public long outsideTable;

  /** Ticks that came late since start. */
  public long lateTicks;

  /** Forces the hardware commands to rest; beliefs are left as they are. */
  public void rest() {
    dutyFraction = 0.0;
    pwmEnabled = false;
    coilSupplyClosed = false;
  }
}
