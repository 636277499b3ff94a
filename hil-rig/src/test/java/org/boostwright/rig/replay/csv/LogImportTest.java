package org.boostwright.rig.replay.csv;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.boostwright.rig.replay.csv.Logs.mapping;
import static org.boostwright.rig.replay.csv.Logs.read;
import static org.boostwright.rig.replay.csv.Logs.repairs;
import static org.boostwright.rig.replay.csv.Logs.value;

import java.nio.charset.StandardCharsets;
import java.util.Locale;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Separators, decimal signs, units, names: the same drive written in many ways reads the same. */
class LogImportTest {
  private static final int ROWS = 40;

  private static double kpaAbs(int i) {
    return 98.0 + 1.5 * i;
  }

  private static double celsius(int i) {
    return -5.0 + 0.5 * i;
  }

  private static double kmh(int i) {
    return 20.0 + 1.25 * i;
  }

  private static double rpm(int i) {
    return 1500.0 + 37.0 * i;
  }

  private static void assertSameDrive(RecordedLog log) throws LogRefusedException {
    assertThat(log.rows()).isEqualTo(ROWS);
    for (int i = 0; i < ROWS; i++) {
      assertThat(log.nanos(i)).isCloseTo(i * 100_000_000L, within(1000L));
      assertThat(value(log, LogSignal.MAP, i)).isCloseTo(kpaAbs(i), within(1e-5));
      assertThat(value(log, LogSignal.INTAKE_AIR, i)).isCloseTo(celsius(i), within(1e-5));
      assertThat(value(log, LogSignal.ROAD_SPEED, i)).isCloseTo(kmh(i), within(1e-5));
      assertThat(value(log, LogSignal.ENGINE_SPEED, i)).isCloseTo(rpm(i), within(1e-5));
    }
  }

  @Test
  void commaPointKilopascalTimeOfDay() throws LogRefusedException {
    StringBuilder text =
        new StringBuilder(
            "Time,MAP [kPa],Intake air temperature [\u00b0C],Vehicle speed [km/h],Engine RPM\n");
    String[] seconds = {"08:59:58", "08:59:59", "09:00:00", "09:00:01"};
    for (int i = 0; i < ROWS; i++) {
      text.append(
          String.format(
              Locale.ROOT,
              "%s.%d00,%.7f,%.7f,%.7f,%.7f%n",
              seconds[i / 10],
              i % 10,
              kpaAbs(i),
              celsius(i),
              kmh(i),
              rpm(i)));
    }
    RecordedLog log = read(text.toString());
    assertSameDrive(log);
    assertThat(log.repairs()).isEmpty();
  }

  @Test
  void semicolonDecimalCommaPsiGaugeFahrenheitMilesSeconds() throws LogRefusedException {
    StringBuilder text = new StringBuilder("t (s);boost (psi);iat_f;speed_mph;rpm\n");
    for (int i = 0; i < ROWS; i++) {
      // Pound per square inch by its definition: 0.45359237 kg * 9.80665 m/s2 / (0.0254 m)^2.
      double psi = (kpaAbs(i) - 101.325) / (0.45359237 * 9.80665 / (0.0254 * 0.0254) / 1000.0);
      text.append(
              String.format(
                      Locale.ROOT,
                      "%.3f;%.8f;%.8f;%.8f;%.8f",
                      0.1 * i,
                      psi,
                      celsius(i) * 1.8 + 32.0,
                      kmh(i) / 1.609344,
                      rpm(i))
                  .replace('.', ','))
          .append("\r\n");
    }
    RecordedLog log = read(text.toString());
    assertSameDrive(log);
    assertThat(repairs(log, RepairKind.DECIMAL_COMMA)).hasSize(1);
    assertThat(log.notes()).anyMatch(note -> note.contains("101.325"));
  }

  @Test
  void tabBarGaugeKelvinMilliseconds() throws LogRefusedException {
    StringBuilder text =
        new StringBuilder(
            "elapsed_ms\tboost [bar]\tCharge air [K]\tRoad speed [kph]\tengine speed [1/min]\n");
    for (int i = 0; i < ROWS; i++) {
      text.append(
          String.format(
              Locale.ROOT,
              "%d\t%.9f\t%.6f\t%.6f\t%.3f\n",
              170_000 + 100 * i,
              (kpaAbs(i) - 101.325) / 100.0,
              celsius(i) + 273.15,
              kmh(i),
              rpm(i)));
    }
    assertSameDrive(read(text.toString()));
  }

  @Test
  void mercuryAndHectopascalAbsolute() throws LogRefusedException {
    StringBuilder text =
        new StringBuilder("time_s,map_inhg,barometer [mmHg],ambient pressure [hPa]\n");
    for (int i = 0; i < 5; i++) {
      text.append(String.format(Locale.ROOT, "%d,29.92,760.0,1013.25%n", i));
    }
    RecordedLog log = read(text.toString());
    // 29.92 inHg and 760 mmHg are the standard atmosphere (ICAO Doc 7488, 1993), 101.325 kPa.
    assertThat(value(log, LogSignal.MAP, 0)).isCloseTo(101.32, within(0.01));
    assertThat(value(log, LogSignal.BAROMETER, 0)).isCloseTo(101.325, within(0.001));
    assertThat(log.notes()).anyMatch(note -> note.contains("also looks like barometer"));
  }

  @Test
  void gaugeIsCountedFromTheDeclaredAmbient() throws LogRefusedException {
    String text = "time_s,boost_kpa\n0,-30\n1,-10\n2,50\n";
    RecordedLog log = read(text, mapping("ambient_kpa_abs = 84.5"));
    assertThat(value(log, LogSignal.MAP, 2)).isCloseTo(134.5, within(1e-9));
    assertThat(value(read(text), LogSignal.MAP, 2)).isCloseTo(151.325, within(1e-9));
  }

  @ParameterizedTest
  @CsvSource({
    "Engine RPM [RPM], ENGINE_SPEED",
    "engine_speed_rpm, ENGINE_SPEED",
    "rpm, ENGINE_SPEED",
    "Intake Manifold Absolute Pressure [kPa], MAP",
    "map_kpa_abs, MAP",
    "Boost pressure (psi), MAP",
    "Absolute Throttle Position [%], THROTTLE",
    "throttle, THROTTLE",
    "Accelerator Pedal Position D [%], PEDAL",
    "Intake Air Temperature [degC], INTAKE_AIR",
    "Engine Coolant Temperature [F], COOLANT",
    "Vehicle Speed Sensor [km/h], ROAD_SPEED",
    "EngineSpeed [1/min], ENGINE_SPEED",
    "Barometric pressure [hPa], BAROMETER",
    "battery [V], SUPPLY"
  })
  void generalWordsAreRecognised(String header, LogSignal signal) throws LogRefusedException {
    double value = signal == LogSignal.BAROMETER ? 1000.0 : header.contains("psi") ? 5.0 : 14.0;
    RecordedLog log = read("time [s]," + header + "\n0," + value + "\n0.1," + value + "\n");
    assertThat(log.traces()).extracting(SignalTrace::signal).containsExactly(signal);
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "Boost target [kPa]",
        "Ambient Air Temperature [degC]",
        "MAP sensor [V]",
        "turbo speed [rpm]",
        "Air flow [g/s]",
        "Oil temperature [degC]",
        "throttle_raw_v",
        "boost duty [%]",
        "brake pedal [%]"
      })
  void whatIsNoMeasuredSignalIsLeftAlone(String header) throws LogRefusedException {
    RecordedLog log = read("time [s]," + header + ",rpm\n0,14,900\n0.1,15,910\n");
    assertThat(log.traces())
        .extracting(SignalTrace::signal)
        .containsExactly(LogSignal.ENGINE_SPEED);
    assertThat(log.unusedColumns()).containsExactly(header);
  }

  @Test
  void ofTwoColumnsForOneSignalTheFirstIsReadAndTheOtherNamed() throws LogRefusedException {
    RecordedLog log = read("time [s],pedal D [%],pedal E [%]\n0,14,15\n1,16,17\n");
    assertThat(value(log, LogSignal.PEDAL, 1)).isEqualTo(16.0);
    assertThat(log.notes())
        .containsExactly("'pedal E [%]' also looks like pedal; 'pedal D [%]' is read");
  }

  @Test
  void ofTwoColumnsTheOneThatSaysItsUnitIsRead() throws LogRefusedException {
    RecordedLog log = read("time [s],throttle,throttle [%]\n0,0.2,20\n1,0.4,40\n");
    assertThat(log.require(LogSignal.THROTTLE).header()).isEqualTo("throttle [%]");
  }

  @Test
  void aRowOfUnitsBelowTheHeaderIsUnderstood() throws LogRefusedException {
    RecordedLog log = read("Time,Speed,MAP\ns,mph,bar abs\n0,60,1.5\n1,61,1.6\n");
    assertThat(value(log, LogSignal.ROAD_SPEED, 0)).isCloseTo(96.56064, within(1e-6));
    assertThat(value(log, LogSignal.MAP, 1)).isCloseTo(160.0, within(1e-9));
  }

  @Test
  void linesBeforeTheHeaderAreSkippedAndReported() throws LogRefusedException {
    RecordedLog log = read("Car: ours\nRecorded on a Tuesday, in the rain\n\n" + Logs.plain());
    assertThat(log.rows()).isEqualTo(12);
    assertThat(repairs(log, RepairKind.LINES_BEFORE_HEADER))
        .singleElement()
        .satisfies(r -> assertThat(r.firstLine()).isEqualTo(1))
        .satisfies(r -> assertThat(r.lastLine()).isEqualTo(2));
  }

  @Test
  void quotedFieldsAndBlanksReadAsPlainOnes() throws LogRefusedException {
    String text =
        "\"Time [s]\", \"MAP [kPa]\",\"rpm\"\n\"0.0\",\"100\",\"900\"\n \"0.1\" , 101 ,\"901\"\n";
    RecordedLog log = read(text.replace(" \"", "\"").replace("\" ", "\""));
    assertThat(value(log, LogSignal.MAP, 1)).isEqualTo(101.0);
    assertThat(log.repairs()).isEmpty();
  }

  @Test
  void byteOrderMarkIsSkipped() throws LogRefusedException {
    RecordedLog log = read("\ufeff" + Logs.plain());
    assertThat(log.rows()).isEqualTo(12);
    assertThat(repairs(log, RepairKind.BYTE_ORDER_MARK)).hasSize(1);
  }

  @Test
  void latin1IsReadWhereUtf8Fails() throws LogRefusedException {
    String text = "time [s],coolant [\u00b0C]\n0,80\n1,81\n";
    RecordedLog latin =
        LogImport.parse(text.getBytes(StandardCharsets.ISO_8859_1), "log.csv", LogMapping.NONE);
    assertThat(value(latin, LogSignal.COOLANT, 1)).isEqualTo(81.0);
    assertThat(repairs(latin, RepairKind.LATIN_1)).hasSize(1);
    assertThat(repairs(latin, RepairKind.MANGLED_DEGREE)).isEmpty();
    assertThat(read(text).repairs()).isEmpty();
  }

  @ParameterizedTest
  @ValueSource(strings = {"\u00c2\u00b0C", "\ufffdC", "?C", "\u00c3\u201a\u00c2\u00b0C"})
  void mangledDegreeSignsAreUnderstood(String unit) throws LogRefusedException {
    RecordedLog log = read("time [s],coolant [" + unit + "]\n0,80\n1,81\n");
    assertThat(value(log, LogSignal.COOLANT, 0)).isEqualTo(80.0);
    assertThat(repairs(log, RepairKind.MANGLED_DEGREE)).hasSize(1);
  }

  @Test
  void throttleAsFractionIsNoticedAndPercentIsNot() throws LogRefusedException {
    RecordedLog fraction = read("time [s],throttle\n0,0.15\n1,0.85\n");
    assertThat(value(fraction, LogSignal.THROTTLE, 1)).isCloseTo(85.0, within(1e-9));
    assertThat(fraction.notes()).anyMatch(note -> note.contains("fraction"));
    RecordedLog percent = read("time [s],throttle\n0,0.15\n1,8.5\n");
    assertThat(value(percent, LogSignal.THROTTLE, 1)).isEqualTo(8.5);
    RecordedLog said = read("time [s],throttle [%]\n0,0.15\n1,0.85\n");
    assertThat(value(said, LogSignal.THROTTLE, 1)).isEqualTo(0.85);
  }
}
