package org.boostwright.rig.logs.gains;

import org.boostwright.rig.logs.ParallelPid;
import org.boostwright.rig.logs.identify.Fopdt;

/**
 * AMIGO gains for a first-order answer with dead time, as a second opinion. Source: Astrom and
 * Hagglund, <i>Revisiting the Ziegler-Nichols step response method for PID control</i>, J. Process
 * Control 14, 2004, 635-650.
 *
 * @param gain K, output units per input unit
 * @param integralSeconds Ti, s
 * @param derivativeSeconds Td, s; 0 without
 */
public record Amigo(double gain, double integralSeconds, double derivativeSeconds) {

  /** PI: {@code K = 0.15/k + (0.35 - L T/(L+T)^2) T/(k L)}, {@code Ti = 0.35 L + 13 L T^2/(T^2 + 12 L T + 7 L^2)}. */
  public static Amigo pi(Fopdt model) {
    double k = model.gain();
    double t = model.tauSeconds();
    double l = model.deadSeconds();
    double gain = 0.15 / k + (0.35 - l * t / ((l + t) * (l + t))) * t / (k * l);
    double integral = 0.35 * l + 13.0 * l * t * t / (t * t + 12.0 * l * t + 7.0 * l * l);
    return new Amigo(gain, integral, 0.0);
  }

  /**
   * PID: {@code K = (0.2 + 0.45 T/L)/k}, {@code Ti = L (0.4 L + 0.8 T)/(L + 0.1 T)}, {@code Td = 0.5
   * L T/(0.3 L + T)}.
   */
  public static Amigo pid(Fopdt model) {
    double t = model.tauSeconds();
    double l = model.deadSeconds();
    return new Amigo(
        (0.2 + 0.45 * t / l) / model.gain(),
        l * (0.4 * l + 0.8 * t) / (l + 0.1 * t),
        0.5 * l * t / (0.3 * l + t));
  }

  /** The same law as the controller would use it. */
  ParallelPid parallel(double filterSeconds) {
    return new ParallelPid(gain, gain / integralSeconds, gain * derivativeSeconds, filterSeconds);
  }
}
