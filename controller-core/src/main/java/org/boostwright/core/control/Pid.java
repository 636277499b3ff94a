package org.boostwright.core.control;

/**
 * A PID law with derivative on the measurement, back-calculation anti-windup and bumpless start.
 *
 * <p>{@code u = kp*e + I - kd*dy/dt}, {@code dI/dt = ki*e + (applied - u)/tracking}, e = set point
 * - measurement. The derivative is filtered by a first-order lag. Sources: Astrom and Hagglund,
 * <i>Advanced PID Control</i>, ISA 2006, sections 3.4 and 3.5. At dt = 0 the output is recomputed
 * and no state moves. An input that is not finite leaves all state as it was and gives NaN, which
 * the gate turns into rest.
 */
public final class Pid {
  private double integral;
  private double derivative;
  private double lastMeasurement;
  private boolean hasMeasurement;
  private double unlimited;

  /** Forgets everything. */
  public void reset() {
    integral = 0.0;
    derivative = 0.0;
    hasMeasurement = false;
    unlimited = 0.0;
  }

  /**
   * Moves the derivative's filter without an output, so that it is right when the law takes over.
   *
   * @param measurement controlled value
   * @param dt seconds since the last call, not negative
   * @param filterSeconds time constant of the derivative's filter, s
   */
  public void observe(double measurement, double dt, double filterSeconds) {
    if (!Double.isFinite(measurement)) {
      return;
    }
    if (hasMeasurement && dt > 0.0) {
      double raw = (measurement - lastMeasurement) / dt;
      derivative += dt / (dt + filterSeconds) * (raw - derivative);
    }
    hasMeasurement = true;
    lastMeasurement = measurement;
  }

  /** Sets the integral so that the next output is {@code output} for the present error. */
  public void startFrom(double output, double error, double kp, double kd) {
    integral = output - kp * error + kd * derivative;
  }

  /**
   * The output before any limit, from the state as it stands; call {@link #observe} before and
   * {@link #integrate} after it.
   */
  public double output(double error, double kp, double kd) {
    unlimited = kp * error + integral - kd * derivative;
    return unlimited;
  }

  /**
   * Moves the integral.
   *
   * @param error set point - measurement
   * @param ki integral gain per second; 0 holds
   * @param applied what the limits let through of the last {@link #output}
   * @param trackingSeconds anti-windup time constant, s; infinite switches back-calculation off
   * @param dt seconds, not negative
   */
  public void integrate(
      double error, double ki, double applied, double trackingSeconds, double dt) {
    double next = integral + dt * (ki * error + (applied - unlimited) / trackingSeconds);
    if (Double.isFinite(next)) {
      integral = next;
    }
  }

  /** Integral part of the output. */
  public double integral() {
    return integral;
  }

  /** Filtered rate of change of the measurement, per second. */
  public double derivative() {
    return derivative;
  }
}
