package org.boostwright.rig.electrical;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.boostwright.core.AnalogChannel;
import org.boostwright.core.Inputs;
import org.boostwright.rig.link.WireObserver;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** The rig on real wires, against a folder and a program that stand in for the kernel's. */
class ElectricalWiresTest {
  private static final long MILLI = 1_000_000L;

  @TempDir Path folder;

  /** An MCP4725 on 5 V: 5000 mV over 4096 steps. */
  @BeforeEach
  void plugIn() throws IOException {
    Files.writeString(folder.resolve("out_voltage0_raw"), "2048\n");
    Files.writeString(folder.resolve("out_voltage_scale"), "1.220703125\n");
    Files.writeString(folder.resolve("out_voltage0_powerdown"), "1\n");
  }

  private String code() throws IOException {
    return Files.readString(folder.resolve("out_voltage0_raw")).strip();
  }

  @Test
  void theConverterIsOpenedAtZeroVoltsAndAwake() throws IOException {
    SensorVoltage voltage = new SensorVoltage(folder);
    assertThat(code()).isEqualTo("0");
    assertThat(folder.resolve("out_voltage0_powerdown")).content().isEqualTo("0");
    assertThat(voltage.topVolts()).isCloseTo(4.9988, within(1e-4));
  }

  @ParameterizedTest
  @CsvSource({
    // Microchip DS22039: Vout = Vdd * code / 4096.
    "2.5, 2048",
    "1.0, 819",
    "0.5, 410",
    "4.9988, 4095",
    "7.0, 4095",
    "-1.0, 0",
    "NaN, 0",
    "Infinity, 4095"
  })
  void aVoltageBecomesItsCode(double volts, String expected) throws IOException {
    new SensorVoltage(folder).set(volts);
    assertThat(code()).isEqualTo(expected);
  }

  @Test
  void theSameVoltageIsNotWrittenAgain() throws IOException {
    SensorVoltage voltage = new SensorVoltage(folder);
    voltage.set(2.5);
    Files.writeString(folder.resolve("out_voltage0_raw"), "untouched");
    voltage.set(2.5003);
    assertThat(code()).isEqualTo("untouched");
    voltage.set(2.6);
    assertThat(code()).isEqualTo("2130");
  }

  @Test
  void somethingElseIsRefusedAndSaysWhatToDo() throws IOException {
    Files.delete(folder.resolve("out_voltage_scale"));
    assertThatThrownBy(() -> new SensorVoltage(folder))
        .isInstanceOf(IOException.class)
        .hasMessageContaining("mcp4725");
  }

  @ParameterizedTest
  @CsvSource({"30, 0.1", "30, 0.5", "15, 0.9", "60, 0.02", "39, 0.775"})
  void frequencyAndDutyAreThoseOfTheEdges(double hz, double duty) {
    PwmCapture pwm = new PwmCapture();
    long period = (long) (1e9 / hz);
    for (int i = 0; i < 5; i++) {
      pwm.edge(true, i * period);
      pwm.edge(false, i * period + (long) (duty * period));
    }
    long now = 4 * period + MILLI;
    assertThat(pwm.hertz(now)).isCloseTo(hz, within(1e-4 * hz));
    assertThat(pwm.dutyFraction(now)).isCloseTo(duty, within(1e-6));
    assertThat(pwm.periods()).isEqualTo(4);
  }

  @Test
  void anInvertedWireShowsTheOtherShare() {
    PwmCapture pwm = new PwmCapture();
    for (int i = 0; i < 4; i++) {
      pwm.edge(false, i * 33 * MILLI);
      pwm.edge(true, i * 33 * MILLI + 11 * MILLI);
    }
    assertThat(pwm.dutyFraction(110 * MILLI)).isCloseTo(2.0 / 3.0, within(1e-9));
  }

  @Test
  void aWireThatStandsStillIsZeroOrOneByItsLevel() {
    PwmCapture pwm = new PwmCapture();
    assertThat(pwm.dutyFraction(0L)).isZero();
    pwm.level(true);
    assertThat(pwm.dutyFraction(0L)).isEqualTo(1.0);
    for (int i = 0; i < 3; i++) {
      pwm.edge(true, i * 33 * MILLI);
      pwm.edge(false, i * 33 * MILLI + 10 * MILLI);
    }
    assertThat(pwm.dutyFraction(200 * MILLI)).isPositive();
    assertThat(pwm.dutyFraction(220 * MILLI)).isZero();
    assertThat(pwm.hertz(220 * MILLI)).isZero();
    pwm.edge(true, 400 * MILLI);
    assertThat(pwm.dutyFraction(540 * MILLI)).isEqualTo(1.0);
  }

  @Test
  void onlyLinesOfGpiomonAreEdges() {
    assertThat(EdgeLog.parse("18 1 12 000000345"))
        .isEqualTo(new EdgeLog.Edge(18, true, 12_000_000_345L));
    assertThat(EdgeLog.parse("17 0 3 7")).isEqualTo(new EdgeLog.Edge(17, false, 3_000_000_007L));
    for (String other :
        List.of("", "gpiomon: error: permission denied", "18 2 1 1", "18 1 1", "x 1 1 1")) {
      assertThat(EdgeLog.parse(other)).as(other).isNull();
    }
  }

  @Test
  void aProgramsEdgesBecomeDutyFrequencyAndHeartbeat() throws Exception {
    StringBuilder lines = new StringBuilder();
    long now = 1_000_000_000L;
    for (int i = 0; i < 12; i++) {
      lines.append("18 1 1 ").append(i * 33_333_333L).append('\n');
      lines.append("18 0 1 ").append(i * 33_333_333L + 10_000_000L).append('\n');
      lines.append("17 ").append(i % 2).append(" 1 ").append(i * 33_333_333L + 12L).append('\n');
    }
    Path said = Files.writeString(folder.resolve("edges.txt"), lines + "gpiomon: something\n");
    EdgeLog edges = new EdgeLog(List.of("cat", said.toString()));
    while (edges.trouble().isEmpty()) {
      Thread.onSpinWait();
    }
    ElectricalWires.Places places = new ElectricalWires.Places(folder, "gpiochip0", 18, 17);
    WireObserver observer = new WireObserver();
    try (ElectricalWires wires = new ElectricalWires(places, new SensorVoltage(folder), edges)) {
      Inputs inputs = new Inputs();
      inputs.sample(AnalogChannel.MAP, 2.5, now);
      wires.put(now, inputs);
      assertThat(code()).isEqualTo("2048");
      wires.poll(now + 11 * 33_333_333L + 11 * MILLI, observer);
      assertThat(observer.pwmHz()).isCloseTo(30.0, within(0.01));
      assertThat(observer.last().dutyFraction).isCloseTo(0.3, within(0.001));
      assertThat(observer.gate().edges()).isEqualTo(11);
      assertThat(wires.health()).contains("30.00").contains("gpiomon: something");
      wires.poll(now + 900 * MILLI, observer);
      assertThat(observer.last().dutyFraction).isZero();
      assertThat(observer.broken()).isZero();
    }
    assertThat(code()).as("closed at 0 V").isEqualTo("0");
  }
}
