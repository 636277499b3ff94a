package org.boostwright.core.table;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;

/** Break points: refused, located, clamped. */
class AxisTest {
  private final Axis axis = new Axis(10.0, 20.0, 40.0, 80.0);

  @Test
  void badAxesAreRefusedWithThePointThatIsWrong() {
    assertThatIllegalArgumentException().isThrownBy(() -> new Axis());
    assertThatIllegalArgumentException()
        .isThrownBy(() -> new Axis(1.0, Double.NaN))
        .withMessageContaining("point 2");
    assertThatIllegalArgumentException()
        .isThrownBy(() -> new Axis(Double.POSITIVE_INFINITY))
        .withMessageContaining("point 1");
    assertThatIllegalArgumentException()
        .isThrownBy(() -> new Axis(1.0, 2.0, 2.0))
        .withMessageContaining("point 3");
    assertThatIllegalArgumentException().isThrownBy(() -> new Axis(2.0, 1.0));
  }

  @Test
  void aValueIsLocatedInTheIntervalThatBeginsAtOrBelowIt() {
    double[] at = {-1e300, 9.9, 10.0, 19.9, 20.0, 39.9, 40.0, 79.9, 80.0, 1e300};
    int[] interval = {0, 0, 0, 0, 1, 1, 2, 2, 2, 2};
    for (int i = 0; i < at.length; i++) {
      assertThat(axis.locate(at[i])).as("%s", at[i]).isEqualTo(interval[i]);
    }
    assertThat(axis.locate(Double.NaN)).isZero();
    assertThat(new Axis(5.0).locate(7.0)).isZero();
    assertThat(new Axis(5.0, 6.0).locate(7.0)).isZero();
  }

  @Test
  void theFractionIsClampedToItsInterval() {
    assertThat(axis.fraction(1, 25.0)).isCloseTo(0.25, within(1e-12));
    assertThat(axis.fraction(0, 9.0)).isEqualTo(0.0);
    assertThat(axis.fraction(2, 81.0)).isEqualTo(1.0);
    assertThat(axis.fraction(2, 80.0)).isEqualTo(1.0);
    assertThat(axis.fraction(1, Double.NaN)).isEqualTo(0.0);
    assertThat(axis.fraction(0, Double.POSITIVE_INFINITY)).isEqualTo(1.0);
    assertThat(new Axis(5.0).fraction(0, 7.0)).isEqualTo(0.0);
    assertThat(axis.fraction(3, 90.0)).as("last point has no interval").isEqualTo(0.0);
  }

  @Test
  void itContainsItsEndsAndNothingBeyond() {
    assertThat(axis.contains(10.0)).isTrue();
    assertThat(axis.contains(80.0)).isTrue();
    assertThat(axis.contains(Math.nextDown(10.0))).isFalse();
    assertThat(axis.contains(Math.nextUp(80.0))).isFalse();
    assertThat(axis.contains(Double.NaN)).isFalse();
  }

  @Test
  void pointsAreCopiedInAndOut() {
    double[] given = {1.0, 2.0};
    Axis own = new Axis(given);
    given[0] = 9.0;
    own.points()[1] = 9.0;
    assertThat(own.points()).containsExactly(1.0, 2.0);
    assertThat(own.size()).isEqualTo(2);
    assertThat(own.point(1)).isEqualTo(2.0);
  }

  @Test
  void equalAxesHaveEqualPoints() {
    assertThat(axis).isEqualTo(new Axis(10.0, 20.0, 40.0, 80.0));
    assertThat(axis.hashCode()).isEqualTo(new Axis(10.0, 20.0, 40.0, 80.0).hashCode());
    assertThat(axis).isNotEqualTo(new Axis(10.0, 20.0, 40.0, 81.0)).isNotEqualTo("axis");
  }
}
