package org.boostwright.rig.replay;

import java.nio.charset.StandardCharsets;
import java.util.Locale;
import java.util.Random;
import org.boostwright.rig.replay.csv.LogImport;
import org.boostwright.rig.replay.csv.LogMapping;
import org.boostwright.rig.replay.csv.LogRefusedException;
import org.boostwright.rig.replay.csv.RecordedLog;

/**
 * A made-up drive of 20 s: key on with the engine stopped at 98 kPa (0 to 4 s), idling with vacuum
 * (4 to 6 s), a pull to 170 kPa (6 to 14 s), idling again. Rated noise on the pressure.
 */
final class SyntheticDrive {
  /** Length, s. */
  static final double SECONDS = 20.0;

  private SyntheticDrive() {}

  private static double ramp(double t, double from, double to, double low, double high) {
    double f = Math.max(0.0, Math.min(1.0, (t - from) / (to - from)));
    return low + f * (high - low);
  }

  private static double mapKpaAbs(double t) {
    if (t < 4.0) {
      return 98.0;
    }
    if (t < 6.0) {
      return ramp(t, 4.2, 4.7, 98.0, 40.0);
    }
    return t < 14.0 ? ramp(t, 6.0, 7.5, 40.0, 170.0) : ramp(t, 14.0, 14.5, 170.0, 40.0);
  }

  private static double rpm(double t) {
    if (t < 4.0) {
      return 0.0;
    }
    return t < 14.0 ? ramp(t, 6.0, 13.0, 900.0, 3900.0) : ramp(t, 14.0, 16.0, 3900.0, 900.0);
  }

  private static double throttlePct(double t) {
    return t < 6.0 || t >= 14.0 ? 5.0 : ramp(t, 6.0, 6.2, 5.0, 90.0);
  }

  /** As fast as the controller samples and finer than its converter. */
  static RecordedLog fast() throws LogRefusedException {
    Random random = new Random(11);
    StringBuilder text = new StringBuilder("time [s],MAP [kPa],rpm,throttle [%],iat [C]\n");
    for (int i = 0; i * 0.005 < SECONDS; i++) {
      double t = i * 0.005;
      text.append(
          String.format(
              Locale.ROOT,
              "%.3f,%.3f,%.2f,%.3f,%d%n",
              t,
              mapKpaAbs(t) + 0.3 * random.nextGaussian(),
              rpm(t),
              throttlePct(t) + 0.05 * random.nextGaussian(),
              25));
    }
    return parse(text.toString());
  }

  /** Read by a logger that asks for one of four signals every 50 ms and repeats the others. */
  static RecordedLog slow() throws LogRefusedException {
    return parse(slowText(0.0));
  }

  /** The slow log with a pause of the logger in the middle of the pull, s. */
  static RecordedLog slowWithPause(double pauseSeconds) throws LogRefusedException {
    return parse(slowText(pauseSeconds));
  }

  private static String slowText(double pauseSeconds) {
    StringBuilder text = new StringBuilder("time [s],MAP [kPa],rpm,throttle [%],iat [C]\n");
    double map = mapKpaAbs(0.0);
    double rpm = 0.0;
    double throttle = 5.0;
    for (int i = 0; i * 0.05 < SECONDS; i++) {
      double t = i * 0.05;
      switch (i % 4) {
        case 0 -> map = mapKpaAbs(t) + (i % 8 == 0 ? 1.0 : 0.0);
        case 1 -> rpm = rpm(t) + (t > 4.0 && i % 8 == 1 ? 6.0 : 0.0);
        case 2 -> throttle = throttlePct(t) + (i % 8 == 2 ? 0.4 : 0.0);
        default -> {}
      }
      double shown = t + (t > 10.0 ? pauseSeconds : 0.0);
      text.append(
          String.format(Locale.ROOT, "%.3f,%.0f,%.0f,%.1f,25%n", shown, map, rpm, throttle));
    }
    return text.toString();
  }

  /** The fast log as text lines cut to the rows that {@code keep} wants; for dropouts. */
  static RecordedLog fastWithMapBlank(double from, double to) throws LogRefusedException {
    Random random = new Random(11);
    StringBuilder text = new StringBuilder("time [s],MAP [kPa],rpm,throttle [%]\n");
    for (int i = 0; i * 0.005 < SECONDS; i++) {
      double t = i * 0.005;
      String map =
          t >= from && t < to
              ? ""
              : String.format(Locale.ROOT, "%.3f", mapKpaAbs(t) + 0.3 * random.nextGaussian());
      text.append(
          String.format(Locale.ROOT, "%.3f,%s,%.2f,%.3f%n", t, map, rpm(t), throttlePct(t)));
    }
    return parse(text.toString());
  }

  static RecordedLog parse(String text) throws LogRefusedException {
    return LogImport.parse(text.getBytes(StandardCharsets.UTF_8), "drive.csv", LogMapping.NONE);
  }
}
