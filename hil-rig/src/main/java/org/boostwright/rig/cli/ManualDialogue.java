package org.boostwright.rig.cli;

import java.io.BufferedReader;
import java.io.IOException;
import java.util.Locale;
import java.util.Optional;
import org.boostwright.core.bench.GaugeEntry;
import org.boostwright.core.bench.ManualBench;
import org.boostwright.core.settings.PressureUnit;
import org.boostwright.rig.bench.VirtualGauge;

/**
 * The bench by gauge, as a dialogue: says what to set, takes what is typed, asks again when it
 * looks like a slip. Questions go to standard error, so that standard output stays the result.
 */
final class ManualDialogue {
  private static final double ONE_PSI_KPA = PressureUnit.PSI.toKpa(1.0);

  private final Terminal terminal;
  private final BufferedReader in;
  private final PressureUnit unit;
  private final Optional<VirtualGauge> gauge;

  ManualDialogue(
      Terminal terminal, BufferedReader in, PressureUnit unit, Optional<VirtualGauge> gauge) {
    this.terminal = terminal;
    this.in = in;
    this.unit = unit;
    this.gauge = gauge;
  }

  /** Runs the dialogue to its end. */
  ManualBench run() throws IOException, WrongUseException {
    say("Eye protection on, hoses secured, relief valve at 150 kPa (22 psi) gauge or below.");
    say("The coil gets hot when it is held on: switch it off between readings.");
    say("Set the regulator to 80 to 100 kPa (12 to 14 psi) gauge. Type readings as 12, 12 psi,");
    say("83 kPa or 0.83 bar; a bare number is " + unit.label() + ". 'stop' ends the session.");
    ManualBench bench = new ManualBench(ONE_PSI_KPA);
    ManualBench.Setting setting = bench.setting();
    while (setting != null) {
      say("");
      say(
          "Reading "
              + (bench.taken() + 1)
              + " of at most "
              + ManualBench.MOST_READINGS
              + ": "
              + words(setting));
      if (gauge.isPresent()) {
        say("The virtual needle: " + gauge.get().needle(setting, unit) + ".");
      }
      String complaint = bench.enter(ask());
      if (complaint != null) {
        say(complaint);
      }
      setting = bench.setting();
    }
    say("");
    say("Coil off. Shut the air and let the line empty.");
    return bench;
  }

  private double ask() throws IOException, WrongUseException {
    while (true) {
      terminal.err().print("Gauge shows: ");
      terminal.err().flush();
      String line = in.readLine();
      if (line == null || line.strip().equalsIgnoreCase("stop")) {
        throw new WrongUseException(
            "the dialogue ended before the last reading; switch the coil off and shut the air",
            "start again, or give the readings with --readings FILE.csv");
      }
      GaugeEntry entry = GaugeEntry.parse(line, unit);
      if (entry.complaint() == null) {
        return entry.kpaGauge();
      }
      say(entry.complaint() + ".");
    }
  }

  private static String words(ManualBench.Setting setting) {
    if (setting.pulseSeconds() == 0.0) {
      return "coil off until the needle is still, shut the tap right before the valve, say \"one\","
          + " read; then open the tap.";
    }
    if (setting.isPulse()) {
      return String.format(
          Locale.ROOT,
          "coil off until the needle is still, shut the tap right before the valve, give one pulse"
              + " of %.0f ms, say \"one\", read; then open the tap.",
          1e3 * setting.pulseSeconds());
    }
    if (setting.dutyFraction() == 0.0) {
      return "coil off.";
    }
    if (setting.dutyFraction() == 1.0) {
      return "coil on all the time.";
    }
    return String.format(
        Locale.ROOT,
        "%.0f Hz, %.0f %% duty; read the middle of the needle's shiver.",
        setting.frequencyHz(),
        100.0 * setting.dutyFraction());
  }

  private void say(String text) {
    terminal.err().println(text);
  }
}
