package org.boostwright.core.monitor;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.HashSet;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

/** Every fault has an answer at the roadside. */
class RoadsideTest {
  @ParameterizedTest
  @EnumSource(FaultCode.class)
  void everyFaultSaysWhatIsWrongWhatToCheckAndWhetherToDriveOn(FaultCode code) {
    int blinks = Roadside.blinks(code);
    assertThat(blinks).isBetween(1, 8);
    assertThat(Roadside.wrong(blinks)).isNotBlank().isNotEqualTo("unknown");
    assertThat(Roadside.order(code)).isNotBlank().isNotEqualTo("every plug and hose");
    assertThat(Roadside.driveOn(blinks)).isNotBlank();
  }

  @ParameterizedTest
  @EnumSource(value = FaultCode.class, names = "MAP_.*", mode = EnumSource.Mode.MATCH_ALL)
  void everyFaultOfThePressureSensorSendsToSensorWireAndHose(FaultCode code) {
    assertThat(Roadside.wrong(Roadside.blinks(code))).contains("pressure sensor");
  }

  @Test
  void afterACutTheHoseComesFirstThenRodSourceSensorValve() {
    String order = Roadside.order(FaultCode.OVERBOOST);
    assertThat(order.indexOf("actuator hose")).isZero();
    assertThat(order.indexOf("rod")).isLessThan(order.indexOf("source hose"));
    assertThat(order.indexOf("source hose")).isLessThan(order.indexOf("pressure sensor"));
    assertThat(order.indexOf("pressure sensor")).isLessThan(order.indexOf("valve (clicks"));
  }

  @Test
  void patternsCanBeToldApart() {
    Set<String> all = new HashSet<>();
    for (int blinks = 1; blinks <= 8; blinks++) {
      all.add(Roadside.wrong(blinks));
    }
    assertThat(all).hasSize(8);
    assertThat(Roadside.wrong(9)).isEqualTo("unknown");
  }
}
