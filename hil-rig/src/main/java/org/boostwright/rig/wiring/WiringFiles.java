package org.boostwright.rig.wiring;

import java.util.ArrayList;
import java.util.List;
import java.util.SortedMap;
import java.util.TreeMap;
import org.boostwright.core.settings.ActuatorLayout;
import org.boostwright.rig.wiring.draw.HarnessSvg;
import org.boostwright.rig.wiring.draw.PartsList;
import org.boostwright.rig.wiring.draw.PinMap;
import org.boostwright.rig.wiring.draw.PlumbingSvg;
import org.boostwright.rig.wiring.draw.SchematicSvg;
import org.boostwright.rig.wiring.draw.SheetOverlaps;
import org.boostwright.rig.wiring.spice.Netlist;
import org.boostwright.rig.wiring.spice.Simulation;
import org.boostwright.rig.wiring.spice.Simulations;

/** Every generated file of the wiring folder, by its path below it. */
public final class WiringFiles {
  private WiringFiles() {}

  /**
   * The files of a circuit.
   *
   * @throws IllegalArgumentException when a sheet does not show what its netlist says, cannot be
   *     read, or the harness does not fit: nothing wrong is written
   */
  public static SortedMap<String, String> of(Circuit circuit) {
    List<String> problems = problems(circuit);
    if (!problems.isEmpty()) {
      throw new IllegalArgumentException(String.join("\n", problems));
    }
    SortedMap<String, String> files = new TreeMap<>();
    for (Block block : circuit.all()) {
      files.put("netlist/" + block.id() + ".cir", Netlist.of(block, circuit.settings()));
      files.put("drawing/" + block.id() + ".svg", SchematicSvg.of(block));
    }
    for (Simulation simulation : Simulations.all(circuit)) {
      files.put("sim/" + simulation.id() + ".cir", simulation.deck());
    }
    files.put("drawing/harness.svg", HarnessSvg.of(circuit));
    files.put("drawing/plumbing.svg", PlumbingSvg.of(ActuatorLayout.SINGLE_PORT));
    files.put("drawing/plumbing-external-gate.svg", PlumbingSvg.of(ActuatorLayout.EXTERNAL_GATE));
    files.put("parts.csv", PartsList.csv(circuit));
    files.put("harness.csv", PartsList.harnessCsv(circuit));
    files.put("pinmap.csv", PinMap.csv(circuit));
    files.put("pinmap.md", PinMap.markdown(circuit));
    return files;
  }

  /** What is wrong with the description itself; empty when nothing is. */
  public static List<String> problems(Circuit circuit) {
    List<String> problems = new ArrayList<>();
    for (Block block : circuit.all()) {
      SheetGeometry.problems(block).forEach(text -> problems.add(block.id() + ": " + text));
      SheetOverlaps.problems(block).forEach(text -> problems.add(block.id() + ": " + text));
    }
    problems.addAll(Harness.problems(circuit));
    return problems;
  }
}
