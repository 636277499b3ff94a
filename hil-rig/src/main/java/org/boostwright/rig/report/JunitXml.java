package org.boostwright.rig.report;

import java.io.IOException;
import java.io.StringWriter;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import javax.xml.stream.XMLOutputFactory;
import javax.xml.stream.XMLStreamException;
import javax.xml.stream.XMLStreamWriter;
import org.boostwright.core.settings.file.AtomicFile;
import org.boostwright.rig.result.Finding;
import org.boostwright.rig.result.Judgement;
import org.boostwright.rig.result.Measurement;
import org.boostwright.rig.result.Result;
import org.boostwright.rig.result.Severity;

/**
 * A result as JUnit XML, the form build servers read: one test case for each judged measurement and
 * each problem. What could not be measured is an error, never passed.
 */
public final class JunitXml {
  private JunitXml() {}

  /** Writes the file whole or not at all. */
  public static void write(Path file, Result result) throws IOException {
    AtomicFile.write(file, text(result).getBytes(StandardCharsets.UTF_8));
  }

  /** The text. */
  public static String text(Result result) {
    StringWriter text = new StringWriter();
    try {
      XMLStreamWriter xml = XMLOutputFactory.newFactory().createXMLStreamWriter(text);
      xml.writeStartDocument("UTF-8", "1.0");
      suite(xml, result);
      xml.writeEndDocument();
      xml.close();
    } catch (XMLStreamException e) {
      throw new IllegalStateException("a string takes everything", e);
    }
    return text.append('\n').toString();
  }

  private static void suite(XMLStreamWriter xml, Result result) throws XMLStreamException {
    List<Measurement> judged =
        result.measurements().stream().filter(m -> m.judgement() != Judgement.NOT_JUDGED).toList();
    List<Finding> problems =
        result.findings().stream().filter(f -> f.severity() == Severity.PROBLEM).toList();
    long failures =
        judged.stream().filter(m -> m.judgement() == Judgement.FAILED).count() + problems.size();
    long errors = judged.stream().filter(m -> m.judgement() == Judgement.NOT_MEASURED).count();
    xml.writeStartElement("testsuite");
    xml.writeAttribute("name", "boostwright " + result.command());
    xml.writeAttribute("tests", Integer.toString(judged.size() + problems.size()));
    xml.writeAttribute("failures", Long.toString(failures));
    xml.writeAttribute("errors", Long.toString(errors));
    xml.writeAttribute("skipped", "0");
    for (Measurement m : judged) {
      measurement(xml, result.command(), m);
    }
    for (Finding problem : problems) {
      begin(xml, result.command(), problem.code());
      xml.writeStartElement("failure");
      xml.writeAttribute("message", clean(problem.text()));
      xml.writeCharacters(clean(problem.next()));
      xml.writeEndElement();
      xml.writeEndElement();
    }
    xml.writeEndElement();
  }

  private static void measurement(XMLStreamWriter xml, String command, Measurement m)
      throws XMLStreamException {
    begin(xml, command, m.id());
    if (m.judgement().fails()) {
      xml.writeStartElement(m.judgement() == Judgement.FAILED ? "failure" : "error");
      xml.writeAttribute(
          "message",
          clean(
              String.format(
                  Locale.ROOT,
                  "%s: %s %s, allowed %s to %s",
                  m.text(),
                  m.value(),
                  m.unit(),
                  m.low(),
                  m.high())));
      xml.writeEndElement();
    } else {
      xml.writeStartElement("system-out");
      xml.writeCharacters(clean(m.text() + ": " + m.value() + " " + m.unit()));
      xml.writeEndElement();
    }
    xml.writeEndElement();
  }

  private static void begin(XMLStreamWriter xml, String command, String name)
      throws XMLStreamException {
    xml.writeStartElement("testcase");
    xml.writeAttribute("classname", "boostwright." + command);
    xml.writeAttribute("name", clean(name));
  }

  /** XML 1.0 has no control characters, not even escaped. */
  private static String clean(String text) {
    return text.replaceAll("[\\x00-\\x08\\x0B\\x0C\\x0E-\\x1F\\uFFFE\\uFFFF]", "?");
  }
}
