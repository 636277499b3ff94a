package org.boostwright.core.settings.file;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.boostwright.core.AnalogChannel;
import org.boostwright.core.settings.ActuatorSettings;
import org.boostwright.core.settings.CarSettings;
import org.boostwright.core.settings.ConverterSettings;
import org.boostwright.core.settings.FeedbackSettings;
import org.boostwright.core.settings.LimitSettings;
import org.boostwright.core.settings.OptionalWires;
import org.boostwright.core.settings.PinSettings;
import org.boostwright.core.settings.ProjectSettings;
import org.boostwright.core.settings.SensorSettings;
import org.boostwright.core.settings.Settings;
import org.boostwright.core.settings.SpoolSettings;
import org.boostwright.core.settings.UnitSettings;
import org.boostwright.core.settings.ValveSettings;
import org.boostwright.core.settings.WiringSettings;
import org.boostwright.core.table.Curve;
import org.tomlj.Toml;
import org.tomlj.TomlParseError;
import org.tomlj.TomlParseOptions;
import org.tomlj.TomlParseResult;
import org.tomlj.TomlPosition;

/**
 * Reads a settings file: the whole file is good, or all that is wrong with it is reported at once
 * and nothing of it is used.
 */
public final class SettingsFile {
  /** The layout of the file this program reads. */
  public static final int SCHEMA = 1;

  /** No settings file is larger than this, bytes. */
  static final int LARGEST_BYTES = 1 << 20;

  /** Some editors put this in front of UTF-8 text. */
  static final String BYTE_ORDER_MARK = "\uFEFF";

  private SettingsFile() {}

  /** Reads a file; never throws for anything that is in it or that keeps it from being read. */
  public static LoadResult load(Path path) {
    String name = fileName(path);
    try {
      if (Files.size(path) > LARGEST_BYTES) {
        return unreadable(name, 1, 1, "is larger than 1 MiB; give the name of a settings file");
      }
      return parse(name, Files.readAllBytes(path));
    } catch (NoSuchFileException e) {
      return unreadable(name, 1, 1, "no such file: " + path + "; check the name and the folder");
    } catch (IOException e) {
      return unreadable(name, 1, 1, "cannot be read: " + e.getMessage() + "; check the file");
    }
  }

  /** The name of a file without its folders. */
  static String fileName(Path path) {
    Path last = path.getFileName();
    return last == null ? path.toString() : last.toString();
  }

  /** Reads the bytes of a file, UTF-8. */
  public static LoadResult parse(String name, byte[] bytes) {
    if (bytes.length > LARGEST_BYTES) {
      return unreadable(name, 1, 1, "is larger than 1 MiB; give the name of a settings file");
    }
    try {
      String text = StandardCharsets.UTF_8.newDecoder().decode(ByteBuffer.wrap(bytes)).toString();
      return parse(name, text);
    } catch (CharacterCodingException e) {
      return Utf8Fault.locate(name, bytes);
    }
  }

  /** Reads the text of a file. */
  public static LoadResult parse(String name, String text) {
    return parse(name, text, KeyNote.Taker.NONE);
  }

  /** The same, with a note taken of each key that is asked for. */
  static LoadResult parse(String name, String text, KeyNote.Taker notes) {
    String body = text.startsWith(BYTE_ORDER_MARK) ? text.substring(1) : text;
    TomlParseResult toml;
    try {
      toml = Toml.parse(body, TomlParseOptions.sourceless());
    } catch (RuntimeException e) {
      return unreadable(
          name, 1, 1, "cannot be read as TOML: " + e.getMessage() + "; check the file");
    }
    Reading reading = new Reading(name, notes);
    for (TomlParseError error : toml.errors()) {
      reading.error(
          "syntax",
          error.position(),
          error.getMessage() + "; correct it or put # in front of the line");
    }
    if (reading.refused()) {
      return new LoadResult(null, reading.problems(), Map.of(), UnitSettings.KPA_ABSOLUTE);
    }
    return read(reading, toml);
  }

  static LoadResult unreadable(String name, int line, int column, String text) {
    Problem problem = new Problem(Severity.ERROR, "unreadable", name, line, column, text);
    return new LoadResult(null, List.of(problem), Map.of(), UnitSettings.KPA_ABSOLUTE);
  }

  private static LoadResult read(Reading reading, TomlParseResult toml) {
    Section top = new Section(reading, "", toml, TomlPosition.positionAt(1, 1));
    if (!top.has("schema")) {
      reading.warning(
          "schema_missing", null, "schema is not stated; write schema = 1 at the top of the file");
    } else {
      top.whole("schema", SCHEMA, SCHEMA, SCHEMA);
    }
    Section unitSection = top.child("units");
    UnitSettings units = CarReader.units(unitSection);
    reading.units(units);
    Section carSection = top.child("car");
    CarSettings car = CarReader.car(carSection);
    Section actuatorSection = top.child("actuator");
    ActuatorSettings actuator = CarReader.actuator(actuatorSection);
    Section sensorSection = top.child("sensors");
    SensorReader sensorReader = new SensorReader(reading);
    SensorSettings sensors = sensorReader.read(sensorSection);
    Section valveSection = top.child("valve");
    ValveSettings valve = ValveReader.read(valveSection);
    Section limitSection = top.child("limits");
    LimitSettings limits = LimitReader.read(limitSection, defaultCutoff(sensors));
    Section wireSection = top.child("wires");
    OptionalWires wires = PinReader.wires(wireSection);
    Section wiringSection = top.child("wiring");
    WiringSettings wiring = WiringReader.read(wiringSection);
    Section pinSection = top.child("pins");
    PinSettings pins =
        new PinReader(reading)
            .pins(pinSection, wires, limits.engineCut(), car.roadPulsesPerKm() > 0.0);
    Section converterSection = top.child("converter");
    ConverterSettings converter = ConverterReader.read(converterSection, sensors);
    Section targetSection = top.child("target");
    TableReader target = TableReader.target(targetSection, UnitSettings.STANDARD_ATMOSPHERE_KPA);
    Section dutySection = top.child("base_duty");
    TableReader duty = TableReader.baseDuty(dutySection);
    Curve exhaustHelp = ControlReader.exhaustHelp(dutySection);
    Section feedbackSection = top.child("feedback");
    FeedbackSettings feedback = ControlReader.feedback(feedbackSection);
    Section spoolSection = top.child("spool");
    SpoolSettings spool = ControlReader.spool(spoolSection);
    Section projectSection = top.child("project");
    ProjectSettings project = ProjectReader.read(projectSection);
    AnalogChannel demand = target.rows().isEmpty() ? duty.demand() : target.demand();
    Settings settings =
        new Settings(
            car,
            units,
            sensors,
            valve,
            target.table(),
            duty.table(),
            limits,
            feedback,
            spool,
            wires,
            wiring,
            demand,
            actuator,
            exhaustHelp,
            pins,
            converter);
    List<Section> sections =
        new ArrayList<>(
            List.of(
                top,
                unitSection,
                carSection,
                actuatorSection,
                sensorSection,
                valveSection,
                limitSection,
                wireSection,
                wiringSection,
                pinSection,
                converterSection,
                targetSection,
                dutySection,
                feedbackSection,
                spoolSection,
                projectSection));
    sections.addAll(sensorReader.sections());
    UnknownKeys.report(sections);
    CrossChecks.run(reading, settings, target, duty);
    return new LoadResult(
        reading.refused() ? null : settings,
        reading.problems(),
        Map.copyOf(reading.stated()),
        units,
        projectSection.present() ? project : null);
  }

  private static double defaultCutoff(SensorSettings sensors) {
    double highest = CrossChecks.highestCutoffKpaAbs(sensors.channel(AnalogChannel.MAP));
    return Math.min(LimitReader.DEFAULT_CUTOFF_KPA_ABS, highest);
  }
}
