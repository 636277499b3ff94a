package org.boostwright.rig.cli;

import java.io.IOException;
import java.nio.file.Path;
import java.util.Optional;
import org.boostwright.core.settings.Settings;
import org.boostwright.core.settings.file.CheckReport;
import org.boostwright.core.settings.file.LoadResult;
import org.boostwright.core.settings.file.Problem;
import org.boostwright.core.settings.file.SettingsCheck;
import org.boostwright.core.settings.file.SettingsFile;
import org.boostwright.rig.result.Finding;
import org.boostwright.rig.result.Result;
import org.boostwright.rig.result.ResultBuilder;
import org.boostwright.rig.result.SettingsTables;
import org.boostwright.rig.result.Severity;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** Everything that is to be said about a settings file. */
@Command(
    name = "check",
    header = "Name everything that is wrong with a settings file, and what follows from it.",
    description = {
      "Read a settings file and name every problem with line and column, value, unit, limit and",
      "what to do; then every number in effect and what follows from it at the bench."
    },
    footer = {
      "",
      "Examples:",
      "  boostwright check car.toml",
      "  boostwright check --values",
      "",
      "A file is accepted as a whole or refused as a whole."
    })
final class CheckCommand extends Subcommand {
  @Mixin SettingsOption settings = new SettingsOption();

  @Parameters(
      arity = "0..1",
      paramLabel = "FILE",
      description = "The settings file; the same as --settings FILE.")
  Optional<Path> file = Optional.empty();

  @Option(names = "--values", description = "Also list every value in effect, defaults marked.")
  boolean values;

  private String listing = "";

  CheckCommand(Terminal terminal) {
    super(terminal);
  }

  @Override
  Outcome work(Progress progress) throws IOException, WrongUseException {
    if (file.isPresent()) {
      if (settings.file.isPresent()) {
        throw new WrongUseException(
            "the settings file is given twice", "leave out --settings or the name alone");
      }
      settings.file = file;
    }
    SettingsOption.Source source = settings.find();
    LoadResult loaded = SettingsFile.parse(source.name(), source.bytes());
    CheckReport report = SettingsCheck.report(source.name(), loaded);
    listing = values && report.ok() ? report.listing() : "";
    return Outcome.printed(result(source, loaded.settings(), report));
  }

  private static Result result(
      SettingsOption.Source source, @Nullable Settings loaded, CheckReport report) {
    ResultBuilder result = new ResultBuilder("check").provenance("settings", source.where());
    int problems = 0;
    for (Problem problem : report.problems()) {
      Finding finding = SettingsFindings.of(problem);
      result.add(finding);
      problems += finding.severity() == Severity.PROBLEM ? 1 : 0;
    }
    if (loaded == null) {
      return result
          .headline(
              source.where() + " is refused as a whole: " + counted(problems, "problem") + ".")
          .build();
    }
    result.units(loaded.units()).settingsDigest(report.settingsDigest());
    result.provenance("fingerprint of the hardware", report.hardwareDigest());
    for (CheckReport.Figure figure : report.figures()) {
      result.measure(figure.id(), figure.meaning(), figure.value(), figure.unit());
    }
    SettingsTables.add(result, loaded);
    int remarks = report.problems().size() - problems;
    return result
        .headline(
            source.where()
                + " can be used"
                + (remarks > 0 ? "; " + counted(remarks, "remark") + " to read" : "")
                + ".")
        .build();
  }

  private static String counted(int number, String what) {
    return number + " " + what + (number == 1 ? "" : "s");
  }

  @Override
  void print(Result result) {
    super.print(result);
    if (!output.json && !listing.isEmpty()) {
      terminal.out().println();
      terminal.out().print(listing);
      terminal.out().flush();
    }
  }
}
