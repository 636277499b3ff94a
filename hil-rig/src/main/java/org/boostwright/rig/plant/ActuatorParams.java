package org.boostwright.rig.plant;

/**
 * Diaphragm actuator and wastegate: {@code p_gauge*A_d + (p_exhaust - p_turbine_out)*A_v*r = F_0 +
 * k*x}, x = lift 0 to 1, with a first-order lag, stops at both ends and optional dry friction.
 *
 * @param diaphragmM effective diaphragm diameter, m
 * @param crackKpaGauge actuator pressure that begins to open it without back-pressure, kPa gauge
 * @param spanKpa further pressure up to full lift, kPa
 * @param valveM wastegate valve diameter, m
 * @param leverRatio share r of the valve force that reaches the rod
 * @param lagSeconds time constant, s
 * @param frictionN dry friction, N
 * @param strokeM rod travel at full lift, m; makes the chamber grow with lift
 */
public record ActuatorParams(
    double diaphragmM,
    double crackKpaGauge,
    double spanKpa,
    double valveM,
    double leverRatio,
    double lagSeconds,
    double frictionN,
    double strokeM) {

  /** Assumption A-02: 40 mm, 60 kPa, 50 kPa, 25 mm, 0.5, 40 ms; no friction, constant volume. */
  public static final ActuatorParams DEFAULT =
      new ActuatorParams(0.040, 60.0, 50.0, 0.025, 0.5, 0.040, 0.0, 0.0);

  /** The same actuator with another spring. */
  public ActuatorParams withSpring(double crackGauge, double span) {
    return new ActuatorParams(
        diaphragmM, crackGauge, span, valveM, leverRatio, lagSeconds, frictionN, strokeM);
  }

  /** The same actuator with another lever; 0 takes the exhaust back-pressure away. */
  public ActuatorParams withLeverRatio(double ratio) {
    return new ActuatorParams(
        diaphragmM, crackKpaGauge, spanKpa, valveM, ratio, lagSeconds, frictionN, strokeM);
  }

  /** The same actuator with another lag. */
  public ActuatorParams withLag(double seconds) {
    return new ActuatorParams(
        diaphragmM, crackKpaGauge, spanKpa, valveM, leverRatio, seconds, frictionN, strokeM);
  }

  /** The same actuator with dry friction. */
  public ActuatorParams withFriction(double newton) {
    return new ActuatorParams(
        diaphragmM, crackKpaGauge, spanKpa, valveM, leverRatio, lagSeconds, newton, strokeM);
  }

  /** The same actuator with a rod travel that makes the chamber grow. */
  public ActuatorParams withStroke(double metres) {
    return new ActuatorParams(
        diaphragmM, crackKpaGauge, spanKpa, valveM, leverRatio, lagSeconds, frictionN, metres);
  }

  /** Effective diaphragm area, m2. */
  public double diaphragmM2() {
    return Math.PI / 4 * diaphragmM * diaphragmM;
  }

  /** Wastegate valve area that the exhaust pushes on, m2. */
  public double valveM2() {
    return Math.PI / 4 * valveM * valveM;
  }

  /** Volume added at full lift, m3. */
  public double strokeVolumeM3() {
    return diaphragmM2() * strokeM;
  }
}
