package org.boostwright.rig.logs.gains;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assumptions.assumeThat;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Locale;
import java.util.concurrent.TimeUnit;
import org.boostwright.rig.logs.LoopMargins;
import org.boostwright.rig.logs.ParallelPid;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * Margins against GNU Octave's control package, the dead time as a Pade approximation of order 8.
 * Skipped where Octave or the package is not installed.
 */
class OctaveMarginsTest {
  private static final double SHARE = 0.01;

  @TempDir Path folder;

  /** Laws and processes: kp, ki, kd, filter, k, tau1, tau2, dead. */
  private static final double[][] LOOPS = {
    {0.0034, 0.0178, 0.0005, 0.010, 153.6, 0.101, 0.1, 0.112},
    {0.0049, 0.0277, 0.00047, 0.010, 160.0, 0.094, 0.09, 0.103},
    {4.0, 3.3333, 0.0, 0.010, 1.0, 1.2, 0.0, 0.15},
    {1.5, 1.0, 0.5, 0.020, 1.0, 2.0, 1.2, 0.77}
  };

  @Test
  void marginsAgreeWithOctaveWithin1Percent() throws Exception {
    String answer = octave(script());
    String[] lines = answer.strip().split("\n");
    assertThat(lines).hasSize(LOOPS.length);
    for (int i = 0; i < LOOPS.length; i++) {
      double[] c = LOOPS[i];
      LoopMargins ours =
          LoopMargins.of(new ParallelPid(c[0], c[1], c[2], c[3]), c[4], c[5], c[6], c[7]);
      String[] theirs = lines[i].trim().split("\\s+");
      close(ours.gainMargin(), theirs[0], "gain margin " + i);
      close(ours.phaseMarginDegrees(), theirs[1], "phase margin " + i);
      close(ours.maxSensitivity(), theirs[2], "Ms " + i);
      close(
          ours.delayMarginSeconds(),
          Double.toString(Math.toRadians(Double.parseDouble(theirs[1])) / Double.parseDouble(theirs[3])),
          "delay margin " + i);
    }
  }

  private static void close(double ours, String theirs, String what) {
    double reference = Double.parseDouble(theirs);
    System.out.printf("%s: %.5f, octave %.5f%n", what, ours, reference);
    assertThat(Math.abs(ours / reference - 1.0)).as(what).isLessThanOrEqualTo(SHARE);
  }

  private static String script() {
    StringBuilder script = new StringBuilder("pkg load control\ns = tf('s');\n");
    for (double[] c : LOOPS) {
      script.append(
          String.format(
              Locale.ROOT,
              "[n, d] = padecoef(%g, 8); C = %g + %g/s + %g*s/(%g*s + 1);"
                  + " L = minreal(C*%g/((%g*s + 1)*(%g*s + 1))*tf(n, d));"
                  + " [gm, pm, wg, wp] = margin(L); ms = norm(1/(1 + L), inf);"
                  + " printf('%%.9g %%.9g %%.9g %%.9g\\n', gm, pm, ms, wp);%n",
              c[7], c[0], c[1], c[2], c[3], c[4], c[5], c[6]));
    }
    return script.toString();
  }

  private String octave(String script) throws IOException, InterruptedException {
    Path file = Files.writeString(folder.resolve("margins.m"), script);
    Path out = folder.resolve("out.txt");
    Process process;
    try {
      process =
          new ProcessBuilder("octave-cli", "--no-gui", "--quiet", file.toString())
              .redirectOutput(out.toFile())
              .redirectError(folder.resolve("err.txt").toFile())
              .start();
    } catch (IOException e) {
      assumeThat(false).as("octave is not installed").isTrue();
      throw e;
    }
    assertThat(process.waitFor(120, TimeUnit.SECONDS)).isTrue();
    String errors = Files.readString(folder.resolve("err.txt"), StandardCharsets.UTF_8);
    assumeThat(errors).as("octave's control package").doesNotContain("not installed");
    assertThat(process.exitValue()).as(errors).isZero();
    return Files.readString(out, StandardCharsets.UTF_8);
  }
}
