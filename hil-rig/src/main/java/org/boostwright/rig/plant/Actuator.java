package org.boostwright.rig.plant;

/** Force balance and motion of the wastegate actuator; see {@link ActuatorParams}. */
final class Actuator {
  private final double diaphragmM2;
  private final double backPressureM2;
  private final double preloadN;
  private final double newtonPerLift;
  private final double frictionN;
  private final double lagSeconds;

  private double lift;
  private double stuckLift = Double.NaN;

  Actuator(ActuatorParams params) {
    diaphragmM2 = params.diaphragmM2();
    backPressureM2 = params.valveM2() * params.leverRatio();
    preloadN = params.crackKpaGauge() * 1000.0 * diaphragmM2;
    newtonPerLift = params.spanKpa() * 1000.0 * diaphragmM2;
    frictionN = params.frictionN();
    lagSeconds = params.lagSeconds();
  }

  /** Lift, 0 shut to 1 open. */
  double lift() {
    return Double.isNaN(stuckLift) ? lift : stuckLift;
  }

  /** Holds the wastegate at a lift of 0 to 1; NaN lets it go. */
  void setStuckLift(double stuck) {
    if (Double.isNaN(stuck) && !Double.isNaN(stuckLift)) {
      lift = stuckLift;
    }
    stuckLift = stuck;
  }

  /** Puts the wastegate at a lift of 0 to 1. */
  void setLift(double value) {
    lift = value;
  }

  /** Lift at which the forces balance, not limited by the stops. */
  double balanceLift(double gaugePa, double backPressurePa) {
    return (gaugePa * diaphragmM2 + backPressurePa * backPressureM2 - preloadN) / newtonPerLift;
  }

  /** Moves for {@code seconds} under constant pressures, Pa. */
  void advance(double seconds, double gaugePa, double backPressurePa) {
    if (!Double.isNaN(stuckLift)) {
      return;
    }
    double goal = balanceLift(gaugePa, backPressurePa);
    if (frictionN > 0.0) {
      double deadLift = frictionN / newtonPerLift;
      if (Math.abs(goal - lift) <= deadLift) {
        return;
      }
      goal += goal > lift ? -deadLift : deadLift;
    }
    // Exact solution of the lag over this step.
    double next = goal + (lift - goal) * Math.exp(-seconds / lagSeconds);
    lift = next < 0.0 ? 0.0 : Math.min(next, 1.0);
  }
}
