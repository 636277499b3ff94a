package org.boostwright.core.bench.model;

/**
 * Solves for the pressure that repeats itself from period to period: vent for a while, fill for a
 * while.
 *
 * <p>With {@code r = p/supply = b + (1 - b)*sin(theta)} the subsonic filling law becomes {@code
 * dtheta/dt = rate/(1 - b)}, so filling is exact; with {@code u = ambient/p} written the same way
 * venting becomes {@code dtheta/dt = rate*u/(1 - b)}, smooth up to the end, and takes a few
 * Runge-Kutta steps. A leak during filling counts as a share of the choked filling flow that is
 * constant over half a filling.
 */
final class PeriodicLine {
  private static final double THETA_STEP = 0.3;
  private static final double TOLERANCE_KPA = 1e-4;
  private static final int MAX_ITERATIONS = 60;

  private final double fillB;
  private final double ventB;
  private final double fillRate;
  private final double ventRate;
  private final double leakRate;
  private final double supply;
  private final double ambient;
  private final double rest;

  /** Integral of pressure over the time since it was last reset, kPa s. */
  private double integral;

  PeriodicLine(ValveModel valve, double supplyKpaAbs, double ambientKpaAbs) {
    this.fillB = valve.fillCriticalRatio();
    this.ventB = valve.ventCriticalRatio();
    this.fillRate = valve.fillRatePerSecond();
    this.ventRate = valve.ventRatePerSecond();
    this.leakRate = valve.leakRatePerSecond();
    this.supply = supplyKpaAbs;
    this.ambient = ambientKpaAbs;
    this.rest = valve.restKpaAbs(supplyKpaAbs, ambientKpaAbs);
  }

  /** Periodic solution by regula falsi with the Illinois rule: one period is a contraction. */
  SteadyLine solve(double ventSeconds, double fillSeconds) {
    double low = ambient;
    double high = rest;
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

  /** Pressure after venting for a while, kPa absolute. */
  double vented(double p, double seconds) {
    return empty(p, seconds, ventRate + leakRate);
  }

  /** Pressure after filling for a while, kPa absolute. */
  double filled(double p, double seconds) {
    return fill(p, seconds);
  }

  private double onePeriod(double p, double ventSeconds, double fillSeconds) {
    return fill(empty(p, ventSeconds, ventRate + leakRate), fillSeconds);
  }

  private double fill(double p, double seconds) {
    if (leakRate == 0.0) {
      return fill(p, seconds, 0.0);
    }
    double half = 0.5 * seconds;
    return fillLeaking(fillLeaking(p, half), half);
  }

  private double fillLeaking(double p, double seconds) {
    double before = integral;
    double reached = fill(p, seconds, leakShare(p));
    integral = before;
    return fill(p, seconds, leakShare(0.25 * p + 0.75 * reached));
  }

  private double fill(double p, double seconds, double lost) {
    double left = seconds;
    double r = p / supply;
    double rate = fillRate * (1.0 - lost);
    if (r < fillB) {
      double choked = Math.min(left, (fillB - r) / rate);
      integral += supply * (r + 0.5 * rate * choked) * choked;
      r += rate * choked;
      left -= choked;
      if (left <= 0.0) {
        return supply * r;
      }
    }
    double c = 1.0 - fillB;
    double theta = Math.asin(Math.min(1.0, Math.max(0.0, (r - fillB) / c)));
    return lost > 0.0 ? fillAgainstLeak(theta, left, lost) : fillTight(theta, left);
  }

  private double fillTight(double theta, double seconds) {
    double c = 1.0 - fillB;
    double speed = fillRate / c;
    double end = Math.min(0.5 * Math.PI, theta + speed * seconds);
    double moving = (end - theta) / speed;
    integral += supply * (fillB * moving + c * (Math.cos(theta) - Math.cos(end)) / speed);
    double reached = supply * (fillB + c * Math.sin(end));
    integral += reached * (seconds - moving);
    return reached;
  }

  /**
   * {@code dtheta/dt = speed*(1 - k/cos(theta))} with the leak's share k held constant. With {@code
   * tan(theta/2) = s*tanh(x/2)}, {@code s^2 = (1 - k)/(1 + k)}, time is {@code (theta + k*x/sqrt(1
   * - k^2))/speed}: concave in x, so Newton's method climbs to the solution.
   */
  private double fillAgainstLeak(double theta, double seconds, double leakShare) {
    double k = Math.min(leakShare, 0.95);
    double c = 1.0 - fillB;
    double speed = fillRate / c;
    double s = Math.sqrt((1.0 - k) / (1.0 + k));
    double slope = k / Math.sqrt(1.0 - k * k);
    double start = Math.min(Math.tan(0.5 * theta) / s, 1.0 - 1e-9);
    double x = 2.0 * atanh(start);
    double before = sineIntegral(x, s, k);
    double goal = 2.0 * Math.atan(s * start) + slope * x + speed * seconds;
    double tangent = s * start;
    for (int i = 0; i < 40; i++) {
      double tanh = Math.tanh(0.5 * x);
      tangent = s * tanh;
      double missing = goal - 2.0 * Math.atan(tangent) - slope * x;
      if (missing < 1e-9) {
        break;
      }
      x += missing / (slope + s * (1.0 - tanh * tanh) / (1.0 + tangent * tangent));
    }
    integral += supply * (fillB * seconds + c / speed * (sineIntegral(x, s, k) - before));
    return supply * (fillB + c * 2.0 * tangent / (1.0 + tangent * tangent));
  }

  /** Integral of sin(theta) over speed times time: {@code -cos(theta) - k*ln(cos(theta) - k)}. */
  private static double sineIntegral(double x, double s, double k) {
    double tangent = s * Math.tanh(0.5 * x);
    double square = tangent * tangent;
    double logCosh = 0.5 * x + Math.log1p(Math.exp(-x)) - Math.log(2.0);
    double logRest = Math.log((1.0 + k) * s * s / (1.0 + square)) - 2.0 * logCosh;
    return -(1.0 - square) / (1.0 + square) - k * logRest;
  }

  private static double atanh(double y) {
    return 0.5 * Math.log((1.0 + y) / (1.0 - y));
  }

  /** Leak over the choked filling flow. */
  private double leakShare(double p) {
    return p <= ambient
        ? 0.0
        : leakRate * p * ValveModel.flowFunction(ambient / p, ventB) / (fillRate * supply);
  }

  private double empty(double p, double seconds, double rate) {
    double left = seconds;
    double q = p;
    double chokedAbove = ambient / ventB;
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
    double c = 1.0 - ventB;
    double theta = Math.asin(Math.min(1.0, Math.max(0.0, (ambient / q - ventB) / c)));
    double speed = rate / c;
    double horizon =
        Math.min(left, (0.5 * Math.PI - theta) / (speed * (ventB + c * Math.sin(theta))));
    int steps = Math.max(1, (int) Math.ceil(speed * horizon / THETA_STEP));
    double dt = horizon / steps;
    for (int i = 0; i < steps && theta < 0.5 * Math.PI; i++) {
      double u1 = ventB + c * Math.sin(theta);
      double k1 = speed * u1;
      double u2 = ventB + c * Math.sin(theta + 0.5 * dt * k1);
      double k2 = speed * u2;
      double u3 = ventB + c * Math.sin(theta + 0.5 * dt * k2);
      double k3 = speed * u3;
      double u4 = ventB + c * Math.sin(theta + dt * k3);
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
    return ambient / (ventB + c * Math.sin(theta));
  }
}
