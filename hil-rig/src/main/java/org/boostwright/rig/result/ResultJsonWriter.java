package org.boostwright.rig.result;

import com.fasterxml.jackson.core.JsonFactory;
import com.fasterxml.jackson.core.JsonGenerator;
import com.fasterxml.jackson.core.util.DefaultIndenter;
import com.fasterxml.jackson.core.util.DefaultPrettyPrinter;
import com.fasterxml.jackson.core.util.Separators;
import java.io.IOException;
import java.io.StringWriter;
import java.io.UncheckedIOException;
import java.math.BigDecimal;
import java.math.MathContext;
import java.util.List;
import java.util.Map;

/** Writes the fields in the order of docs/json.md. */
final class ResultJsonWriter {
  /** Digits kept in plots; a plot is looked at, a measurement is computed with. */
  private static final MathContext PLOT_DIGITS = new MathContext(7);

  private final JsonGenerator out;

  private ResultJsonWriter(JsonGenerator out) {
    this.out = out;
  }

  static String write(Result result) {
    StringWriter text = new StringWriter();
    try (JsonGenerator out = new JsonFactory().createGenerator(text)) {
      // Unix line ends on every machine, so that equal results are equal bytes.
      out.setPrettyPrinter(
          new DefaultPrettyPrinter(
                  Separators.createDefaultInstance()
                      .withObjectFieldValueSpacing(Separators.Spacing.AFTER))
              .withObjectIndenter(new DefaultIndenter("  ", "\n")));
      new ResultJsonWriter(out).result(result);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
    return text.append('\n').toString();
  }

  private void result(Result r) throws IOException {
    out.writeStartObject();
    out.writeStringField("command", r.command());
    out.writeStringField("version", r.version());
    out.writeStringField("verdict", r.verdict().word());
    out.writeStringField("headline", r.headline());
    out.writeFieldName("settings_digest");
    if (r.settingsDigest().isPresent()) {
      out.writeString(r.settingsDigest().get());
    } else {
      out.writeNull();
    }
    out.writeFieldName("seed");
    if (r.seed().isPresent()) {
      out.writeNumber(r.seed().getAsLong());
    } else {
      out.writeNull();
    }
    out.writeObjectFieldStart("display");
    out.writeStringField("pressure", r.units().pressure().label());
    out.writeBooleanField("gauge", r.units().gauge());
    out.writeEndObject();
    each("measurements", r.measurements(), this::measurement);
    each("findings", r.findings(), this::finding);
    texts("files", r.files());
    each("series", r.series(), this::plot);
    each("time_lines", r.timeLines(), this::timeLine);
    each("tables", r.tables(), this::table);
    texts("provenance", r.provenance());
    out.writeArrayFieldStart("cautions");
    for (String caution : r.cautions()) {
      out.writeString(caution);
    }
    out.writeEndArray();
    out.writeEndObject();
  }

  private void measurement(Measurement m) throws IOException {
    out.writeStringField("id", m.id());
    number("value", m.value());
    out.writeStringField("unit", m.unit());
    number("low", m.low());
    number("high", m.high());
    out.writeStringField("verdict", m.judgement().word());
    out.writeStringField("text", m.text());
  }

  private void finding(Finding f) throws IOException {
    out.writeStringField("code", f.code());
    out.writeStringField("severity", f.severity().word());
    out.writeStringField("text", f.text());
    out.writeStringField("next", f.next());
  }

  private void plot(Plot p) throws IOException {
    out.writeStringField("id", p.id());
    out.writeStringField("title", p.title());
    out.writeStringField("x_label", p.xLabel());
    out.writeStringField("x_unit", p.xUnit());
    numbers("x", p.x());
    each("lines", p.lines(), this::line);
    each("limits", p.limits(), this::limit);
    each("bands", p.bands(), this::band);
  }

  private void line(Plot.Line l) throws IOException {
    out.writeStringField("id", l.id());
    out.writeStringField("label", l.label());
    out.writeStringField("unit", l.unit());
    out.writeStringField("stroke", l.stroke().word());
    numbers("y", l.y());
  }

  private void limit(Plot.Limit l) throws IOException {
    out.writeStringField("label", l.label());
    out.writeStringField("unit", l.unit());
    number("value", l.value());
  }

  private void band(Plot.Band b) throws IOException {
    out.writeStringField("label", b.label());
    number("from", b.from());
    number("to", b.to());
  }

  private void timeLine(TimeLine t) throws IOException {
    out.writeStringField("id", t.id());
    out.writeStringField("title", t.title());
    out.writeStringField("unit", t.unit());
    each("rows", t.rows(), this::timeLineRow);
  }

  private void timeLineRow(TimeLine.Row row) throws IOException {
    out.writeStringField("label", row.label());
    each("marks", row.marks(), this::mark);
    number("limit", row.limit());
    out.writeStringField("verdict", row.judgement().word());
  }

  private void mark(TimeLine.Mark mark) throws IOException {
    out.writeStringField("label", mark.label());
    number("at", mark.at());
  }

  private void table(HeatTable t) throws IOException {
    out.writeStringField("id", t.id());
    out.writeStringField("title", t.title());
    out.writeStringField("row_label", t.rowLabel());
    out.writeStringField("row_unit", t.rowUnit());
    numbers("rows", t.rows());
    out.writeStringField("column_label", t.columnLabel());
    out.writeStringField("column_unit", t.columnUnit());
    numbers("columns", t.columns());
    out.writeStringField("unit", t.unit());
    out.writeArrayFieldStart("values");
    for (double[] row : t.values()) {
      numbers(row);
    }
    out.writeEndArray();
  }

  private void texts(String name, Map<String, String> texts) throws IOException {
    out.writeObjectFieldStart(name);
    for (Map.Entry<String, String> entry : texts.entrySet()) {
      out.writeStringField(entry.getKey(), entry.getValue());
    }
    out.writeEndObject();
  }

  private void number(String name, double value) throws IOException {
    out.writeFieldName(name);
    if (Double.isFinite(value)) {
      out.writeNumber(value);
    } else {
      out.writeNull();
    }
  }

  private void numbers(String name, double[] values) throws IOException {
    out.writeFieldName(name);
    numbers(values);
  }

  private void numbers(double[] values) throws IOException {
    out.writeStartArray();
    for (double value : values) {
      if (Double.isFinite(value)) {
        out.writeNumber(new BigDecimal(value).round(PLOT_DIGITS).doubleValue());
      } else {
        out.writeNull();
      }
    }
    out.writeEndArray();
  }

  private <T> void each(String name, List<T> things, Fields<T> fields) throws IOException {
    out.writeArrayFieldStart(name);
    for (T thing : things) {
      out.writeStartObject();
      fields.write(thing);
      out.writeEndObject();
    }
    out.writeEndArray();
  }

  private interface Fields<T> {
    void write(T thing) throws IOException;
  }
}
