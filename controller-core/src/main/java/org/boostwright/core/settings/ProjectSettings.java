package org.boostwright.core.settings;

import java.util.Arrays;
import java.util.Objects;
import org.jspecify.annotations.Nullable;

/**
 * What a person plans to build, beyond what the controller itself has to know; only {@code plan} and
 * {@code first-table} use it, and no proof depends on it.
 *
 * @param boostKpaAbs highest boost wanted, kPa absolute; NaN when not stated. {@code first-table}
 *     builds the target table from it where the file has none
 * @param altitudesM altitudes the car is driven at, m
 * @param hoseLengthMm hose from valve to actuator, mm; with two actuators both legs together
 * @param hoseBoreMm its bore, mm
 * @param actuators actuators on the one valve, 1 or 2
 * @param equalLegs the hoses to two actuators are of one length and bore
 * @param actuatorCm3 volume of one actuator's chamber, cm3
 * @param springIsSafe the person states that fuel and engine stand spring pressure for ever
 * @param safeKpaAbs highest pressure fuel and engine stand, kPa absolute; NaN when not stated
 * @param compressorRatioMax highest pressure ratio the compressor's map gives at the flow needed
 * @param runawayKpaAbs pressure with the gate held shut, kPa absolute; NaN: computed with the virtual
 *     car
 */
@SuppressWarnings("ArrayRecordComponent") // copied on the way in and out
public record ProjectSettings(
    double boostKpaAbs,
    double[] altitudesM,
    double hoseLengthMm,
    double hoseBoreMm,
    int actuators,
    boolean equalLegs,
    double actuatorCm3,
    boolean springIsSafe,
    double safeKpaAbs,
    double compressorRatioMax,
    double runawayKpaAbs) {

  /** Takes its own copy of the array. */
  public ProjectSettings {
    altitudesM = altitudesM.clone();
  }

  /** A copy. */
  @Override
  public double[] altitudesM() {
    return altitudesM.clone();
  }

  /** Volume the valve fills and vents: hose and chambers, cm3. */
  public double volumeCm3() {
    double areaMm2 = 0.25 * Math.PI * hoseBoreMm * hoseBoreMm;
    return areaMm2 * hoseLengthMm * 1e-3 + actuators * actuatorCm3;
  }

  @Override
  public boolean equals(@Nullable Object other) {
    return other instanceof ProjectSettings that
        && Double.compare(boostKpaAbs, that.boostKpaAbs) == 0
        && Arrays.equals(altitudesM, that.altitudesM)
        && Double.compare(hoseLengthMm, that.hoseLengthMm) == 0
        && Double.compare(hoseBoreMm, that.hoseBoreMm) == 0
        && actuators == that.actuators
        && equalLegs == that.equalLegs
        && Double.compare(actuatorCm3, that.actuatorCm3) == 0
        && springIsSafe == that.springIsSafe
        && Double.compare(safeKpaAbs, that.safeKpaAbs) == 0
        && Double.compare(compressorRatioMax, that.compressorRatioMax) == 0
        && Double.compare(runawayKpaAbs, that.runawayKpaAbs) == 0;
  }

  @Override
  public int hashCode() {
    return Objects.hash(
        boostKpaAbs,
        Arrays.hashCode(altitudesM),
        hoseLengthMm,
        hoseBoreMm,
        actuators,
        equalLegs,
        actuatorCm3,
        springIsSafe,
        safeKpaAbs,
        compressorRatioMax,
        runawayKpaAbs);
  }
}
