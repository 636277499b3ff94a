package org.boostwright.core.bench.model;

/**
 * Solves for the pressure that repeats itself from period to period: vent for a while, fill for a
 * while.
 *
 * <p>With {@code r = p/supply = b + (1 - b)*sin(theta)} the subsonic filling law becomes {@code
 * dtheta/dt = rate/(1 - b)}, so filling is exact; with {@code u = ambient/p} written the same way
 * venting becomes {@code dtheta/dt = rate*u/(1 - b)}, smooth up to the end, and takes a few
 * Runge-Kutta steps. A leak during filling is split off in short turns.
 */
final class PeriodicLine {
  private static final double THETA_STEP = 0.3;
  private static final double LEAK_TURN_SECONDS = 0.001;
  private static final double TOLERANCE_KPA = 1e-4;
  private static final int MAX_ITERATIONS = 60;

  private final double b;
  private final double fillRate;
  private final double ventRate;
  private final double leakRate;
  private final double supply;
  private final double ambient;

  /** Integral of pressure over the time since it was last reset, kPa s. */
  private double integral;

  PeriodicLine(ValveModel valve, double supplyKpaAbs, double ambientKpaAbs) {
    this.b = valve.criticalRatio();
    this.fillRate = valve.fillRatePerSecond();
    this.ventRate = valve.ventRatePerSecond();
    this.leakRate = valve.leakRatePerSecond();
    this.supply = supplyKpaAbs;
    this.ambient = ambientKpaAbs;
  }

  /** Periodic solution by regula falsi with the Illinois rule: one period is a contraction. */
  SteadyLine solve(double ventSeconds, double fillSeconds) {
    double low = ambient;
    double high = supply;
    double atLow = onePeriod(low, ventSeconds, fillSeconds) - low;
    double atHigh = onePeriod(high, ventSeconds, fillSeconds) - high;
    double start = high;
    if (atHigh < -TOLERANCE_KPA && atLow > TOLERANCE_KPA) {
      for (int i = 0; i < MAX_ITERATIONS; i++) {
        start = low + (high - low) * atLow / (atLow - atHigh);
        double at = onePeriod(start, ventSeconds, fillSeconds) - start;
        if (Math.abs(at) < TOLERANCE_KPA) {
          break;
        }
        if (at > 0.0) {
          low = start;
          atLow = at;
          atHigh *= 0.5;
        } else {
          high = start;
          atHigh = at;
          atLow *= 0.5;
        }
      }
    } else if (!(atLow > TOLERANCE_KPA)) {
      start = low;
    }
    integral = 0.0;
    double bottom = empty(start, ventSeconds, ventRate + leakRate);
    double top = fill(bottom, fillSeconds);
    double mean = integral / (ventSeconds + fillSeconds);
    return new SteadyLine(mean, Math.min(bottom, top), Math.max(start, top));
  }

  private double onePeriod(double p, double ventSeconds, double fillSeconds) {
    return fill(empty(p, ventSeconds, ventRate + leakRate), fillSeconds);
  }

  private double fill(double p, double seconds) {
    if (leakRate == 0.0) {
      return fillWithoutLeak(p, seconds);
    }
    int turns = (int) Math.ceil(seconds / LEAK_TURN_SECONDS);
    double turn = seconds / turns;
    double q = p;
    for (int i = 0; i < turns; i++) {
      double before = integral;
      q = empty(q, 0.5 * turn, leakRate);
      integral = before;
      q = fillWithoutLeak(q, turn);
      double filled = integral;
      q = empty(q, 0.5 * turn, leakRate);
      integral = filled;
    }
    return q;
  }

  private double fillWithoutLeak(double p, double seconds) {
    double left = seconds;
    double r = p / supply;
    if (r < b) {
      double choked = Math.min(left, (b - r) / fillRate);
      integral += supply * (r + 0.5 * fillRate * choked) * choked;
      r += fillRate * choked;
      left -= choked;
      if (left <= 0.0) {
        return supply * r;
      }
    }
    double c = 1.0 - b;
    double theta = Math.asin(Math.min(1.0, Math.max(0.0, (r - b) / c)));
    double speed = fillRate / c;
    double end = Math.min(0.5 * Math.PI, theta + speed * left);
    double moving = (end - theta) / speed;
    integral += supply * (b * moving + c * (Math.cos(theta) - Math.cos(end)) / speed);
    double reached = supply * (b + c * Math.sin(end));
    integral += reached * (left - moving);
    return reached;
  }

  private double empty(double p, double seconds, double rate) {
    double left = seconds;
    double q = p;
    double chokedAbove = ambient / b;
    if (q > chokedAbove) {
      double choked = Math.min(left, Math.log(q / chokedAbove) / rate);
      double after = q * Math.exp(-rate * choked);
      integral += (q - after) / rate;
      q = after;
      left -= choked;
      if (left <= 0.0) {
        return q;
      }
    }
    double c = 1.0 - b;
    double theta = Math.asin(Math.min(1.0, Math.max(0.0, (ambient / q - b) / c)));
    double speed = rate / c;
    double horizon = Math.min(left, (0.5 * Math.PI - theta) / (speed * (b + c * Math.sin(theta))));
    int steps = Math.max(1, (int) Math.ceil(speed * horizon / THETA_STEP));
    double dt = horizon / steps;
    for (int i = 0; i < steps && theta < 0.5 * Math.PI; i++) {
      double u1 = b + c * Math.sin(theta);
      double k1 = speed * u1;
      double u2 = b + c * Math.sin(theta + 0.5 * dt * k1);
      double k2 = speed * u2;
      double u3 = b + c * Math.sin(theta + 0.5 * dt * k2);
      double k3 = speed * u3;
      double u4 = b + c * Math.sin(theta + dt * k3);
      double next = theta + dt / 6.0 * (k1 + 2.0 * (k2 + k3) + speed * u4);
      if (next >= 0.5 * Math.PI) {
        double moving = dt * (0.5 * Math.PI - theta) / (next - theta);
        integral += ambient * moving * 0.5 * (1.0 / u1 + 1.0);
        left -= moving;
        theta = 0.5 * Math.PI;
      } else {
        integral += ambient * dt / 6.0 * (1.0 / u1 + 2.0 / u2 + 2.0 / u3 + 1.0 / u4);
        left -= dt;
        theta = next;
      }
    }
    if (theta >= 0.5 * Math.PI) {
      integral += ambient * Math.max(0.0, left);
      return ambient;
    }
    return ambient / (b + c * Math.sin(theta));
  }
}
