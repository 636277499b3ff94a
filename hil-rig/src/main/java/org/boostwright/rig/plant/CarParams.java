package org.boostwright.rig.plant;

/**
 * The car around the engine.
 *
 * @param massKg mass, kg
 * @param wheelRadiusM rolling radius, m
 * @param finalDrive final drive ratio
 * @param gears gear ratios, first gear first
 * @param dragAreaM2 drag coefficient times frontal area, m2
 * @param rolling rolling resistance, share of weight
 * @param idleRpm engine speed the idle control keeps, 1/min
 * @param idleAirM2 passage past the closed throttle, m2
 * @param engineInertiaKgM2 inertia of the running engine out of gear, kg m2
 */
public record CarParams(
    double massKg,
    double wheelRadiusM,
    double finalDrive,
    double[] gears,
    double dragAreaM2,
    double rolling,
    double idleRpm,
    double idleAirM2,
    double engineInertiaKgM2) {

  /**
   * Assumption A-04, and own assumptions: idle at 850 1/min through a passage of 8 mm2, 0.15 kg m2.
   */
  public static final CarParams DEFAULT =
      new CarParams(
          1150.0,
          0.30,
          4.1,
          new double[] {3.14, 1.89, 1.33, 1.00, 0.81},
          0.62,
          0.013,
          850.0,
          8e-6,
          0.15);

  /**
   * Engine revolutions per wheel revolution in a gear, 1 = first.
   *
   * @throws IllegalArgumentException when the gearbox has no such gear
   */
  public double overall(int gear) {
    requireGear(gear);
    return gears[gear - 1] * finalDrive;
  }

  void requireGear(int gear) {
    if (gear < 1 || gear > gears.length) {
      throw new IllegalArgumentException("gear " + gear + " must lie within 1 and " + gears.length);
    }
  }

  /** Engine speed over road speed in a gear, 1/min per km/h. */
  public double rpmPerKmh(int gear) {
    return overall(gear) * 60.0 / (3.6 * 2.0 * Math.PI * wheelRadiusM);
  }

  /** The same car with another mass. */
  public CarParams withMass(double kg) {
    return new CarParams(
        kg,
        wheelRadiusM,
        finalDrive,
        gears,
        dragAreaM2,
        rolling,
        idleRpm,
        idleAirM2,
        engineInertiaKgM2);
  }
}
