package org.boostwright.pi.web;

import java.util.Locale;
import org.boostwright.core.bench.GaugeEntry;
import org.boostwright.core.bench.Heard;
import org.boostwright.core.bench.Question;
import org.boostwright.core.settings.PressureUnit;
import org.jspecify.annotations.Nullable;

/**
 * How an answer is given on the page, and the number it stands for.
 *
 * @param value the number; NaN for "I do not know"
 * @param complaint why it is not understood; null when it is
 */
record BenchAnswer(double value, @Nullable String complaint) {
  /** What the page shows to answer with. */
  enum Form {
    DONE,
    YES_NO,
    HEARD,
    NUMBER,
    OHMS,
    GAUGE
  }

  private static final String UNKNOWN = "unknown";
  private static final double MOST = 10_000.0;

  static Form form(Question question) {
    return switch (question) {
      case AIR_OFF, PLUG_COIL, SUPPLY_SHUT, SUPPLY_OPEN -> Form.DONE;
      case BATTERY_CLICK -> Form.YES_NO;
      case LISTEN_AT_VENT -> Form.HEARD;
      case CLICK_COUNT, ROD_PRELOAD -> Form.NUMBER;
      case COIL_OHMS -> Form.OHMS;
      case AIR_ON, UNPLUG_COIL, REGULATOR_WORKING, ROD_CRACK, ROD_FULL, ROD_HELD -> Form.GAUGE;
    };
  }

  /** Reads what was given. */
  static BenchAnswer read(Question question, String given, PressureUnit usual) {
    String text = given.strip().toLowerCase(Locale.ROOT);
    if (text.equals(UNKNOWN)) {
      return new BenchAnswer(Double.NaN, null);
    }
    return switch (form(question)) {
      case DONE -> new BenchAnswer(Double.NaN, null);
      case YES_NO ->
          text.equals("yes")
              ? new BenchAnswer(1.0, null)
              : text.equals("no") ? new BenchAnswer(0.0, null) : refused("yes or no");
      case HEARD -> heard(text);
      case OHMS -> text.equals("open") ? new BenchAnswer(Double.POSITIVE_INFINITY, null) : number(text);
      case NUMBER -> number(text);
      case GAUGE -> {
        GaugeEntry entry = GaugeEntry.parse(text, usual);
        yield new BenchAnswer(entry.kpaGauge(), entry.complaint());
      }
    };
  }

  private static BenchAnswer heard(String text) {
    return switch (text) {
      case "nothing" -> new BenchAnswer(Heard.NOTHING.asAnswer(), null);
      case "puff" -> new BenchAnswer(Heard.PUFF.asAnswer(), null);
      case "on" -> new BenchAnswer(Heard.STEADY_WHILE_ON.asAnswer(), null);
      case "off" -> new BenchAnswer(Heard.STEADY_WHILE_OFF.asAnswer(), null);
      default -> refused("nothing, puff, on or off");
    };
  }

  private static BenchAnswer number(String text) {
    try {
      double value = Double.parseDouble(text.replace(',', '.'));
      if (value >= 0.0 && value <= MOST) {
        return new BenchAnswer(value, null);
      }
    } catch (NumberFormatException e) {
      // Refused below like a number out of range.
    }
    return refused("a number from 0 to 10000");
  }

  private static BenchAnswer refused(String wanted) {
    return new BenchAnswer(Double.NaN, "not understood; give " + wanted);
  }
}
