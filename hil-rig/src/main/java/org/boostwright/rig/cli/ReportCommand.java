package org.boostwright.rig.cli;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Optional;
import org.boostwright.rig.report.HtmlReport;
import org.boostwright.rig.result.Result;
import org.boostwright.rig.result.ResultBuilder;
import org.boostwright.rig.result.ResultJson;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** Renders the page of a recorded run again, for example with a newer version. */
@Command(
    name = "report",
    header = "Make the HTML report of a recorded run.",
    description = "Renders the page of a run again, for example with a newer version.",
    footer = {
      "",
      "Examples:",
      "  boostwright report runs/pull-3",
      "  boostwright report runs/pull-3/result.json --out /tmp/pull.html"
    })
final class ReportCommand extends Subcommand {
  @Parameters(paramLabel = "RUN", description = "Folder of the run, or its result.json.")
  Path run;

  @Option(
      names = "--out",
      paramLabel = "FILE",
      description = "Page to write. Default: report.html beside the result.")
  Optional<Path> out = Optional.empty();

  ReportCommand(Terminal terminal) {
    super(terminal);
  }

  @Override
  Outcome work(Progress progress) throws IOException {
    Path file = Files.isDirectory(run) ? run.resolve(RunFolder.RESULT) : run;
    Result result = ResultJson.read(file);
    Path page = out.orElse(file.resolveSibling(RunFolder.REPORT));
    HtmlReport.write(page, result);
    return Outcome.printed(
        new ResultBuilder("report")
            .headline("The report of " + result.command() + " is in " + page + ".")
            .provenance("result", file.toString())
            .file("report", page.toString())
            .build());
  }
}
