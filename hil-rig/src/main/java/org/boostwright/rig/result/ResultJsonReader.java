package org.boostwright.rig.result;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalLong;
import java.util.function.Function;
import org.boostwright.core.settings.PressureUnit;
import org.boostwright.core.settings.UnitSettings;

/**
 * Reads what {@link ResultJsonWriter} wrote, and results written by hand or by a later version:
 * unknown fields are passed over, missing lists are empty, a missing or wrong scalar is an error
 * that names the field.
 */
final class ResultJsonReader {
  private ResultJsonReader() {}

  static Result read(String json) throws UnreadableResultException {
    JsonNode root;
    try {
      root = new ObjectMapper().readTree(json);
    } catch (JsonProcessingException e) {
      throw new UnreadableResultException(
          "not JSON: line " + e.getLocation().getLineNr() + ": " + e.getOriginalMessage(), e);
    }
    if (!root.isObject()) {
      throw new UnreadableResultException("not a result: a JSON object is expected");
    }
    try {
      return result(root);
    } catch (IllegalArgumentException e) {
      throw new UnreadableResultException("not a result: " + e.getMessage(), e);
    }
  }

  private static Result result(JsonNode n) {
    String command = text(n, "command");
    Verdict verdict = word(text(n, "verdict"), "verdict", Verdict.values(), Verdict::word);
    return new Result(
        command,
        text(n, "version"),
        verdict,
        optionalText(n, "headline").orElse(command + " " + verdict.word() + "."),
        optionalText(n, "settings_digest"),
        n.hasNonNull("seed") ? OptionalLong.of(n.get("seed").asLong()) : OptionalLong.empty(),
        n.hasNonNull("display") ? units(n.get("display")) : UnitSettings.KPA_ABSOLUTE,
        each(n, "measurements", ResultJsonReader::measurement),
        each(n, "findings", ResultJsonReader::finding),
        texts(n, "files"),
        each(n, "series", ResultJsonReader::plot),
        each(n, "time_lines", ResultJsonReader::timeLine),
        each(n, "tables", ResultJsonReader::table),
        texts(n, "provenance"),
        each(n, "cautions", JsonNode::asText));
  }

  private static UnitSettings units(JsonNode n) {
    PressureUnit unit =
        word(text(n, "pressure"), "display.pressure", PressureUnit.values(), PressureUnit::label);
    return new UnitSettings(unit, n.path("gauge").asBoolean(false));
  }

  private static Measurement measurement(JsonNode n) {
    String id = text(n, "id");
    return new Measurement(
        id,
        optionalText(n, "text").orElse(id),
        number(n, "value"),
        text(n, "unit"),
        number(n, "low"),
        number(n, "high"),
        word(text(n, "verdict"), "verdict of " + id, Judgement.values(), Judgement::word));
  }

  private static Finding finding(JsonNode n) {
    return new Finding(
        text(n, "code"),
        word(text(n, "severity"), "severity", Severity.values(), Severity::word),
        text(n, "text"),
        optionalText(n, "next").orElse(""));
  }

  private static Plot plot(JsonNode n) {
    return new Plot(
        text(n, "id"),
        text(n, "title"),
        text(n, "x_label"),
        text(n, "x_unit"),
        numbers(n, "x"),
        each(n, "lines", ResultJsonReader::line),
        each(
            n,
            "limits",
            m -> new Plot.Limit(text(m, "label"), text(m, "unit"), number(m, "value"))),
        each(n, "bands", m -> new Plot.Band(text(m, "label"), number(m, "from"), number(m, "to"))));
  }

  private static Plot.Line line(JsonNode n) {
    return new Plot.Line(
        text(n, "id"),
        text(n, "label"),
        text(n, "unit"),
        word(text(n, "stroke"), "stroke", Plot.Stroke.values(), Plot.Stroke::word),
        numbers(n, "y"));
  }

  private static TimeLine timeLine(JsonNode n) {
    return new TimeLine(
        text(n, "id"),
        text(n, "title"),
        text(n, "unit"),
        each(
            n,
            "rows",
            row ->
                new TimeLine.Row(
                    text(row, "label"),
                    each(
                        row, "marks", m -> new TimeLine.Mark(text(m, "label"), number(m, "at"))),
                    number(row, "limit"))));
  }

  private static HeatTable table(JsonNode n) {
    return new HeatTable(
        text(n, "id"),
        text(n, "title"),
        text(n, "row_label"),
        text(n, "row_unit"),
        numbers(n, "rows"),
        text(n, "column_label"),
        text(n, "column_unit"),
        numbers(n, "columns"),
        text(n, "unit"),
        each(n, "values", row -> numbers(row, "values")).toArray(double[][]::new));
  }

  private static String text(JsonNode n, String field) {
    JsonNode value = n.path(field);
    if (!value.isTextual()) {
      throw new IllegalArgumentException("field \"" + field + "\" is missing or not a text");
    }
    return value.asText();
  }

  private static Optional<String> optionalText(JsonNode n, String field) {
    return n.hasNonNull(field) ? Optional.of(text(n, field)) : Optional.empty();
  }

  private static double number(JsonNode n, String field) {
    return numberOf(n.path(field), field);
  }

  private static double numberOf(JsonNode value, String field) {
    if (value.isNull() || value.isMissingNode()) {
      return Double.NaN;
    }
    if (!value.isNumber()) {
      throw new IllegalArgumentException("field \"" + field + "\" is not a number");
    }
    return value.asDouble();
  }

  private static double[] numbers(JsonNode n, String field) {
    JsonNode array = n.isArray() ? n : n.path(field);
    if (!array.isArray()) {
      throw new IllegalArgumentException("field \"" + field + "\" is not a list of numbers");
    }
    double[] values = new double[array.size()];
    for (int i = 0; i < values.length; i++) {
      values[i] = numberOf(array.get(i), field);
    }
    return values;
  }

  private static Map<String, String> texts(JsonNode n, String field) {
    Map<String, String> texts = new LinkedHashMap<>();
    n.path(field).properties().forEach(e -> texts.put(e.getKey(), e.getValue().asText()));
    return texts;
  }

  private static <T> List<T> each(JsonNode n, String field, Function<JsonNode, T> read) {
    List<T> things = new ArrayList<>();
    n.path(field).forEach(child -> things.add(read.apply(child)));
    return things;
  }

  private static <T> T word(String word, String field, T[] all, Function<T, String> words) {
    return Arrays.stream(all)
        .filter(t -> words.apply(t).equals(word))
        .findFirst()
        .orElseThrow(
            () ->
                new IllegalArgumentException(
                    field
                        + " is \""
                        + word
                        + "\"; known are "
                        + String.join(", ", Arrays.stream(all).map(words).toList())));
  }
}
