package org.boostwright.rig.cli;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.TreeSet;
import org.boostwright.core.settings.file.SettingsDigest;
import org.boostwright.core.settings.file.Words;
import org.boostwright.rig.inject.FaultKind;
import org.boostwright.rig.inject.FaultKinds;
import org.boostwright.rig.plant.PlantParams;
import org.boostwright.rig.report.JunitXml;
import org.boostwright.rig.result.ProgramVersion;
import org.boostwright.rig.result.Result;
import org.boostwright.rig.result.ResultBuilder;
import org.boostwright.rig.scenario.campaign.Campaign;
import org.boostwright.rig.scenario.campaign.CampaignPlan;
import org.boostwright.rig.scenario.campaign.CampaignSummary;
import org.boostwright.rig.scenario.campaign.CaseRow;
import org.boostwright.rig.scenario.campaign.DriftSweep;
import org.boostwright.rig.scenario.campaign.OtherCampaignException;
import org.boostwright.rig.scenario.campaign.RowFile;
import org.boostwright.rig.scenario.campaign.Shard;
import org.boostwright.rig.scenario.campaign.WorstSearch;
import org.boostwright.rig.scenario.file.Scenario;
import org.boostwright.rig.scenario.file.ScenarioFile;
import org.boostwright.rig.scenario.file.ScenarioRefusedException;
import org.boostwright.rig.scenario.file.ScenarioRunner;
import org.boostwright.rig.scenario.file.ScenarioVerdict;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** The fault campaign, scenario files, and the search for the worst. */
@Command(
    name = "faults",
    header = "Try to make it unsafe: faults by the thousand on the virtual car.",
    description = {
      "Drive the virtual car with faults in it, beside the same drive without: seeded draws of"
          + " car,",
      "drive, fault, amount and moment, single and in ordered pairs, or scenario files of your"
          + " own.",
      "Says how fast each fault is seen, what is not seen, and whether anything became unsafe."
    },
    footer = {
      "",
      "Examples:",
      "  boostwright faults                                1,000 runs",
      "  boostwright faults --runs 10000 --out runs/big    stopped, the same line goes on from"
          + " there",
      "  boostwright faults --only s4_map_frozen --runs 200",
      "  boostwright faults --runs 10000 --shard 1/4 --out part1     and 2/4, 3/4, 4/4 elsewhere",
      "  boostwright faults --merge part1 --merge part2 --merge part3 --merge part4",
      "  boostwright faults --scenario my.toml             see docs/scenarios.md",
      "  boostwright faults --search --runs 3000           looks for the worst moment and amount",
      "  boostwright faults --list                         every kind of fault",
      "",
      "Fails when a run is unsafe, a rule of every tick is broken, or a scenario fails.",
      "A result from the virtual car proves the program, not your car."
    })
final class FaultsCommand extends Subcommand {
  @Mixin SettingsOption settings = new SettingsOption();
  @Mixin SetOption set = new SetOption();
  @Mixin OutOption out = new OutOption();

  @Option(
      names = "--runs",
      paramLabel = "N",
      defaultValue = "1000",
      description = "How many runs. Default: ${DEFAULT-VALUE}.")
  long runs = 1000L;

  @Option(
      names = "--seed",
      paramLabel = "N",
      defaultValue = "1",
      description = "Seed of every draw. Default: ${DEFAULT-VALUE}.")
  long seed = 1L;

  @Option(
      names = "--only",
      paramLabel = "ID",
      split = ",",
      description = "Only these faults, or rows of the fault list such as S4; see --list.")
  List<String> only = new ArrayList<>();

  @Option(
      names = "--shard",
      paramLabel = "I/N",
      description = "Only this share of the runs, for example 2/4; put together with --merge.")
  Optional<String> shard = Optional.empty();

  @Option(
      names = "--merge",
      paramLabel = "FOLDER",
      description = "Put finished shares together instead of running; once for each folder.")
  List<Path> merge = new ArrayList<>();

  @Option(
      names = "--threads",
      paramLabel = "N",
      description = "Runs at a time; changes nothing but the time. Default: one for each core.")
  Optional<Integer> threads = Optional.empty();

  @Option(
      names = "--scenario",
      paramLabel = "PATH",
      description = "Run a scenario file, or every one in a folder, instead of a campaign.")
  Optional<Path> scenario = Optional.empty();

  @Option(names = "--search", description = "Search for the worst instead of drawing at random.")
  boolean search;

  @Option(names = "--list", description = "List every kind of fault and end.")
  boolean list;

  @Option(
      names = "--safety-case",
      paramLabel = "FILE",
      description = "Write the safety case from --merge and --scenario, both needed.")
  Optional<Path> safetyCase = Optional.empty();

  private static final long SWEPT_OF_RUNS = 100L;

  private String table = "";

  FaultsCommand(Terminal terminal) {
    super(terminal);
  }

  @Override
  Outcome work(Progress progress) throws Exception {
    if (list) {
      table = FaultsText.kinds();
      return Outcome.printed(new ResultBuilder("faults").headline("every kind of fault").build());
    }
    Range.check("--runs", runs, 1, 100_000_000);
    try {
      if (safetyCase.isPresent()) {
        return writeSafetyCase(progress, safetyCase.get());
      }
      if (scenario.isPresent()) {
        return scenarios(progress, scenario.get());
      }
      return merge.isEmpty() ? campaign(progress) : merged();
    } catch (ScenarioRefusedException e) {
      throw new WrongUseException(
          String.valueOf(e.getMessage()), "the format stands in docs/scenarios.md");
    } catch (OtherCampaignException e) {
      throw new WrongUseException(
          String.valueOf(e.getMessage()),
          "give the folders of one campaign, or another --out folder for a new one");
    }
  }

  private List<FaultKind> chosen() throws WrongUseException {
    if (only.isEmpty()) {
      return FaultKinds.all();
    }
    List<FaultKind> kinds = new ArrayList<>();
    for (String word : only) {
      String id = word.strip();
      List<FaultKind> found =
          FaultKinds.all().stream()
              .filter(k -> k.id().equals(id) || k.row().equalsIgnoreCase(id))
              .toList();
      if (found.isEmpty()) {
        String near = Words.nearest(id, FaultKinds.ids());
        throw new WrongUseException(
            "--only: '" + id + "' is no fault",
            near != null
                ? "did you mean " + near + "?"
                : "'boostwright faults --list' shows every one");
      }
      kinds.addAll(found);
    }
    return kinds;
  }

  private int threadCount() throws WrongUseException {
    int count = threads.orElse(Runtime.getRuntime().availableProcessors());
    Range.check("--threads", count, 1, 1024);
    return count;
  }

  private CampaignPlan plan() throws IOException, WrongUseException {
    SettingsOption.Loaded loaded = SettingsOption.parse(set.change(settings.find()));
    return new CampaignPlan(
        seed, runs, loaded.settings(), set.change(PlantParams.PROJECT_CAR), chosen());
  }

  /** Which campaign: everything its rows depend on. */
  private String words(CampaignPlan plan) {
    return String.format(
        Locale.ROOT,
        "boostwright %s seed=%d runs=%d settings=%s set=%s only=%s",
        ProgramVersion.get(),
        seed,
        runs,
        SettingsDigest.of(plan.settings()),
        set.sets,
        new TreeSet<>(only));
  }

  private Outcome campaign(Progress progress) throws Exception {
    CampaignPlan plan = plan();
    if (search) {
      progress.beginLong("search", runs);
      WorstSearch.Outcome worst = WorstSearch.run(plan, threadCount(), progress::at);
      table = FaultsText.worst(worst);
      return Outcome.kept(FaultsText.result(worst, plan), out.folder);
    }
    Shard share;
    try {
      share = shard.isPresent() ? Shard.parse(shard.get()) : Shard.WHOLE;
    } catch (IllegalArgumentException e) {
      throw new WrongUseException("--shard: " + e.getMessage(), "write for example --shard 2/4");
    }
    Path folder =
        out.folder.isPresent() ? out.folder.get() : RunFolder.next(Path.of("runs"), "faults");
    Campaign campaign = new Campaign(plan, share, folder, threadCount());
    progress.beginLong("faults, kept in " + folder, campaign.size());
    List<CaseRow> rows = campaign.run(words(plan), progress::at);
    return judged(plan.kinds(), rows, words(plan), folder);
  }

  private Outcome judged(List<FaultKind> kinds, List<CaseRow> rows, String campaign, Path folder) {
    CampaignSummary summary = CampaignSummary.of(kinds, rows);
    table = FaultsText.kinds(summary);
    ResultBuilder result = FaultsText.result(summary).seed(seed).provenance("campaign", campaign);
    result.settingsDigest(FaultsText.digestOf(campaign));
    set.record(result);
    return Outcome.kept(
        result.build(),
        Optional.of(folder),
        new Outcome.Extra("runs", RowFile.FINISHED, file -> {}),
        new Outcome.Extra("kinds", "kinds.csv", file -> FaultsText.writeKinds(file, summary)));
  }

  private RowFile.Share together() throws IOException, OtherCampaignException, WrongUseException {
    List<CaseRow> rows = new ArrayList<>();
    String campaign = "";
    for (Path folder : merge) {
      RowFile.Share share = RowFile.read(folder);
      if (!campaign.isEmpty() && !campaign.equals(share.campaign())) {
        throw new WrongUseException(
            folder + " is from another campaign: " + share.campaign(),
            "the first folder is from: " + campaign);
      }
      campaign = share.campaign();
      rows.addAll(share.rows());
    }
    rows.sort((a, b) -> Long.compare(a.index(), b.index()));
    for (int i = 0; i < rows.size(); i++) {
      if (rows.get(i).index() != i) {
        throw new WrongUseException(
            "run " + i + " is missing or there twice", "give each share once, and all of them");
      }
    }
    long expected = FaultsText.runsOf(campaign);
    if (rows.size() != expected) {
      throw new WrongUseException(
          rows.size() + " of " + expected + " runs are there", "give all shares");
    }
    return new RowFile.Share(campaign, rows);
  }

  private Outcome merged() throws Exception {
    RowFile.Share share = together();
    Path folder =
        out.folder.isPresent() ? out.folder.get() : RunFolder.next(Path.of("runs"), "faults");
    Files.createDirectories(folder);
    RowFile.finish(folder, share.campaign(), share.rows());
    seed = FaultsText.seedOf(share.campaign());
    return judged(FaultKinds.all(), share.rows(), share.campaign(), folder);
  }

  private List<ScenarioVerdict> verdicts(Progress progress, Path path)
      throws IOException, ScenarioRefusedException {
    List<Scenario> scenarios = ScenarioFile.readAll(path);
    progress.beginLong("scenarios", scenarios.size());
    List<ScenarioVerdict> verdicts = new ArrayList<>();
    for (Scenario each : scenarios) {
      verdicts.addAll(ScenarioRunner.run(each));
      progress.at(verdicts.stream().map(ScenarioVerdict::scenario).distinct().count());
    }
    return verdicts;
  }

  private Outcome scenarios(Progress progress, Path path) throws Exception {
    List<ScenarioVerdict> verdicts = verdicts(progress, path);
    table = FaultsText.scenarios(verdicts);
    Result result = FaultsText.result(verdicts).provenance("scenarios", path.toString()).build();
    return Outcome.kept(
        result,
        out.folder,
        new Outcome.Extra("junit", "junit.xml", file -> JunitXml.write(file, result)));
  }

  /** One drive for each amount to a hundred runs of the campaign. */
  private CampaignPlan sweep(RowFile.Share campaign) throws IOException, WrongUseException {
    List<FaultKind> kinds =
        FaultKinds.all().stream().filter(kind -> kind.row().equals("S5")).toList();
    CampaignPlan drawn = plan();
    long drives = Math.max(2L, campaign.rows().size() / SWEPT_OF_RUNS);
    return new CampaignPlan(
        FaultsText.seedOf(campaign.campaign()), drives, drawn.settings(), drawn.car(), kinds);
  }

  private Outcome writeSafetyCase(Progress progress, Path file) throws Exception {
    if (merge.isEmpty() || scenario.isEmpty()) {
      throw new WrongUseException(
          "--safety-case needs --merge FOLDER and --scenario FOLDER",
          "run the campaign and give its folder");
    }
    RowFile.Share share = together();
    CampaignSummary summary = CampaignSummary.of(FaultKinds.all(), share.rows());
    List<ScenarioVerdict> verdicts = verdicts(progress, scenario.get());
    CampaignPlan sweep = sweep(share);
    progress.beginLong("pressure sensor off", DriftSweep.size());
    List<DriftSweep.Line> drift = DriftSweep.run(sweep, threadCount(), progress::at);
    SafetyCase.write(file, Path.of(""), share.campaign(), summary, verdicts, drift);
    ResultBuilder result = FaultsText.result(summary).provenance("campaign", share.campaign());
    return Outcome.printed(result.file("safety_case", file.toString()).build());
  }

  @Override
  void print(Result result) {
    super.print(result);
    if (!output.json && !output.quiet && !table.isEmpty()) {
      terminal.out().println();
      terminal.out().print(table);
      terminal.out().flush();
    }
  }
}
