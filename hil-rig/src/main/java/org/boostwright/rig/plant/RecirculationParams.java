package org.boostwright.rig.plant;

/**
 * Recirculation valve from compressor outlet to compressor inlet.
 *
 * @param openAboveKpa boost over intake pressure at which it begins to open, kPa
 * @param fullAtKpa the same at which it is fully open, kPa
 * @param boreM bore, m; 0 where none is fitted
 * @param lagSeconds time constant, s
 */
public record RecirculationParams(
    double openAboveKpa, double fullAtKpa, double boreM, double lagSeconds) {

  /** Assumption A-05: opens at 40 kPa, full at 60 kPa, 20 mm, 30 ms. */
  public static final RecirculationParams DEFAULT = new RecirculationParams(40.0, 60.0, 0.02, 0.03);

  /** No such valve. */
  public static final RecirculationParams ABSENT = new RecirculationParams(40.0, 60.0, 0.0, 0.03);
}
