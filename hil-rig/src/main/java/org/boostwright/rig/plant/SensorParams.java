package org.boostwright.rig.plant;

/**
 * How the sensors and their electrics behave (assumption A-06 and own assumptions).
 *
 * @param mapOffsetKpa error of the pressure sensor, kPa
 * @param mapScale gain of the pressure sensor over nominal, 1 = exact
 * @param mapNoiseKpa noise of the pressure sensor, standard deviation, kPa
 * @param pulsationKpa intake pulsation, peak to peak, kPa
 * @param mapLagSeconds lag of the pressure sensor, s
 * @param filterSeconds time constant of the input filters, s
 * @param openSeconds time constant with which an open input goes to its rail, s
 * @param lsbVolts converter step, V
 * @param airLagSeconds lag of the intake air thermistor, s
 */
public record SensorParams(
    double mapOffsetKpa,
    double mapScale,
    double mapNoiseKpa,
    double pulsationKpa,
    double mapLagSeconds,
    double filterSeconds,
    double openSeconds,
    double lsbVolts,
    double airLagSeconds) {

  /**
   * Filter 22 kohm and 150 nF: 3.3 ms, 48 Hz. Open input: 15 kohm more to ground, 5.55 ms, so that
   * 4.5 V falls below 0.2 V in 17.3 ms. Converter step of the ADS1115 at +-6.144 V (TI SBAS444).
   */
  public static final SensorParams DEFAULT =
      new SensorParams(0.0, 1.0, 0.3, 5.0, 1e-3, 3.3e-3, 5.55e-3, 187.5e-6, 2.0);

  /** The same sensors with a pressure error. */
  public SensorParams withMapError(double offsetKpa, double scale) {
    return new SensorParams(
        offsetKpa,
        scale,
        mapNoiseKpa,
        pulsationKpa,
        mapLagSeconds,
        filterSeconds,
        openSeconds,
        lsbVolts,
        airLagSeconds);
  }

  /**
   * The same sensors with other noise (kPa, standard deviation) and pulsation (kPa, peak to peak).
   */
  public SensorParams withMapNoise(double noiseKpa, double pulsation) {
    return new SensorParams(
        mapOffsetKpa,
        mapScale,
        noiseKpa,
        pulsation,
        mapLagSeconds,
        filterSeconds,
        openSeconds,
        lsbVolts,
        airLagSeconds);
  }

  /** The same sensors behind another filter; both time constants in s. */
  public SensorParams withFilter(double seconds, double open) {
    return new SensorParams(
        mapOffsetKpa,
        mapScale,
        mapNoiseKpa,
        pulsationKpa,
        mapLagSeconds,
        seconds,
        open,
        lsbVolts,
        airLagSeconds);
  }
}
