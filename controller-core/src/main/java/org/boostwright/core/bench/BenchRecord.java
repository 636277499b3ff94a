package org.boostwright.core.bench;

import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Set;
import org.boostwright.core.bench.model.EdgeBracket;
import org.boostwright.core.bench.model.ValveFitResult;
import org.jspecify.annotations.Nullable;

/**
 * Everything a bench session measured and was told. A holder the session fills; NaN and null mean
 * not measured, which is never taken for good.
 */
public final class BenchRecord {
  /** Ambient pressure by the line sensor with the air off, kPa absolute. */
  public double ambientKpaAbs = Double.NaN;

  /** Noise of the line sensor, standard deviation, kPa. */
  public double noiseKpa;

  /** What the regulator's own gauge shows, kPa gauge. */
  public double regulatorKpaGauge = Double.NaN;

  /** What the regulator's own gauge showed while the valve worked, kPa gauge. */
  public double regulatorWorkingKpaGauge = Double.NaN;

  /** Clicks commanded. */
  public int clicksGiven;

  /** Clicks the person heard. */
  public double clicksHeard = Double.NaN;

  /** Coil resistance by ohmmeter; infinite when open. */
  public double coilOhms = Double.NaN;

  /** 1 when the coil clicks on a battery, 0 when not. */
  public double batteryClick = Double.NaN;

  /** What was heard at the vent. */
  public Heard heard = Heard.UNKNOWN;

  /** Line pressure with the coil's plug pulled, as read by the person, kPa gauge. */
  public double unpluggedKpaGauge = Double.NaN;

  /** Coil supply switch open. */
  public @Nullable Reading restDead;

  /** Coil supply closed, duty 0. */
  public @Nullable Reading rest;

  /** Duty 1. */
  public @Nullable Reading energised;

  /** The duty ramp of the polarity step, rising. */
  public final List<Reading> polarity = new ArrayList<>();

  /** Rate of the leak, 1/s of the chamber; see the valve model. */
  public double leakRatePerSecond = Double.NaN;

  /** Its standard deviation, 1/s. */
  public double leakSigmaPerSecond = Double.NaN;

  /** Fall of pressure at the start of the leak-down, kPa/s. */
  public double leakKpaPerSecond = Double.NaN;

  /** From energising to the first fall of pressure, s. */
  public double ventDeadSeconds = Double.NaN;

  /** From energising to 90 % of the fall, s. */
  public double ventSeconds = Double.NaN;

  /** From switching off to the first rise of pressure, s. */
  public double fillDeadSeconds = Double.NaN;

  /** From switching off to 90 % of the rise, s. */
  public double fillSeconds = Double.NaN;

  /** Window edges found. */
  public final List<EdgeBracket> edges = new ArrayList<>();

  /** Duty sweep upwards. */
  public final List<Reading> sweepUp = new ArrayList<>();

  /** Duty sweep downwards. */
  public final List<Reading> sweepDown = new ArrayList<>();

  /** Readings over frequency. */
  public final List<Reading> frequency = new ArrayList<>();

  /** Pressure at which the rod begins to move, kPa gauge. */
  public double crackKpaGauge = Double.NaN;

  /** Pressure at full stroke, kPa gauge. */
  public double fullStrokeKpaGauge = Double.NaN;

  /** Pressure left after holding for 60 s, kPa gauge. */
  public double heldKpaGauge = Double.NaN;

  /** Preload of the rod, mm. */
  public double preloadMm = Double.NaN;

  /** Fit of the valve model. */
  public @Nullable ValveFitResult fit;

  /** Hottest the coil got by the energy model, degC. */
  public double hottestCoilC = Double.NaN;

  /** Steps that ran to their end. */
  public final Set<BenchStep> completed = EnumSet.noneOf(BenchStep.class);

  /** Why the session stopped early. */
  public @Nullable AbortReason aborted;

  /** A finding made going on pointless or unsafe. */
  boolean stop;

  /** Supply at the valve's actuator port at rest, kPa gauge; NaN when not measured. */
  public double restKpaGauge() {
    return rest == null ? Double.NaN : rest.meanKpaAbs() - ambientKpaAbs;
  }

  /** Gauge pressure of a reading, kPa. */
  public double gauge(Reading reading) {
    return reading.meanKpaAbs() - ambientKpaAbs;
  }
}
