package org.boostwright.rig.cli;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.boostwright.core.settings.Settings;
import org.boostwright.core.settings.file.LoadResult;
import org.boostwright.core.settings.file.Problem;
import org.boostwright.core.settings.file.SettingsFile;
import org.boostwright.rig.result.Finding;
import org.boostwright.rig.scenario.ProjectCarSettings;
import picocli.CommandLine.Option;

/** Which settings a command works with. */
final class SettingsOption {
  private static final Path USUAL = Path.of("car.toml");

  @Option(
      names = "--settings",
      paramLabel = "FILE",
      description =
          "Settings file. Default: car.toml in the current folder if there is one, else "
              + "the built-in project car; the command says which it took.")
  Optional<Path> file = Optional.empty();

  /**
   * Text of a settings file and where it is from.
   *
   * @param name as shown in messages
   * @param bytes the file
   * @param where for people
   */
  record Source(String name, byte[] bytes, String where) {}

  /** Settings that loaded. */
  record Loaded(Settings settings, LoadResult result, Source source) {}

  /** The settings file on this machine; empty for the built-in car. */
  Optional<Path> path() {
    return file.isPresent() ? file : Files.exists(USUAL) ? Optional.of(USUAL) : Optional.empty();
  }

  /** Finds the file without judging what is in it. */
  Source find() throws IOException {
    if (file.isPresent()) {
      return read(file.get(), file.get().toString());
    }
    if (Files.exists(USUAL)) {
      return read(USUAL, "car.toml in the current folder");
    }
    return new Source(
        ProjectCarSettings.FILE_NAME,
        ProjectCarSettings.text().getBytes(StandardCharsets.UTF_8),
        "the built-in project car");
  }

  /** Finds and loads. */
  Loaded load() throws IOException, WrongUseException {
    return parse(find());
  }

  /** Loads a second settings file, beside the one of the option. */
  static Loaded read(Path path) throws IOException, WrongUseException {
    return parse(read(path, path.toString()));
  }

  /** Loads settings, or gives up with everything that is wrong with them. */
  static Loaded parse(Source source) throws WrongUseException {
    LoadResult result = SettingsFile.parse(source.name(), source.bytes());
    Settings settings = result.settings();
    if (settings == null) {
      List<Finding> findings = new ArrayList<>();
      for (Problem problem : result.problems()) {
        findings.add(SettingsFindings.of(problem));
      }
      throw new WrongUseException(source.where() + " was refused as a whole", findings);
    }
    return new Loaded(settings, result, source);
  }

  private static Source read(Path path, String where) throws IOException {
    return new Source(path.toString(), Files.readAllBytes(path), where);
  }

  /** The source's text. */
  static String text(Source source) {
    return new String(source.bytes(), StandardCharsets.UTF_8);
  }
}
