package org.boostwright.pi.bench;

import java.util.Locale;
import org.boostwright.core.bench.GaugeEntry;
import org.boostwright.core.bench.Heard;
import org.boostwright.core.bench.Question;
import org.boostwright.core.settings.PressureUnit;
import org.jspecify.annotations.Nullable;

/**
 * What a person typed in answer to a question.
 *
 * @param number the answer as a session takes it; NaN = does not know
 * @param complaint what is wrong with it; null when nothing is
 */
public record TypedAnswer(double number, @Nullable String complaint) {
  /** Typed by somebody who does not know. */
  public static final String UNKNOWN = "?";

  /**
   * Reads what was typed.
   *
   * @param usual unit of a gauge reading without one
   */
  public static TypedAnswer parse(Question question, String typed, PressureUnit usual) {
    String text = typed.strip().toLowerCase(Locale.ROOT);
    if (text.equals(UNKNOWN)) {
      return of(Double.NaN);
    }
    return switch (question) {
      case AIR_OFF, PLUG_COIL, SUPPLY_SHUT, SUPPLY_OPEN ->
          text.isEmpty() ? of(Double.NaN) : refused("press enter when it is done");
      case BATTERY_CLICK -> yesOrNo(text);
      case LISTEN_AT_VENT -> heard(text);
      case CLICK_COUNT -> number(text, "a number of double clicks, 0 for none");
      case COIL_OHMS ->
          text.equals("open") ? of(Double.POSITIVE_INFINITY) : number(text, "ohm, or 'open'");
      case ROD_PRELOAD -> number(text, "mm");
      case AIR_ON, UNPLUG_COIL, REGULATOR_WORKING, ROD_CRACK, ROD_FULL, ROD_HELD ->
          gauge(text, usual);
    };
  }

  private static TypedAnswer of(double number) {
    return new TypedAnswer(number, null);
  }

  private static TypedAnswer refused(String wanted) {
    return new TypedAnswer(Double.NaN, "wanted: " + wanted + "; ? when you do not know");
  }

  private static TypedAnswer yesOrNo(String text) {
    return switch (text) {
      case "yes", "y" -> of(1.0);
      case "no", "n" -> of(0.0);
      default -> refused("yes or no");
    };
  }

  private static TypedAnswer heard(String text) {
    return switch (text) {
      case "nothing" -> of(Heard.NOTHING.asAnswer());
      case "puff" -> of(Heard.PUFF.asAnswer());
      case "on" -> of(Heard.STEADY_WHILE_ON.asAnswer());
      case "off" -> of(Heard.STEADY_WHILE_OFF.asAnswer());
      default -> refused("nothing, puff, on or off");
    };
  }

  private static TypedAnswer number(String text, String wanted) {
    try {
      double value = Double.parseDouble(text.replace(',', '.'));
      return value >= 0.0 ? of(value) : refused(wanted);
    } catch (NumberFormatException e) {
      return refused(wanted);
    }
  }

  private static TypedAnswer gauge(String text, PressureUnit usual) {
    GaugeEntry entry = GaugeEntry.parse(text, usual);
    String complaint = entry.complaint();
    return complaint == null ? of(entry.kpaGauge()) : refused(complaint);
  }
}
