package org.boostwright.rig.replay.csv;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;

/** Ten thousand damaged small logs: each is read with every promise kept, or refused. */
class ImportFuzzTest {
  private static final List<String> SEEDS =
      List.of(
          Logs.plain(),
          "Time;boost (psi);iat [\u00b0F];speed_mph\n08:59:59,9;-3,1;70,5;30\n"
              + "08:59:59,95;-2;71;31\n09:00:00,0;1,5;72;32\n09:00:00,1;9;73;33\n",
          "t\tmap_bar_abs\trpm\n0\t1.0\t900\n10\t1.1\t910\n20\t1.2\t920\n30\t1.3\t930\n",
          "\ufeffnote\nTime,Pedal\ns,%\n0,14\n0.1,\n0.1,15\n0.3,\"16\"\n23,17\n");

  private static final String[] PIECES = {
    ",",
    ";",
    "\t",
    "\"",
    "\n",
    "\r",
    "-",
    ".",
    "e",
    "E",
    "0",
    "9999999999",
    "NaN",
    ":",
    "1e308",
    "\u00b0",
    "[",
    "]",
    "23:59:59",
    "00:00:00",
    "kPa",
    "time",
    "-1e18",
    "4e18",
    "\u0000",
    "\ufeff"
  };

  private static byte[] mutate(byte[] bytes, Random random) {
    byte[] mutated = bytes.clone();
    int mutations = 1 + random.nextInt(6);
    for (int m = 0; m < mutations && mutated.length > 0; m++) {
      int at = random.nextInt(mutated.length);
      switch (random.nextInt(6)) {
        case 0 -> mutated[at] = (byte) random.nextInt(256);
        case 1 -> mutated = Arrays.copyOf(mutated, at);
        case 2 -> {
          byte[] piece = PIECES[random.nextInt(PIECES.length)].getBytes(StandardCharsets.UTF_8);
          mutated = splice(mutated, at, at, piece);
        }
        case 3 -> mutated = splice(mutated, at, Math.min(mutated.length, at + 9), new byte[0]);
        case 4 -> {
          int to = Math.min(mutated.length, at + random.nextInt(40));
          mutated = splice(mutated, at, at, Arrays.copyOfRange(mutated, at, to));
        }
        default -> mutated[at] = (byte) (mutated[at] ^ (1 << random.nextInt(8)));
      }
    }
    return mutated;
  }

  private static byte[] splice(byte[] bytes, int from, int to, byte[] piece) {
    byte[] spliced = new byte[bytes.length - (to - from) + piece.length];
    System.arraycopy(bytes, 0, spliced, 0, from);
    System.arraycopy(piece, 0, spliced, from, piece.length);
    System.arraycopy(bytes, to, spliced, from + piece.length, bytes.length - to);
    return spliced;
  }

  private static void check(boolean kept, String promise) {
    if (!kept) {
      throw new AssertionError("promise broken: " + promise);
    }
  }

  private static void assertPromises(RecordedLog log) {
    check(log.rows() > 0, "rows");
    for (int row = 1; row < log.rows(); row++) {
      check(log.nanos(row) > log.nanos(row - 1), "time rises");
    }
    check(!log.traces().isEmpty(), "signals");
    for (SignalTrace trace : log.traces()) {
      check(trace.freshRows() > 0, "a sample");
      check(trace.refresh().millis() > 0.0, "a refresh time");
      check(Double.isFinite(trace.refresh().longestMillis()), "a longest refresh time");
      for (int row = 0; row < log.rows(); row++) {
        double value = trace.value(row);
        check(Double.isNaN(value) || trace.signal().isPossible(value), "a possible value");
        check(!trace.isFresh(row) || !Double.isNaN(value), "a value where fresh");
      }
    }
  }

  @Test
  void tenThousandDamagedLogsAreReadOrRefusedAndNothingElse() {
    Random random = new Random(20_240_229);
    int read = 0;
    int refused = 0;
    for (int i = 0; i < 10_000; i++) {
      byte[] seed = SEEDS.get(i % SEEDS.size()).getBytes(StandardCharsets.UTF_8);
      byte[] bytes = mutate(seed, random);
      try {
        assertPromises(LogImport.parse(bytes, "fuzz.csv", LogMapping.NONE));
        read++;
      } catch (LogRefusedException e) {
        assertThat(e).hasMessageStartingWith("fuzz.csv");
        refused++;
      }
    }
    // Both ways out are used often, or the test shows little.
    assertThat(read).isGreaterThan(1000);
    assertThat(refused).isGreaterThan(1000);
  }
}
