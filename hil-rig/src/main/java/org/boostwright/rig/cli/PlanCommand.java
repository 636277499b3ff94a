package org.boostwright.rig.cli;

import java.io.IOException;
import java.nio.file.Path;
import java.util.Optional;
import org.boostwright.core.settings.ProjectSettings;
import org.boostwright.core.settings.Settings;
import org.boostwright.core.settings.file.CheckReport;
import org.boostwright.core.settings.file.LoadResult;
import org.boostwright.core.settings.file.Problem;
import org.boostwright.core.settings.file.SettingsCheck;
import org.boostwright.core.settings.file.SettingsFile;
import org.boostwright.core.settings.file.Severity;
import org.boostwright.rig.plan.Plan;
import org.boostwright.rig.plant.PlantParams;
import org.boostwright.rig.result.ResultBuilder;
import org.boostwright.rig.result.Verdict;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Parameters;

/** Whether a project fits together. */
@Command(
    name = "plan",
    header = "Before buying: does it fit together? Go or no-go, with reasons.",
    description = {
      "Check a project before anything is bought: target against spring, pressure ratio at your",
      "altitudes, sensor against the run-away pressure, hoses, valve window, converter, layout."
    },
    footer = {
      "",
      "Examples:",
      "  boostwright plan car.toml",
      "  boostwright plan car.toml --set virtual.turbine_k1=0.017",
      "",
      "It reads [project] and the rest of the settings file; see docs/commissioning.md.",
      "A go says that nothing speaks against it, not that it is safe."
    })
final class PlanCommand extends Subcommand {
  private static final String LAYOUT_REFUSED = "layout_refused";

  @Mixin SettingsOption settings = new SettingsOption();
  @Mixin SetOption set = new SetOption();

  @Parameters(
      arity = "0..1",
      paramLabel = "FILE",
      description = "The settings file; the same as --settings FILE.")
  Optional<Path> file = Optional.empty();

  PlanCommand(Terminal terminal) {
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
    PlantParams base = set.change(PlantParams.PROJECT_CAR);
    SettingsOption.Source source = set.change(settings.find());
    LoadResult loaded = SettingsFile.parse(source.name(), source.bytes());
    ResultBuilder result = new ResultBuilder("plan").provenance("settings", source.where());
    set.record(result);
    Settings car = loaded.settings();
    if (car == null) {
      return Outcome.printed(refused(result, loaded, source).build());
    }
    ProjectSettings project = loaded.project();
    if (project == null) {
      throw new WrongUseException(
          source.where() + " has no [project]",
          "copy that part from docs/project-car.toml and write your own numbers");
    }
    progress.begin("gate held shut on the virtual car", 1);
    CheckReport check = SettingsCheck.report(source.name(), loaded);
    result.units(car.units()).settingsDigest(check.settingsDigest());
    Plan.add(result, car, project, base, check);
    result.caution(
        "The run-away pressure is the virtual car's unless you stated one: your engine may do"
            + " more.");
    result.caution("A go means that nothing was found against it, not that it is safe.");
    boolean go = result.verdict() == Verdict.PASSED;
    result.headline(go ? "Go: nothing speaks against it." : "No-go, for the reasons below.");
    return Outcome.printed(result.build());
  }

  /** A layout that cannot be served is an answer; anything else is a file to be corrected. */
  private static ResultBuilder refused(
      ResultBuilder result, LoadResult loaded, SettingsOption.Source source)
      throws WrongUseException {
    boolean layout = false;
    for (Problem problem : loaded.problems()) {
      layout |= problem.code().equals(LAYOUT_REFUSED);
      if (problem.severity() == Severity.ERROR && !problem.code().equals(LAYOUT_REFUSED)) {
        SettingsOption.parse(source);
      }
      result.add(SettingsFindings.of(problem));
    }
    if (!layout) {
      SettingsOption.parse(source);
    }
    return result.headline("No-go: this actuator layout cannot be made safe.");
  }
}
