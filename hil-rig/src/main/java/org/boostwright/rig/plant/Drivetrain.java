package org.boostwright.rig.plant;

/**
 * Engine speed and road speed: standing still, held by a brake, in gear on a level road, or out of
 * gear.
 *
 * <p>Torque from {@code bmep = -276952 Pa + 12.5822*p_intake}, {@code torque = bmep*V_d/(4 pi)}; on
 * the road {@code m*dv/dt = torque*ratio/r - rho/2*CdA*v^2 - c_r*m*g} (assumption A-04), without
 * losses in the gearbox and without turning masses.
 */
final class Drivetrain {
  private static final double G = 9.80665;
  private static final double BMEP_OFFSET_PA = -276_952.0;
  private static final double BMEP_PER_PA = 12.5822;
  // Own assumption: pumping and friction of an engine that turns without burning.
  private static final double BMEP_CUT_PA = -200_000.0;
  // Own assumption: what idle control and auxiliaries take away with the throttle shut.
  private static final double IDLE_CONTROL_NM = 25.0;
  private static final double RUN_DOWN_RAD_PER_S2 = 300.0;

  private enum Mode {
    STANDSTILL,
    HELD,
    ROAD,
    NEUTRAL
  }

  private final CarParams car;
  private final double displacementM3;

  private Mode mode = Mode.STANDSTILL;
  private double rad;
  private double sweepRadPerS2;
  private double metresPerSecond;
  private int gear;
  private double shiftLeftSeconds;

  Drivetrain(CarParams car, double displacementM3) {
    this.car = car;
    this.displacementM3 = displacementM3;
  }

  double radPerSecond() {
    return rad;
  }

  double metresPerSecond() {
    return metresPerSecond;
  }

  int gear() {
    return mode == Mode.ROAD ? gear : 0;
  }

  boolean shifting() {
    return shiftLeftSeconds > 0.0;
  }

  void standStill() {
    mode = Mode.STANDSTILL;
  }

  /** Held at a speed that changes at a rate, rad/s and rad/s2. */
  void hold(double radPerSecond, double sweep) {
    mode = Mode.HELD;
    rad = radPerSecond;
    sweepRadPerS2 = sweep;
    metresPerSecond = 0.0;
    shiftLeftSeconds = 0.0;
  }

  void road(int newGear, double speed) {
    rad = synchronous(newGear, speed);
    mode = Mode.ROAD;
    gear = newGear;
    metresPerSecond = speed;
    shiftLeftSeconds = 0.0;
  }

  void shift(int newGear, double seconds) {
    if (mode != Mode.ROAD) {
      throw new IllegalStateException("only a car in gear on the road can change gear");
    }
    car.requireGear(newGear);
    gear = newGear;
    shiftLeftSeconds = seconds;
  }

  void neutral() {
    mode = Mode.NEUTRAL;
    shiftLeftSeconds = 0.0;
  }

  /** Lets time pass and returns engine speed at the end, rad/s. */
  double advance(
      double seconds, double intakePa, boolean throttleShut, boolean fuelCut, double airDensity) {
    switch (mode) {
      case STANDSTILL -> {
        rad = Math.max(0.0, rad - RUN_DOWN_RAD_PER_S2 * seconds);
        metresPerSecond = 0.0;
      }
      case HELD -> rad = Math.max(0.0, rad + sweepRadPerS2 * seconds);
      case NEUTRAL -> {
        double idle = car.idleRpm() * Math.PI / 30.0;
        double net = torque(intakePa, fuelCut) - (throttleShut ? IDLE_CONTROL_NM : 0.0);
        double lowest = fuelCut ? 0.0 : idle;
        rad = Math.max(lowest, rad + net / car.engineInertiaKgM2() * seconds);
        if (!(rad > 0.0)) {
          mode = Mode.STANDSTILL; // a stalled engine stays so, cut or not
        }
        roll(seconds, 0.0, airDensity);
      }
      case ROAD -> onTheRoad(seconds, intakePa, fuelCut, airDensity);
    }
    return rad;
  }

  private void onTheRoad(double seconds, double intakePa, boolean fuelCut, double airDensity) {
    if (shiftLeftSeconds > 0.0) {
      roll(seconds, 0.0, airDensity);
      double share = Math.min(1.0, seconds / shiftLeftSeconds);
      rad += (synchronous(gear, metresPerSecond) - rad) * share;
      // Nothing shorter than a microsecond is left over by rounding.
      shiftLeftSeconds = shiftLeftSeconds - seconds > 1e-6 ? shiftLeftSeconds - seconds : 0.0;
      return;
    }
    double force = torque(intakePa, fuelCut) * car.overall(gear) / car.wheelRadiusM();
    roll(seconds, force, airDensity);
    rad = synchronous(gear, metresPerSecond);
  }

  private double torque(double intakePa, boolean fuelCut) {
    double bmep = fuelCut ? BMEP_CUT_PA : BMEP_OFFSET_PA + BMEP_PER_PA * intakePa;
    return bmep * displacementM3 / (4.0 * Math.PI);
  }

  private void roll(double seconds, double force, double airDensity) {
    double v = metresPerSecond;
    double resistance =
        0.5 * airDensity * car.dragAreaM2() * v * v + car.rolling() * car.massKg() * G;
    metresPerSecond = Math.max(0.0, v + (force - resistance) / car.massKg() * seconds);
  }

  /** Engine speed that goes with road speed; the clutch slips below idle. */
  private double synchronous(int inGear, double speed) {
    double turning = speed / car.wheelRadiusM() * car.overall(inGear);
    return Math.max(turning, car.idleRpm() * Math.PI / 30.0);
  }
}
