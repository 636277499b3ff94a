package org.boostwright.rig.plant;

/**
 * The turbocharger.
 *
 * @param turbineK1 turbine flow factor, kg/s K^0.5 per kPa
 * @param turbineK2 turbine flow exponent
 * @param turbinePeakEfficiency turbine efficiency at its best blade speed ratio
 * @param inertiaKgM2 inertia of the rotor, kg m2
 * @param compressorPeakEfficiency compressor efficiency at the middle of its map
 */
public record TurboParams(
    double turbineK1,
    double turbineK2,
    double turbinePeakEfficiency,
    double inertiaKgM2,
    double compressorPeakEfficiency) {

  /**
   * The identified research engine: faultdiagnosistoolbox/pyfaultdiagnosistoolbox, src/Engine,
   * commit 661b993 (MIT licence).
   */
  public static final TurboParams PUBLISHED =
      new TurboParams(0.0292, 1.93171, 0.637445, 1.252e-4, 0.736335);

  /** Assumption A-03: a smaller turbine and rotor, so that it spools like a road car. */
  public static final TurboParams PROJECT_CAR = new TurboParams(0.0185, 2.2, 0.70, 6e-5, 0.736335);

  /** The same turbo with a turbine of another size. */
  public TurboParams withTurbineK1(double k1) {
    return new TurboParams(
        k1, turbineK2, turbinePeakEfficiency, inertiaKgM2, compressorPeakEfficiency);
  }

  /** The same turbo with other efficiencies. */
  public TurboParams withEfficiencies(double turbinePeak, double compressorPeak) {
    return new TurboParams(turbineK1, turbineK2, turbinePeak, inertiaKgM2, compressorPeak);
  }

  /** The same turbo with another rotor. */
  public TurboParams withInertia(double kgM2) {
    return new TurboParams(
        turbineK1, turbineK2, turbinePeakEfficiency, kgM2, compressorPeakEfficiency);
  }
}
