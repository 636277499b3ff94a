package org.boostwright.core.settings.file;

import java.util.List;

/**
 * What a check of a settings file found.
 *
 * @param file the file's name
 * @param problems everything to say about it, errors first
 * @param values every effective value in the units of the file; empty when the file was refused
 * @param figures numbers worked out from the values; empty when the file was refused
 * @param settingsDigest fingerprint of what decides the behaviour; empty when refused
 * @param hardwareDigest fingerprint of what is screwed, plumbed and soldered; empty when refused
 */
public record CheckReport(
    String file,
    List<Problem> problems,
    List<Value> values,
    List<Figure> figures,
    String settingsDigest,
    String hardwareDigest) {

  /**
   * One effective value.
   *
   * @param key dotted key of the file, without a pressure unit at its end
   * @param text the value as text; a table has one line per row
   * @param unit its unit, empty for none
   * @param stated true when the file states it, false for a default
   */
  public record Value(String key, String text, String unit, boolean stated) {}

  /**
   * A number worked out from the settings.
   *
   * @param id stable dotted snake_case name
   * @param value the number
   * @param unit its unit
   * @param meaning what it says, in words
   */
  public record Figure(String id, double value, String unit, String meaning) {}

  /** True when the file loads. */
  public boolean ok() {
    return problems.stream().noneMatch(problem -> problem.severity() == Severity.ERROR);
  }

  /** Problems, then all values, then the figures, for reading. */
  public String text() {
    StringBuilder text = new StringBuilder();
    for (Problem problem : problems) {
      text.append(problem).append('\n');
    }
    if (!ok()) {
      return text.append(file).append(": refused; nothing of it is used\n").toString();
    }
    text.append(problems.isEmpty() ? "" : "\n").append(listing());
    text.append('\n');
    for (Figure figure : figures) {
      text.append(Grid.left(figure.id(), 30))
          .append(Words.number(figure.value()))
          .append(figure.unit().isEmpty() ? "" : " " + figure.unit())
          .append("  (")
          .append(figure.meaning())
          .append(")\n");
    }
    return text.toString();
  }

  /** Every effective value, one line each; tables below their key. */
  public String listing() {
    StringBuilder text = new StringBuilder();
    int width = values.stream().mapToInt(value -> value.key().length()).max().orElse(0) + 2;
    String group = "";
    for (Value value : values) {
      String next = value.key().replaceAll("\\.[^.]*$", "");
      if (!next.equals(group) && !group.isEmpty()) {
        text.append('\n');
      }
      group = next;
      String after =
          (value.unit().isEmpty() ? "" : " " + value.unit())
              + (value.stated() ? "" : "  (default)");
      if (value.text().indexOf('\n') < 0) {
        text.append(Grid.left(value.key(), width)).append(value.text()).append(after);
      } else {
        text.append(value.key()).append(after).append("\n  ");
        text.append(value.text().replace("\n", "\n  "));
      }
      text.append('\n');
    }
    return text.toString();
  }
}
