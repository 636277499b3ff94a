package org.boostwright.rig.wiring;

import java.util.ArrayList;
import java.util.List;
import java.util.function.UnaryOperator;
import org.boostwright.core.settings.WiringSettings;
import org.boostwright.rig.wiring.block.Blocks;

/**
 * The whole circuit: the sheets as fitted and the sheets that may stand in their place.
 *
 * @param settings the values it is built with
 * @param fitted sheets as fitted
 * @param alternatives sheets of other ways to do the same job
 */
public record Circuit(WiringSettings settings, List<Block> fitted, List<Block> alternatives) {
  /** The project's own circuit. */
  public static Circuit own() {
    return of(WiringSettings.DEFAULT);
  }

  /** The circuit with other values. */
  public static Circuit of(WiringSettings settings) {
    return new Circuit(settings, Blocks.fitted(settings), Blocks.alternatives(settings));
  }

  /** Every sheet, fitted ones first. */
  public List<Block> all() {
    List<Block> all = new ArrayList<>(fitted);
    all.addAll(alternatives);
    return all;
  }

  /** The sheet with this name. */
  public Block block(String id) {
    for (Block block : all()) {
      if (block.id().equals(id)) {
        return block;
      }
    }
    throw new IllegalArgumentException("no sheet " + id);
  }

  /** This circuit with one part changed wherever it stands: a mistake, or an option fitted. */
  public Circuit with(String ref, UnaryOperator<Part> change) {
    return new Circuit(settings, changed(fitted, ref, change), changed(alternatives, ref, change));
  }

  /** This circuit with one part left out. */
  public Circuit without(String ref) {
    return with(ref, part -> part.withFitted(false));
  }

  private static List<Block> changed(List<Block> blocks, String ref, UnaryOperator<Part> change) {
    List<Block> changed = new ArrayList<>();
    for (Block block : blocks) {
      if (!block.has(ref)) {
        changed.add(block);
        continue;
      }
      List<Part> parts = new ArrayList<>();
      for (Part part : block.parts()) {
        parts.add(part.ref().equals(ref) ? change.apply(part) : part);
      }
      changed.add(block.withParts(parts));
    }
    return List.copyOf(changed);
  }
}
