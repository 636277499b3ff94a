package org.boostwright.rig.cli;

import org.boostwright.rig.demo.Demo;
import org.boostwright.rig.demo.Steps;
import org.boostwright.rig.result.Result;
import org.boostwright.rig.scenario.PullRun;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** The whole job on the built-in project car. */
@Command(
    name = "demo",
    header = "The whole job on the built-in project car, in under a minute.",
    description = {
      "The whole job on the built-in project car in under a minute: settings, duty sweep of the",
      "virtual valve, pulls on the spring, on base duty alone and with pressure feedback, and a",
      "sensor wire that opens at full boost. Leaves one report behind."
    },
    footer = {
      "",
      "Examples:",
      "  boostwright demo",
      "  boostwright demo --seed 7 --out /tmp/demo --json"
    })
final class DemoCommand extends Subcommand {
  private static final int SHARES = 100;

  @Mixin OutOption out = new OutOption();

  @Option(
      names = "--seed",
      paramLabel = "N",
      defaultValue = "1",
      description = "Seed of the sensors' noise. Default: ${DEFAULT-VALUE}.")
  long seed;

  DemoCommand(Terminal terminal) {
    super(terminal);
  }

  @Override
  Outcome work(Progress progress) {
    Demo demo = Demo.run(seed, steps(progress));
    Result result = demo.result();
    String digest = result.settingsDigest().orElse("");
    return Outcome.kept(
        result,
        out.folder,
        log("log", "log.csv", demo.closedLoop(), digest),
        log("failure_log", "failure-log.csv", demo.failure(), digest));
  }

  private Outcome.Extra log(String kind, String name, PullRun run, String digest) {
    return new Outcome.Extra(kind, name, file -> run.log().writeCsv(file, digest, seed));
  }

  private static Steps steps(Progress progress) {
    return new Steps() {
      @Override
      public void begin(String what) {
        progress.begin(what, SHARES);
      }

      @Override
      public void share(double done) {
        progress.at(Math.round(SHARES * done));
      }
    };
  }
}
