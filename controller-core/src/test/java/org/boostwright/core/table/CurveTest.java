package org.boostwright.core.table;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.within;

import java.util.Random;
import org.junit.jupiter.api.Test;

/** Piecewise linear curves against the two-point form of a straight line. */
class CurveTest {
  private final Curve curve = new Curve(new Axis(0.0, 10.0, 30.0), 5.0, 25.0, -15.0);

  @Test
  void badCurvesAreRefused() {
    assertThatIllegalArgumentException().isThrownBy(() -> new Curve(new Axis(1.0, 2.0), 1.0));
    assertThatIllegalArgumentException()
        .isThrownBy(() -> new Curve(new Axis(1.0, 2.0), 1.0, Double.NaN));
    assertThatIllegalArgumentException()
        .isThrownBy(() -> new Curve(new Axis(1.0), Double.NEGATIVE_INFINITY));
  }

  @Test
  void itPassesThroughItsPointsAndIsLinearBetween() {
    Random random = new Random(4);
    double[] x = {0.0, 10.0, 30.0};
    double[] y = {5.0, 25.0, -15.0};
    for (int i = 0; i < 3; i++) {
      assertThat(curve.at(x[i])).isCloseTo(y[i], within(1e-12));
    }
    for (int n = 0; n < 1_000; n++) {
      int i = random.nextInt(2);
      double at = x[i] + random.nextDouble() * (x[i + 1] - x[i]);
      double line = (y[i] * (x[i + 1] - at) + y[i + 1] * (at - x[i])) / (x[i + 1] - x[i]);
      assertThat(curve.at(at)).isCloseTo(line, within(1e-12));
    }
  }

  @Test
  void itClampsOutsideItsEnds() {
    assertThat(curve.at(-1.0)).isEqualTo(5.0);
    assertThat(curve.at(Double.NEGATIVE_INFINITY)).isEqualTo(5.0);
    assertThat(curve.at(31.0)).isEqualTo(-15.0);
    assertThat(curve.at(Double.POSITIVE_INFINITY)).isEqualTo(-15.0);
    assertThat(curve.at(Double.NaN)).isFinite();
  }

  @Test
  void aConstantIsTheSameEverywhere() {
    for (double x : new double[] {-1e300, 0.0, 3.0, 1e300, Double.NaN}) {
      assertThat(Curve.constant(7.5).at(x)).isEqualTo(7.5);
    }
  }

  @Test
  void valuesAreCopiedInAndOut() {
    double[] given = {1.0, 2.0};
    Curve own = new Curve(new Axis(0.0, 1.0), given);
    given[0] = 9.0;
    own.values()[1] = 9.0;
    assertThat(own.values()).containsExactly(1.0, 2.0);
    assertThat(own.value(1)).isEqualTo(2.0);
    assertThat(own.axis()).isEqualTo(new Axis(0.0, 1.0));
  }

  @Test
  void equalCurvesHaveEqualNumbers() {
    Curve same = new Curve(new Axis(0.0, 10.0, 30.0), 5.0, 25.0, -15.0);
    assertThat(curve).isEqualTo(same);
    assertThat(curve.hashCode()).isEqualTo(same.hashCode());
    assertThat(curve)
        .isNotEqualTo(new Curve(new Axis(0.0, 10.0, 31.0), 5.0, 25.0, -15.0))
        .isNotEqualTo(new Curve(new Axis(0.0, 10.0, 30.0), 5.0, 25.0, -16.0))
        .isNotEqualTo("curve");
  }
}
