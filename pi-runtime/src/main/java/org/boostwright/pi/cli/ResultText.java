package org.boostwright.pi.cli;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;

/** The result object of docs/json.md for the commands on the Pi, as JSON and as text. */
final class ResultText {
  /** A measurement; NaN limits are no limits. */
  private record Measured(
      String id, String text, double value, String unit, double low, double high) {
    private boolean judged() {
      return !Double.isNaN(low) || !Double.isNaN(high);
    }

    private String verdict() {
      if (!judged()) {
        return "not judged";
      }
      if (Double.isNaN(value)) {
        return "not measured";
      }
      boolean within = (Double.isNaN(low) || value >= low) && (Double.isNaN(high) || value <= high);
      return within ? "passed" : "failed";
    }
  }

  /** Something found. */
  private record Found(String code, String severity, String text, String next) {}

  private final String command;
  private final String settingsDigest;
  private final List<Measured> measurements = new ArrayList<>();
  private final List<Found> findings = new ArrayList<>();
  private final Map<String, String> files = new LinkedHashMap<>();
  private final Map<String, String> provenance = new LinkedHashMap<>();
  private String headline = "";
  private boolean refused;

  ResultText(String command, String settingsDigest) {
    this.command = command;
    this.settingsDigest = settingsDigest;
  }

  void headline(String sentence) {
    headline = sentence;
  }

  void measure(String id, String text, double value, String unit) {
    measure(id, text, value, unit, Double.NaN, Double.NaN);
  }

  void measure(String id, String text, double value, String unit, double low, double high) {
    measurements.add(new Measured(id, text, value, unit, low, high));
  }

  void problem(String code, String text, String next) {
    findings.add(new Found(code, "problem", text, next));
  }

  void caution(String code, String text, String next) {
    findings.add(new Found(code, "caution", text, next));
  }

  void refuse(String code, String text, String next) {
    refused = true;
    problem(code, text, next);
  }

  void file(String kind, String path) {
    files.put(kind, path);
  }

  void provenance(String name, String text) {
    provenance.put(name, text);
  }

  /** {@code passed}, {@code failed} or {@code refused}. */
  String verdict() {
    if (refused) {
      return "refused";
    }
    boolean fails =
        measurements.stream()
                .anyMatch(m -> m.verdict().equals("failed") || m.verdict().equals("not measured"))
            || findings.stream().anyMatch(f -> f.severity().equals("problem"));
    return fails ? "failed" : "passed";
  }

  /** One line, then measurements and findings. */
  String text(boolean quiet) {
    StringBuilder out = new StringBuilder();
    out.append(command).append(' ').append(verdict()).append(": ").append(headline).append('\n');
    if (quiet) {
      return out.toString();
    }
    int width = measurements.stream().mapToInt(m -> m.text().length()).max().orElse(0);
    for (Measured m : measurements) {
      out.append("  ").append(m.text()).append(" ".repeat(width - m.text().length() + 2));
      out.append(number(m.value())).append(' ').append(m.unit());
      if (m.judged()) {
        out.append("  ").append(m.verdict());
      }
      out.append('\n');
    }
    for (Found f : findings) {
      out.append(f.severity()).append(": ").append(f.text()).append('\n');
      if (!f.next().isEmpty()) {
        out.append("  next: ").append(f.next()).append('\n');
      }
    }
    files.forEach((kind, path) -> out.append(kind).append("  ").append(path).append('\n'));
    return out.toString();
  }

  private static String number(double value) {
    if (Double.isNaN(value)) {
      return "-";
    }
    return value == Math.rint(value) && Math.abs(value) < 1e15
        ? Long.toString((long) value)
        : String.format(Locale.ROOT, "%.3f", value);
  }

  /** The object. */
  String json() {
    StringBuilder out = new StringBuilder("{\n");
    field(out, "command", quoted(command));
    field(out, "version", quoted(PiMain.Version.get()));
    field(out, "verdict", quoted(verdict()));
    field(out, "headline", quoted(headline));
    field(out, "settings_digest", settingsDigest.isEmpty() ? "null" : quoted(settingsDigest));
    field(out, "seed", "null");
    List<String> all = new ArrayList<>();
    for (Measured m : measurements) {
      all.add(
          "{\"id\": "
              + quoted(m.id())
              + ", \"value\": "
              + jsonNumber(m.value())
              + ", \"unit\": "
              + quoted(m.unit())
              + ", \"low\": "
              + jsonNumber(m.low())
              + ", \"high\": "
              + jsonNumber(m.high())
              + ", \"verdict\": "
              + quoted(m.verdict())
              + ", \"text\": "
              + quoted(m.text())
              + "}");
    }
    list(out, "measurements", all);
    all.clear();
    for (Found f : findings) {
      all.add(
          "{\"code\": "
              + quoted(f.code())
              + ", \"severity\": "
              + quoted(f.severity())
              + ", \"text\": "
              + quoted(f.text())
              + ", \"next\": "
              + quoted(f.next())
              + "}");
    }
    list(out, "findings", all);
    field(out, "files", object(files));
    out.append("  \"provenance\": ").append(object(provenance)).append("\n}\n");
    return out.toString();
  }

  private static void field(StringBuilder out, String name, String value) {
    out.append("  \"").append(name).append("\": ").append(value).append(",\n");
  }

  private static void list(StringBuilder out, String name, List<String> values) {
    String joined = values.isEmpty() ? "" : "\n    " + String.join(",\n    ", values) + "\n  ";
    field(out, name, "[" + joined + "]");
  }

  private static String object(Map<String, String> map) {
    List<String> all = new ArrayList<>();
    map.forEach((key, value) -> all.add(quoted(key) + ": " + quoted(value)));
    return "{" + String.join(", ", all) + "}";
  }

  private static String jsonNumber(double value) {
    return Double.isFinite(value) ? number6(value) : "null";
  }

  private static String number6(double value) {
    return value == Math.rint(value) && Math.abs(value) < 1e15
        ? Long.toString((long) value)
        : Double.toString(value);
  }

  private static String quoted(String text) {
    StringBuilder out = new StringBuilder("\"");
    for (int i = 0; i < text.length(); i++) {
      char c = text.charAt(i);
      if (c == '"' || c == '\\') {
        out.append('\\').append(c);
      } else if (c < 0x20) {
        out.append(String.format("\\u%04x", (int) c));
      } else {
        out.append(c);
      }
    }
    return out.append('"').toString();
  }
}
