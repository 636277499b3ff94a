package org.boostwright.rig.plant;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * The engine against the reference files. Asked for are 1 % settled and 2 % of reading in the
 * traces; the solver is an order of magnitude better and is held to that.
 */
class EngineReferenceTest {
  private static final double SETTLED = 1e-3;
  private static final double TRACE = 5e-3;

  static EngineParams params(String set) {
    return (set.equals("published") ? EngineParams.PUBLISHED : EngineParams.PROJECT_CAR)
        .withRecirculation(RecirculationParams.ABSENT);
  }

  @ParameterizedTest
  @ValueSource(strings = {"published", "project-car"})
  void everySettledPointMatches(String set) {
    List<double[]> rows = ReferenceFile.rows("steady-" + set + ".csv");
    assertThat(rows).hasSize(96);
    for (double[] row : rows) {
      EngineBench bench = new EngineBench(params(set), Atmosphere.REFERENCE);
      bench.setRpm(row[0]);
      bench.setThrottlePct(row[1]);
      bench.setLift(row[2]);
      assertThat(bench.settle()).isTrue();
      String where = set + " " + row[0] + " 1/min, " + row[1] + " %, lift " + row[2];
      close(where + " intake", bench.intakeKpaAbs(), row[3]);
      close(where + " boost", bench.boostKpaAbs(), row[4]);
      close(where + " exhaust", bench.exhaustKpaAbs(), row[5]);
      close(where + " turbine out", bench.turbineOutKpaAbs(), row[6]);
      close(where + " exhaust temperature", bench.exhaustKelvin(), row[7]);
      close(where + " intake temperature", bench.intakeKelvin(), row[8]);
      close(where + " turbo speed", bench.turboKrpm(), row[9]);
      close(where + " air", bench.airGramsPerSecond(), row[10]);
      close(where + " compressor efficiency", bench.compressorEfficiency(), row[11]);
      close(where + " turbine efficiency", bench.turbineEfficiency(), row[12]);
    }
  }

  @ParameterizedTest
  @CsvSource({
    "published, 3000, 0.0",
    "published, 4500, 0.2",
    "project-car, 3000, 0.0",
    "project-car, 4500, 0.2"
  })
  void everySampleOfTheTipInTracesMatches(String set, double rpm, double lift) {
    EngineBench bench = new EngineBench(params(set), Atmosphere.REFERENCE);
    bench.setRpm(rpm);
    bench.setThrottlePct(15.0);
    bench.setLift(lift);
    assertThat(bench.settle()).isTrue();
    bench.setThrottlePct(100.0);
    List<double[]> rows =
        ReferenceFile.rows("tip-in-" + set + "-" + (int) rpm + "rpm-lift" + lift + ".csv");
    assertThat(rows).hasSize(301);
    double time = 0.0;
    for (double[] row : rows) {
      if (row[0] > time) {
        bench.advance(row[0] - time);
        time = row[0];
      }
      String where = set + " at " + row[0] + " s";
      trace(where + " intake", bench.intakeKpaAbs(), row[1]);
      trace(where + " boost", bench.boostKpaAbs(), row[2]);
      trace(where + " exhaust", bench.exhaustKpaAbs(), row[3]);
      trace(where + " turbo speed", bench.turboKrpm(), row[4]);
    }
  }

  private static void close(String what, double got, double reference) {
    // The files carry four decimals.
    assertThat(got).as(what).isCloseTo(reference, within(SETTLED * reference));
  }

  private static void trace(String what, double got, double reference) {
    assertThat(got).as(what).isCloseTo(reference, within(TRACE * reference));
  }
}
