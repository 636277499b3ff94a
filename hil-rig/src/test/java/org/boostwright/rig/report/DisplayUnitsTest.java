package org.boostwright.rig.report;

import static org.assertj.core.api.Assertions.assertThat;

import org.boostwright.core.settings.PressureUnit;
import org.boostwright.core.settings.UnitSettings;
import org.boostwright.rig.result.Units;
import org.junit.jupiter.api.Test;

/** Factors: NIST Special Publication 811 (2008), appendix B.8: 1 psi = 6.894757 kPa. */
class DisplayUnitsTest {
  private static final DisplayUnits KPA = new DisplayUnits(UnitSettings.KPA_ABSOLUTE);
  private static final DisplayUnits PSI =
      new DisplayUnits(new UnitSettings(PressureUnit.PSI, true));
  private static final DisplayUnits BAR =
      new DisplayUnits(new UnitSettings(PressureUnit.BAR, false));

  @Test
  void absoluteBecomesGaugeOnlyWhereWanted() {
    assertThat(KPA.text(180.0, Units.KPA_ABS)).isEqualTo("180 kPa absolute");
    assertThat(PSI.text(101.325 + 6.894757, Units.KPA_ABS)).isEqualTo("1.00 psi gauge");
    assertThat(BAR.text(180.0, Units.KPA_ABS)).isEqualTo("1.800 bar absolute");
  }

  @Test
  void gaugeByNatureStaysGaugeAndDifferencesHaveNoReference() {
    assertThat(KPA.text(82.7, Units.KPA_GAUGE)).isEqualTo("82.7 kPa gauge");
    assertThat(PSI.text(82.737, Units.KPA_GAUGE)).isEqualTo("12.00 psi gauge");
    assertThat(PSI.text(-3.447, Units.KPA)).isEqualTo("-0.50 psi");
  }

  @Test
  void otherUnitsKeepSensibleDecimals() {
    assertThat(KPA.text(0.2734, Units.FRACTION)).isEqualTo("27.3 %");
    assertThat(KPA.text(3.5, Units.MILLISECONDS)).isEqualTo("3.50 ms");
    assertThat(KPA.text(17, Units.COUNT)).isEqualTo("17");
    assertThat(KPA.text(6500, Units.RPM)).isEqualTo("6500 rpm");
    assertThat(KPA.text(-0.00000001, Units.KPA)).isEqualTo("0.0 kPa");
    assertThat(KPA.text(Double.NaN, Units.KPA)).isEqualTo("–");
    assertThat(KPA.text(Double.POSITIVE_INFINITY, Units.KPA)).isEqualTo("–");
  }
}
