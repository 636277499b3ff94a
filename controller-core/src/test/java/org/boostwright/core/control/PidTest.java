package org.boostwright.core.control;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;

/**
 * The law against a reference loop: plant gain 1, lag 1.2 s, dead time 0.15 s, unit step, SIMC
 * gains (Skogestad, J. Process Control 13, 2003, 291-309) Kc = 4, Ti = 1.2 s. The figures of the
 * loop were computed independently from these equations.
 */
class PidTest {
  private static final double DT = 0.001;
  private static final double KC = 4.0;
  private static final double TI = 1.2;

  private record Response(
      double riseSeconds, double overshootPct, double settleSeconds, double iae) {}

  private static Response stepResponse(double limit, double trackingSeconds) {
    Pid pid = new Pid();
    int delay = 150;
    double[] line = new double[delay];
    double y = 0.0;
    double t10 = Double.NaN;
    double t90 = Double.NaN;
    double peak = 0.0;
    double settled = 0.0;
    double iae = 0.0;
    int n = 12_000;
    for (int i = 0; i < n; i++) {
      double error = 1.0 - y;
      pid.observe(y, DT, 0.01);
      double wanted = pid.output(error, KC, 0.0);
      double applied = Math.max(-limit, Math.min(limit, wanted));
      pid.integrate(error, KC / TI, applied, trackingSeconds, DT);
      double u = line[i % delay];
      line[i % delay] = applied;
      y += (1.0 - Math.exp(-DT / 1.2)) * (u - y);
      double t = (i + 1) * DT;
      iae += Math.abs(1.0 - y) * DT;
      if (Double.isNaN(t10) && y >= 0.1) {
        t10 = t;
      }
      if (Double.isNaN(t90) && y >= 0.9) {
        t90 = t;
      }
      peak = Math.max(peak, y);
      if (Math.abs(y - 1.0) > 0.02) {
        settled = t;
      }
    }
    return new Response(t90 - t10, (peak - 1.0) * 100.0, settled, iae);
  }

  @Test
  void unlimitedLoopHasTheReferenceRiseOvershootSettlingAndError() {
    Response r = stepResponse(1e9, Double.POSITIVE_INFINITY);
    assertThat(r.riseSeconds()).isCloseTo(0.286, within(0.01));
    assertThat(r.overshootPct()).isCloseTo(4.1, within(0.4));
    assertThat(r.settleSeconds()).isCloseTo(0.91, within(0.03));
    assertThat(r.iae()).isCloseTo(0.325, within(0.005));
  }

  @Test
  void limitedLoopWithoutAntiWindupOvershootsAndSettlesLate() {
    Response r = stepResponse(1.5, Double.POSITIVE_INFINITY);
    assertThat(r.overshootPct()).isCloseTo(22.5, within(0.4));
    assertThat(r.settleSeconds()).isCloseTo(5.23, within(0.05));
  }

  @Test
  void backCalculationTakesTheWindupAway() {
    Response r = stepResponse(1.5, TI);
    assertThat(r.overshootPct()).isCloseTo(0.6, within(0.2));
    assertThat(r.settleSeconds()).isCloseTo(1.45, within(0.03));
  }

  @Test
  void derivativeActsOnTheMeasurementAndNotOnTheSetPoint() {
    Pid pid = new Pid();
    for (int i = 0; i < 200; i++) {
      pid.observe(5.0, DT, 0.01);
    }
    double before = pid.output(1.0, 0.0, 3.0);
    double afterSetPointStep = pid.output(100.0, 0.0, 3.0);
    assertThat(afterSetPointStep).isEqualTo(before).isZero();
    for (int i = 1; i <= 200; i++) {
      pid.observe(5.0 + 2.0 * i * DT, DT, 0.01);
    }
    assertThat(pid.derivative()).isCloseTo(2.0, within(1e-3));
    assertThat(pid.output(0.0, 0.0, 3.0)).isCloseTo(-6.0, within(1e-2));
  }

  @Test
  void startFromMakesTheFirstOutputTheGivenOne() {
    Pid pid = new Pid();
    pid.observe(1.0, DT, 0.01);
    pid.observe(1.1, DT, 0.01);
    pid.startFrom(0.37, 4.0, 0.5, 0.2);
    assertThat(pid.output(4.0, 0.5, 0.2)).isCloseTo(0.37, within(1e-12));
  }

  @Test
  void inputsThatAreNotFiniteMoveNoState() {
    Pid pid = new Pid();
    pid.observe(1.0, DT, 0.01);
    pid.output(1.0, 1.0, 0.0);
    pid.integrate(1.0, 1.0, 1.0, 1.0, DT);
    double integral = pid.integral();
    double derivative = pid.derivative();
    pid.observe(Double.NaN, DT, 0.01);
    pid.output(Double.NaN, 1.0, 0.0);
    pid.integrate(Double.NaN, 1.0, Double.NaN, 1.0, DT);
    pid.integrate(Double.POSITIVE_INFINITY, 1.0, 0.0, 1.0, DT);
    assertThat(pid.integral()).isEqualTo(integral);
    assertThat(pid.derivative()).isEqualTo(derivative);
  }

  @Test
  void zeroTimeRecomputesAndMovesNothing() {
    Pid pid = new Pid();
    pid.observe(1.0, DT, 0.01);
    pid.observe(9.0, 0.0, 0.01);
    assertThat(pid.derivative()).isZero();
    pid.output(2.0, 1.0, 0.0);
    pid.integrate(2.0, 5.0, 0.0, 1.0, 0.0);
    assertThat(pid.integral()).isZero();
  }
}
