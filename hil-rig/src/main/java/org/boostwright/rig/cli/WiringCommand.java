package org.boostwright.rig.cli;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.boostwright.rig.result.Result;
import org.boostwright.rig.result.ResultBuilder;
import org.boostwright.rig.wiring.Circuit;
import org.boostwright.rig.wiring.WiringFiles;
import org.boostwright.rig.wiring.spice.Demand;
import org.boostwright.rig.wiring.spice.NgSpice;
import org.boostwright.rig.wiring.spice.ResultsPage;
import org.boostwright.rig.wiring.spice.Simulation;
import org.boostwright.rig.wiring.spice.Simulations;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;

/** Simulates the circuit and writes everything that is generated from its description. */
@Command(
    name = "wiring",
    description = {
      "Simulate the circuit between car and computer (needs ngspice): every hardware requirement",
      "with its value and limit. --write also writes drawings, netlists, decks, parts list, pin map",
      "and the results page anew."
    },
    footer = {
      "",
      "Examples:",
      "  boostwright wiring",
      "  boostwright wiring --only heartbeat",
      "  boostwright wiring --write"
    })
final class WiringCommand extends Subcommand {
  @Option(
      names = "--only",
      paramLabel = "NAME",
      defaultValue = "",
      description = "Only the simulations whose name contains this.")
  String only = "";

  @Option(names = "--write", description = "Write the generated files below --folder.")
  boolean write;

  @Option(
      names = "--folder",
      paramLabel = "DIR",
      defaultValue = ".",
      description =
          "The project's folder, which holds wiring/ and docs/. Default: ${DEFAULT-VALUE}.")
  Path folder = Path.of(".");

  WiringCommand(Terminal terminal) {
    super(terminal);
  }

  @Override
  Outcome work(Progress progress) throws IOException, WrongUseException {
    if (write && !only.isEmpty()) {
      throw new WrongUseException(
          "--write and --only exclude each other", "the results page holds all simulations");
    }
    if (write && !(Files.isDirectory(folder.resolve("wiring")))) {
      throw new WrongUseException(
          folder + " has no folder wiring", "name the project's folder with --folder");
    }
    Circuit circuit = Circuit.own();
    ResultBuilder result = new ResultBuilder("wiring");
    if (write) {
      for (Map.Entry<String, String> file : WiringFiles.of(circuit).entrySet()) {
        Path path = folder.resolve("wiring").resolve(file.getKey());
        Files.createDirectories(path.getParent());
        Files.writeString(path, file.getValue());
      }
      result.file("wiring", folder.resolve("wiring").toString());
    }
    if (!NgSpice.present()) {
      result.refuse(
          "ngspice_missing",
          "ngspice is not installed, so nothing was simulated",
          "apt install ngspice");
      return Outcome.printed(result.build());
    }
    return Outcome.printed(simulate(circuit, result, progress));
  }

  private Result simulate(Circuit circuit, ResultBuilder result, Progress progress)
      throws IOException, WrongUseException {
    List<Simulation> chosen =
        Simulations.all(circuit).stream().filter(s -> s.id().contains(only)).toList();
    if (chosen.isEmpty()) {
      throw new WrongUseException(
          "no simulation's name contains " + only, "their names stand in docs/wiring-results.md");
    }
    Map<Simulation, List<Demand.Outcome>> results = new LinkedHashMap<>();
    progress.begin("simulating", chosen.size());
    for (Simulation simulation : chosen) {
      results.put(simulation, simulation.run());
      progress.at(results.size());
    }
    progress.close();
    int count = 0;
    for (Map.Entry<Simulation, List<Demand.Outcome>> entry : results.entrySet()) {
      for (Demand.Outcome outcome : entry.getValue()) {
        count++;
        measure(result, entry.getKey(), outcome);
      }
    }
    if (write) {
      Path page = folder.resolve("docs/wiring-results.md");
      Files.writeString(page, ResultsPage.of(results));
      result.file("results", page.toString());
    }
    long missed =
        results.values().stream()
            .flatMap(List::stream)
            .filter(outcome -> outcome.verdict() != Demand.Verdict.PASSED)
            .count();
    return result
        .headline(
            results.size() + " simulations, " + count + " demands, " + missed + " of them not met.")
        .build();
  }

  private static void measure(ResultBuilder result, Simulation simulation, Demand.Outcome outcome) {
    Demand demand = outcome.demand();
    String id = "wiring." + simulation.id().replace('-', '_') + "." + demand.measure();
    String text = demand.requirement() + ": " + demand.text();
    double low = Double.isInfinite(demand.low()) ? Double.NaN : demand.low();
    double high = Double.isInfinite(demand.high()) ? Double.NaN : demand.high();
    if (demand.runs() == 1) {
      result.measure(id, text, outcome.lowest(), demand.unit(), low, high);
    } else {
      result.measure(id + "_min", text + ", lowest", outcome.lowest(), demand.unit(), low, high);
      result.measure(id + "_max", text + ", highest", outcome.highest(), demand.unit(), low, high);
    }
  }
}
