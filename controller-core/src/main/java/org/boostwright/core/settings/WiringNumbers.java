package org.boostwright.core.settings;

import org.boostwright.core.settings.WiringSettings.Coil;
import org.boostwright.core.settings.WiringSettings.Driver;
import org.boostwright.core.settings.WiringSettings.Heartbeat;
import org.boostwright.core.settings.WiringSettings.PressureInput;

/**
 * What follows from the values of the circuit, in closed form: first-order circuits only, so that
 * no simulator is needed. The simulations of the same circuit agree with these within a tenth.
 *
 * @param wiring the circuit's values
 * @param coilOhms coil resistance at 20 degC, ohm
 */
public record WiringNumbers(WiringSettings wiring, double coilOhms) {
  /** Charging voltage of a running engine, V (common practice, no source). */
  public static final double RUNNING_VOLTS = 14.0;

  /** Highest voltage a regulator may hold, V (common practice, no source). */
  public static final double HIGHEST_VOLTS = 16.0;

  /** Lowest battery voltage at which the valve must still move, V (common practice, no source). */
  public static final double LOWEST_VOLTS = 9.0;

  /** Copper at 100 degC over copper at 20 degC (0.393 % per kelvin, any handbook). */
  private static final double HOT_COPPER = 1.0 + 0.00393 * 80.0;

  /** A data sheet's threshold is stated at 250 uA; fully on takes this much more, V. */
  private static final double OVERDRIVE_VOLTS = 1.2;

  /** A loaded pin delivers this share of its supply (Raspberry Pi pins at 2 mA, from memory). */
  private static final double PIN_SHARE = 0.91;

  /** Two silicon diodes of the charge pump at microamperes, at 25, -40 and 85 degC, V. */
  private static final double PUMP_DIODES_VOLTS = 1.1;

  private static final double PUMP_DIODES_COLD_VOLTS = 1.35;
  private static final double PUMP_DIODES_HOT_VOLTS = 0.9;

  /** Time between two rising edges of the heartbeat, s. */
  private static final double BEAT_SECONDS = 0.01;

  /** Share of the divider that reaches the converter, 0 to 1; 1 without a divider. */
  public double dividerRatio() {
    PressureInput map = wiring.map();
    double sum = map.dividerTopOhms() + map.dividerBottomOhms();
    return map.dividerBottomOhms() > 0.0 ? map.dividerBottomOhms() / sum : 1.0;
  }

  /** Volts at the converter when the signal wire touches the sensor's supply. */
  public double shortToSupplyVolts() {
    return wiring.map().sensorSupplyVolts() * dividerRatio();
  }

  /** Share of the converter's supply that a span of volts uses, 0 to 1. */
  public double rangeUsedFraction(double lowVolts, double highVolts) {
    return (highVolts - lowVolts) / wiring.converterSupplyVolts();
  }

  /** Resistance the filter's capacitor sees, ohm. */
  public double filterSourceOhms() {
    PressureInput map = wiring.map();
    double divider = parallel(map.dividerTopOhms(), map.dividerBottomOhms());
    return divider + map.filterOhms();
  }

  /** Time constant of the filter, s. */
  public double filterLagSeconds() {
    return filterSourceOhms() * wiring.map().filterFarads();
  }

  /** Corner of the filter, Hz: 1/(2 pi R C). */
  public double filterCornerHz() {
    return 1.0 / (2.0 * Math.PI * filterLagSeconds());
  }

  /**
   * Time from the signal wire opening at the top of the sensor's range until the reading has fallen
   * past its threshold: {@code R*C*ln(top/threshold)}, s; infinite when the bias is missing.
   *
   * @param topVolts highest reading at the converter, V
   * @param thresholdVolts reading below which the wire counts as open, V
   */
  public double openWireSeconds(double topVolts, double thresholdVolts) {
    PressureInput map = wiring.map();
    double ohms = filterSourceOhms();
    if (!map.buffered()) {
      double source = map.dividerTopOhms() + map.biasOhms();
      double path =
          map.dividerBottomOhms() > 0.0
              ? dischargeThrough(source, map.dividerBottomOhms(), map.biasOhms())
              : source;
      ohms = path + map.filterOhms();
    }
    boolean falls = map.biasOhms() > 0.0 || !map.buffered() && map.dividerBottomOhms() > 0.0;
    return falls && thresholdVolts > 0.0
        ? ohms * map.filterFarads() * Math.log(topVolts / thresholdVolts)
        : Double.POSITIVE_INFINITY;
  }

  private static double dischargeThrough(double source, double bottom, double bias) {
    return bias > 0.0 ? parallel(source, bottom) : bottom;
  }

  /** Coil current at a supply, A. */
  public double coilAmps(double volts) {
    return volts / coilOhms;
  }

  /** Coil on without a break, W. */
  public double coilWatts(double volts) {
    return volts * volts / coilOhms;
  }

  /** Coil current at {@link #LOWEST_VOLTS} with the coil at 100 degC, A. */
  public double weakestCoilAmps() {
    return LOWEST_VOLTS / (coilOhms * HOT_COPPER);
  }

  /** Time from energised to pick-up at 14 V, s: {@code L/R*ln(1/(1 - I*R/V))}. */
  public double pickUpSeconds() {
    Coil coil = wiring.coil();
    double share = coil.pickUpAmps() * coilOhms / RUNNING_VOLTS;
    return share < 1.0
        ? -coil.henries() / coilOhms * Math.log(1.0 - share)
        : Double.POSITIVE_INFINITY;
  }

  /** Volts across the coil while the clamp carries its current at 14 V. */
  public double clampVoltsAcrossCoil() {
    Coil coil = wiring.coil();
    return switch (coil.clamp()) {
      case NONE -> wiring.driver().drainRatingVolts() - RUNNING_VOLTS;
      case DIODE, ZENER -> coil.clampVolts();
      case TVS -> coil.clampVolts() - RUNNING_VOLTS;
    };
  }

  /**
   * Time from switched off to drop-out, s: {@code L/R*ln((Vc/R + I0)/(Vc/R + I))}, from the current
   * at 14 V.
   */
  public double dropOutSeconds() {
    Coil coil = wiring.coil();
    double clampAmps = clampVoltsAcrossCoil() / coilOhms;
    double start = RUNNING_VOLTS / coilOhms;
    return coil.henries()
        / coilOhms
        * Math.log((clampAmps + start) / (clampAmps + coil.dropOutAmps()));
  }

  /** From energised to the spool at its energised end, s. */
  public double onSeconds() {
    return pickUpSeconds() + wiring.coil().spoolOnSeconds();
  }

  /** From switched off to the spool at rest, s. */
  public double offSeconds() {
    return dropOutSeconds() + wiring.coil().spoolOffSeconds();
  }

  /** Highest drain voltage of the low-side switch at a supply, V. */
  public double drainVolts(double supplyVolts) {
    Coil coil = wiring.coil();
    return switch (coil.clamp()) {
      case NONE -> wiring.driver().drainRatingVolts();
      case DIODE, ZENER -> supplyVolts + coil.clampVolts();
      case TVS -> Math.max(supplyVolts, coil.clampVolts());
    };
  }

  /** Highest threshold with which the pin still closes the low-side switch fully, V. */
  public double highestThresholdVolts() {
    return wiring.driver().gateDriveVolts() * PIN_SHARE - OVERDRIVE_VOLTS;
  }

  /** Losses of the low-side switch, coil on without a break at 16 V, W. */
  public double switchWatts() {
    Driver driver = wiring.driver();
    double amps = coilAmps(HIGHEST_VOLTS);
    return amps * amps * driver.onOhms();
  }

  /**
   * Shortest time the coil supply stays closed after the last beat, s; tolerances at their worst.
   */
  public double shortestHoldSeconds() {
    // The last edge may be the one that does not charge: half a beat after the one that does.
    return Math.max(
        0.0,
        hold(
                0.984,
                0.91,
                0.95,
                PUMP_DIODES_COLD_VOLTS,
                wiring.heartbeat().thresholdMaxVolts() + 0.13)
            - BEAT_SECONDS / 2.0);
  }

  /** Longest time the coil supply stays closed after the last beat, s. */
  public double longestHoldSeconds() {
    return hold(
        1.016, 1.09, 1.05, PUMP_DIODES_HOT_VOLTS, wiring.heartbeat().thresholdMinVolts() - 0.12);
  }

  /** Time the coil supply stays closed after the last beat with every part at its value, s. */
  public double typicalHoldSeconds() {
    Heartbeat h = wiring.heartbeat();
    return hold(
        1.0, 1.0, 1.0, PUMP_DIODES_VOLTS, (h.thresholdMinVolts() + h.thresholdMaxVolts()) / 2.0);
  }

  /**
   * Steady charge pump, then decay: {@code V = a*Vp/(1 - (1 - a)*exp(-T/RC))}, {@code a = C1/(C1 +
   * C2)}; hold {@code RC*ln(V/threshold)}.
   */
  private double hold(
      double ohmsShare, double faradShare, double pumpShare, double diodes, double threshold) {
    Heartbeat h = wiring.heartbeat();
    double lag = h.bleedOhms() * ohmsShare * h.reservoirFarads() * faradShare;
    double share = h.couplingFarads() / (h.couplingFarads() + h.reservoirFarads());
    double pump = h.pumpVolts() * pumpShare - diodes;
    double volts = share * pump / (1.0 - (1.0 - share) * Math.exp(-BEAT_SECONDS / lag));
    return volts > threshold ? lag * Math.log(volts / threshold) : 0.0;
  }

  private static double parallel(double a, double b) {
    return a > 0.0 && b > 0.0 ? a * b / (a + b) : 0.0;
  }
}
