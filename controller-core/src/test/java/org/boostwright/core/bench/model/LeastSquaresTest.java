package org.boostwright.core.bench.model;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.hipparchus.linear.RealMatrix;
import org.hipparchus.optim.nonlinear.vector.leastsquares.LeastSquaresBuilder;
import org.hipparchus.optim.nonlinear.vector.leastsquares.LeastSquaresOptimizer;
import org.hipparchus.optim.nonlinear.vector.leastsquares.LevenbergMarquardtOptimizer;
import org.junit.jupiter.api.Test;

/** The core's least squares against certified values and against Hipparchus. */
class LeastSquaresTest {
  // NIST Statistical Reference Datasets, nonlinear regression, Misra1a (Misra 1978), from memory.
  private static final double[] X = {
    77.6, 114.9, 141.1, 190.8, 239.9, 289.0, 332.8, 378.4, 434.8, 477.3, 536.8, 593.1, 689.1, 760.0
  };
  private static final double[] Y = {
    10.07, 14.73, 17.94, 23.93, 29.61, 35.18, 40.02, 44.82, 50.76, 55.05, 61.01, 66.40, 75.47, 81.78
  };

  @Test
  void misra1aMeetsTheCertifiedValuesFromBothStarts() {
    Residuals residuals =
        (b, r) -> {
          for (int i = 0; i < X.length; i++) {
            r[i] = Y[i] - b[0] * (1.0 - Math.exp(-b[1] * X[i]));
          }
        };
    for (double[] start : new double[][] {{500.0, 1e-4}, {250.0, 5e-4}}) {
      FitResult fit = new LeastSquares(residuals, X.length).fit(start, new double[] {100, 1e-4});
      double spread = Math.sqrt(fit.reducedChiSquare());
      assertThat(fit.converged()).isTrue();
      assertThat(fit.parameters()[0]).isCloseTo(238.94212918, within(1e-4));
      assertThat(fit.parameters()[1]).isCloseTo(5.5015643181e-4, within(1e-9));
      assertThat(fit.chiSquare()).isCloseTo(0.12455138894, within(1e-8));
      assertThat(fit.sigma(0) * spread).isCloseTo(2.7070075241, within(1e-4));
      assertThat(fit.sigma(1) * spread).isCloseTo(7.2668688436e-6, within(1e-10));
    }
  }

  @Test
  void valveFitAgreesWithHipparchusInValueAndSpread() {
    double[] duties = {0.2, 0.25, 0.3, 0.35, 0.4, 0.5, 0.6, 0.65};
    double[] measured = new double[duties.length];
    ValveModel truth = ValveModelTest.a01();
    for (int i = 0; i < duties.length; i++) {
      measured[i] =
          truth.steadyInside(31, duties[i], 184.0, 101.3).meanKpaAbs() + 0.3 * Math.sin(7.0 * i);
    }
    Residuals residuals =
        (x, r) -> {
          ValveModel guess =
              new ValveModel(0.0035, Math.exp(x[0]), Math.exp(x[1]), Math.exp(x[2]), 0.0, 0.3);
          for (int i = 0; i < duties.length; i++) {
            r[i] =
                (guess.steadyInside(31, duties[i], 184.0, 101.3).meanKpaAbs() - measured[i]) / 0.4;
          }
        };
    double[] start = {Math.log(0.006), Math.log(8.0), Math.log(25.0)};
    FitResult own =
        new LeastSquares(residuals, duties.length).fit(start, new double[] {1.0, 1.0, 1.0});

    LeastSquaresOptimizer.Optimum theirs =
        new LevenbergMarquardtOptimizer()
            .optimize(
                new LeastSquaresBuilder()
                    .start(start)
                    .target(new double[duties.length])
                    .model(
                        x -> evaluate(residuals, x, duties.length),
                        x -> jacobian(residuals, x, duties.length))
                    .maxEvaluations(1000)
                    .maxIterations(1000)
                    .build());
    RealMatrix covariance = theirs.getCovariances(1e-14);
    assertThat(own.chiSquare()).isCloseTo(theirs.getCost() * theirs.getCost(), within(1e-6));
    for (int i = 0; i < 3; i++) {
      double sigma = Math.sqrt(covariance.getEntry(i, i));
      assertThat(own.parameters()[i])
          .isCloseTo(theirs.getPoint().getEntry(i), within(1e-3 * sigma));
      assertThat(own.sigma(i)).isCloseTo(sigma, within(0.01 * sigma));
    }
  }

  private static double[] evaluate(Residuals residuals, double[] x, int count) {
    double[] r = new double[count];
    residuals.evaluate(x, r);
    return r;
  }

  private static double[][] jacobian(Residuals residuals, double[] x, int count) {
    double[] steps = {1e-5, 1e-5, 1e-5};
    double[][] j = new double[count][x.length];
    for (int k = 0; k < x.length; k++) {
      double[] up = x.clone();
      double[] down = x.clone();
      up[k] += steps[k];
      down[k] -= steps[k];
      double[] above = evaluate(residuals, up, count);
      double[] below = evaluate(residuals, down, count);
      for (int i = 0; i < count; i++) {
        j[i][k] = (above[i] - below[i]) / (2.0 * steps[k]);
      }
    }
    return j;
  }

  @Test
  void aParameterWithoutEffectIsUnknownAndHarmsNothing() {
    Residuals residuals =
        (x, r) -> {
          for (int i = 0; i < 4; i++) {
            r[i] = x[0] * i - 2.0 * i + (i % 2);
          }
        };
    FitResult fit =
        new LeastSquares(residuals, 4).fit(new double[] {0.0, 5.0}, new double[] {1.0, 1.0});
    assertThat(fit.parameters()[0]).isCloseTo(2.0 - 4.0 / 14.0, within(1e-9));
    assertThat(fit.sigma(1)).isInfinite();
  }
}
