package org.boostwright.core.settings;

import org.boostwright.core.table.Curve;

/**
 * Pressure feedback: a PID trim added to base duty.
 *
 * <p>{@code u = base + kp*e + integral(ki*e + (applied - u)/tracking) - kd*d(map)/dt}, e = target -
 * MAP. Back-calculation anti-windup after Astrom and Hagglund, <i>Advanced PID Control</i>, ISA
 * 2006, section 3.5.
 *
 * @param enabled off: base duty only
 * @param kpDutyPerKpa proportional gain over engine speed, duty fraction per kPa
 * @param kiDutyPerKpaSecond integral gain over engine speed, duty fraction per kPa and second
 * @param kdDutySecondPerKpa derivative gain over engine speed, duty fraction per kPa/s
 * @param trackingSeconds anti-windup time constant, s
 * @param derivativeFilterSeconds time constant of the derivative's filter, s
 * @param activeWithinKpa the integrator moves only while the error is smaller than this, kPa
 */
public record FeedbackSettings(
    boolean enabled,
    Curve kpDutyPerKpa,
    Curve kiDutyPerKpaSecond,
    Curve kdDutySecondPerKpa,
    double trackingSeconds,
    double derivativeFilterSeconds,
    double activeWithinKpa) {}
