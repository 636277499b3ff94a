package org.boostwright.rig.scenario.file;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.io.Writer;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import javax.xml.stream.XMLOutputFactory;
import javax.xml.stream.XMLStreamException;
import javax.xml.stream.XMLStreamWriter;

/**
 * Verdicts as JUnit XML, which continuous-integration servers read: a failed scenario is a failure,
 * one whose fault never took effect an error.
 */
public final class JUnitXml {
  private JUnitXml() {}

  /** Writes the file. */
  public static void write(Path file, List<ScenarioVerdict> verdicts) throws IOException {
    try (Writer to = java.nio.file.Files.newBufferedWriter(file)) {
      XMLStreamWriter xml = XMLOutputFactory.newInstance().createXMLStreamWriter(to);
      xml.writeStartDocument("UTF-8", "1.0");
      xml.writeCharacters("\n");
      xml.writeStartElement("testsuite");
      xml.writeAttribute("name", "boostwright faults");
      xml.writeAttribute("tests", Integer.toString(verdicts.size()));
      xml.writeAttribute("failures", count(verdicts, ScenarioVerdict.Status.FAILED));
      xml.writeAttribute("errors", count(verdicts, ScenarioVerdict.Status.INVALID));
      for (ScenarioVerdict verdict : verdicts) {
        testCase(xml, verdict);
      }
      xml.writeCharacters("\n");
      xml.writeEndElement();
      xml.writeEndDocument();
      xml.close();
    } catch (XMLStreamException e) {
      throw new UncheckedIOException(new IOException(e));
    }
  }

  private static String count(List<ScenarioVerdict> verdicts, ScenarioVerdict.Status status) {
    return Long.toString(verdicts.stream().filter(v -> v.status() == status).count());
  }

  private static void testCase(XMLStreamWriter xml, ScenarioVerdict verdict)
      throws XMLStreamException {
    xml.writeCharacters("\n  ");
    xml.writeStartElement("testcase");
    xml.writeAttribute("classname", "scenario." + verdict.scenario().row());
    xml.writeAttribute("name", verdict.name());
    switch (verdict.status()) {
      case FAILED -> problem(xml, "failure", String.join("; ", verdict.failures()));
      case INVALID -> problem(xml, "error", "the fault was not seen to take effect");
      case PASSED ->
          problem(
              xml,
              "system-out",
              String.format(
                  Locale.ROOT,
                  "report after %.0f ms, coil off after %.0f ms, peak %.1f kPa over the limit",
                  verdict.detectionSeconds() * 1e3,
                  verdict.reactionSeconds() * 1e3,
                  verdict.peakOverLimitKpa()));
    }
    xml.writeEndElement();
  }

  private static void problem(XMLStreamWriter xml, String element, String text)
      throws XMLStreamException {
    xml.writeStartElement(element);
    if (element.equals("system-out")) {
      xml.writeCharacters(text);
    } else {
      xml.writeAttribute("message", text);
    }
    xml.writeEndElement();
  }
}
