package org.boostwright.rig.cli;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Locale;

/** Logs of a drive to 175 kPa: a sound one, and some that try to break whatever shows them. */
final class HostileLogs {
  /** Mark-up, quotes, directional and other invisible characters. */
  static final String BAD =
      "</script><script>document.title='owned'</script><img src=x onerror=alert(1)>"
          + "\u202Etxt.exe\u2066\u200F\u200B\uFEFF";

  /** What a terminal would obey. */
  static final String ESCAPES = "\u0007\u001B[31m\u001B]0;owned\u0007\u009B2J";

  private HostileLogs() {}

  /** The sound one. */
  static Path sound(Path file) throws IOException {
    return Files.writeString(file, text("", "", ""));
  }

  /** The hostile one: in names, in units, in cells. */
  static Path write(Path file) throws IOException {
    String quoted = BAD.replace("\"", "\"\"");
    String names = ",\"" + quoted + "\",\"oil [" + quoted + "]\",\"=cmd|' /C calc'!A0\"";
    String cells = ",\"" + quoted + "\",<b>7</b>,\u202E5";
    return Files.writeString(file, text(names, cells, ",\"'\"\"\",\"\"\"\",1"));
  }

  /** One cell of a megabyte in an otherwise sound log. */
  static Path megabyte(Path file) throws IOException {
    return Files.writeString(file, text(",note", ",ok", ",\"" + "x".repeat(1 << 20) + "\""));
  }

  private static String text(String names, String cells, String once) {
    StringBuilder csv =
        new StringBuilder("Time [s],MAP [kPa],Engine speed [rpm],Throttle [%],Road speed [km/h]");
    csv.append(names).append('\n');
    for (int i = 0; i <= 400; i++) {
      double t = i * 0.05;
      boolean running = t > 5.0;
      double pull = Math.max(0.0, Math.min(1.0, Math.min(t - 10.0, 18.0 - t) / 0.5));
      csv.append(
          String.format(
              Locale.ROOT,
              "%.2f,%.1f,%.0f,%.0f,%d",
              t,
              running ? 40.0 + pull * 135.0 : 101.0,
              running ? 1500.0 + 2500.0 * Math.max(0.0, Math.min(1.0, (t - 6.0) / 4.0)) : 0.0,
              running ? 5.0 + 95.0 * pull : 5.0,
              running ? 60 : 0));
      csv.append(i == 100 ? once : cells).append('\n');
    }
    return csv.toString();
  }
}
