package org.boostwright.rig.replay.csv;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.boostwright.rig.replay.csv.Logs.mapping;
import static org.boostwright.rig.replay.csv.Logs.read;

import java.util.Locale;
import java.util.Random;
import org.junit.jupiter.api.Test;

/** Resolution and refresh found in logs whose making is known. */
class RefreshTest {

  /** A logger that reads signal {@code (i + phase) % period} in row i and repeats the others. */
  private static String roundRobin(int rows, int period, double restShare) {
    StringBuilder text = new StringBuilder("time [s],MAP [kPa],rpm,throttle [%]\n");
    Random random = new Random(3);
    double map = 100.0;
    double rpm = 3000.0;
    double throttle = 40.0;
    for (int i = 0; i < rows; i++) {
      boolean moves = random.nextDouble() >= restShare;
      if (i % period == 0 && moves) {
        map = 100.0 + random.nextInt(90);
      } else if (i % period == 1 && moves) {
        rpm = 3000.0 + random.nextInt(900);
      } else if (i % period == 2) {
        throttle = 0.4 * random.nextInt(200);
      }
      text.append(
          String.format(Locale.ROOT, "%.2f,%.0f,%.0f,%.1f%n", 0.09 * i, map, rpm, throttle));
    }
    return text.toString();
  }

  @Test
  void oneSignalPerRowIsFoundEvenWhenValuesOftenStay() throws LogRefusedException {
    RecordedLog log = read(roundRobin(2000, 10, 0.6));
    SignalTrace map = log.require(LogSignal.MAP);
    assertThat(map.refresh().rows()).isEqualTo(10.0);
    assertThat(map.refresh().millis()).isCloseTo(900.0, within(0.5));
    assertThat(map.refresh().origin()).isEqualTo(Origin.FOUND);
    assertThat(map.resolution()).isEqualTo(new SignalTrace.Step(1.0, Origin.FOUND));
    assertThat(log.require(LogSignal.THROTTLE).resolution().size()).isEqualTo(0.4);
    for (int row = 0; row < 2000; row++) {
      assertThat(map.isFresh(row)).as("row %d", row).isEqualTo(row % 10 == 0);
    }
  }

  @Test
  void aLogThatReadsEverythingInEveryRowIsFreshInEveryRow() throws LogRefusedException {
    StringBuilder text = new StringBuilder("time [s],MAP [kPa]\n");
    Random random = new Random(5);
    for (int i = 0; i < 500; i++) {
      text.append(0.02 * i).append(',').append(100 + random.nextInt(40)).append('\n');
    }
    SignalTrace map = read(text.toString()).require(LogSignal.MAP);
    assertThat(map.refresh().rows()).isEqualTo(1.0);
    assertThat(map.refresh().millis()).isCloseTo(20.0, within(0.01));
    assertThat(map.freshRows()).isEqualTo(500);
  }

  @Test
  void aSlowSmoothSignalInAFastLogIsNotTakenForAHeldOne() throws LogRefusedException {
    StringBuilder text = new StringBuilder("time [s],coolant [degC]\n");
    for (int i = 0; i < 3000; i++) {
      // Climbs one step about every 37 rows, never two: slow by itself, not held.
      text.append(String.format(Locale.ROOT, "%.2f,%d%n", 0.1 * i, 20 + (int) (i / 37.3)));
    }
    SignalTrace coolant = read(text.toString()).require(LogSignal.COOLANT);
    assertThat(coolant.refresh().rows()).isEqualTo(1.0);
  }

  @Test
  void aSignalReadAtItsOwnPaceIsFoundFromItsLargeSteps() throws LogRefusedException {
    StringBuilder text = new StringBuilder("time [s],rpm\n");
    Random random = new Random(9);
    int rpm = 3000;
    int nextRow = 0;
    for (int i = 0; i < 3000; i++) {
      if (i >= nextRow) {
        rpm = 1000 + random.nextInt(5000);
        nextRow = i + 7 + random.nextInt(3); // 7 to 9 rows, no common multiple
      }
      text.append(String.format(Locale.ROOT, "%.2f,%d%n", 0.01 * i, rpm));
    }
    SignalTrace trace = read(text.toString()).require(LogSignal.ENGINE_SPEED);
    assertThat(trace.refresh().rows()).isEqualTo(7.0);
    assertThat(trace.freshRows()).isBetween(350, 430);
  }

  @Test
  void cellsFilledOnlyWhenReadAreFreshWhenFilled() throws LogRefusedException {
    StringBuilder text = new StringBuilder("time [s],MAP [kPa],rpm\n");
    for (int i = 0; i < 100; i++) {
      text.append(i * 0.05).append(i % 2 == 0 ? ",100," : ",,3000").append('\n');
    }
    SignalTrace map = read(text.toString()).require(LogSignal.MAP);
    assertThat(map.freshRows()).isEqualTo(50);
    assertThat(map.refresh().millis()).isCloseTo(100.0, within(0.01));
    assertThat(map.resolution().size()).isNaN();
  }

  @Test
  void aSignalThatNeverChangesTakesTheOthersRefresh() throws LogRefusedException {
    String text = roundRobin(2000, 10, 0.0).replaceAll("(?m)^([\\d.]+),\\d+,", "$1,98,");
    SignalTrace map = read(text).require(LogSignal.MAP);
    assertThat(map.refresh().origin()).isEqualTo(Origin.ASSUMED);
    assertThat(map.refresh().rows()).isEqualTo(10.0);
    assertThat(map.freshRows()).isEqualTo(200);
  }

  @Test
  void afterAPauseAHeldValueIsNotFreshBeforeItsTurn() throws LogRefusedException {
    StringBuilder text = new StringBuilder();
    for (String line : roundRobin(2000, 10, 0.0).split("\n")) {
      int comma = line.indexOf(',');
      boolean late =
          !line.startsWith("time") && Double.parseDouble(line.substring(0, comma)) > 90.0;
      // 60 s pause after row 1000; rows 1001 on begin with signal 1, so MAP's turn is row 1010.
      text.append(
          late
              ? String.format(
                  Locale.ROOT,
                  "%.2f%s",
                  60.0 + Double.parseDouble(line.substring(0, comma)),
                  line.substring(comma).strip())
              : line.strip());
      text.append('\n');
    }
    RecordedLog log = read(text.toString());
    assertThat(log.pauses()).singleElement().satisfies(p -> assertThat(p.row()).isEqualTo(1001));
    assertThat(log.require(LogSignal.MAP).nextFresh(1001)).isEqualTo(1010);
    assertThat(log.require(LogSignal.ENGINE_SPEED).nextFresh(1001)).isEqualTo(1001);
  }

  @Test
  void whatTheMappingDeclaresIsTaken() throws LogRefusedException {
    LogMapping mapping =
        mapping(
            "[map]\nresolution = 0.5\nrefresh_ms = 180\nnoise = 0.2\n[throttle]\nresolution = 2");
    SignalTrace map = read(roundRobin(400, 10, 0.0), mapping).require(LogSignal.MAP);
    assertThat(map.resolution()).isEqualTo(new SignalTrace.Step(0.5, Origin.DECLARED));
    assertThat(map.refresh().millis()).isEqualTo(180.0);
    assertThat(map.refresh().origin()).isEqualTo(Origin.DECLARED);
    assertThat(map.refresh().rows()).isCloseTo(2.0, within(1e-6));
    assertThat(map.noise()).isEqualTo(0.2);
  }

  @Test
  void stepsAreConvertedWithTheUnit() throws LogRefusedException {
    SignalTrace map = read("time [s],boost [psi]\n0,1.0\n1,1.1\n2,-3.0\n").require(LogSignal.MAP);
    assertThat(map.resolution().size()).isCloseTo(0.6894757, within(1e-6));
    SignalTrace air = read("time [s],iat [F]\n0,70\n1,71\n").require(LogSignal.INTAKE_AIR);
    assertThat(air.resolution().size()).isCloseTo(5.0 / 9.0, within(1e-9));
  }
}
