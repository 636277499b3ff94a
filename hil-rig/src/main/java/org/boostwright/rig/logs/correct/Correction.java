package org.boostwright.rig.logs.correct;

import java.util.List;
import org.boostwright.core.table.Table2d;
import org.boostwright.rig.logs.identify.CarTwin;
import org.boostwright.rig.logs.identify.LocalGain;
import org.jspecify.annotations.Nullable;

/**
 * What the logs say about the base duty table.
 *
 * @param before table that was driven with
 * @param after proposed table; the same as before where it was refused
 * @param cells every cell, row by row; empty when refused
 * @param refusal why nothing is proposed; null when something is
 * @param settledSeconds settled time that was used, s
 * @param visits separate visits (pulls) that held such time
 * @param gain local gain that was used; null when refused before one was found
 * @param twin fitted car the gain is from; null as above
 */
public record Correction(
    Table2d before,
    Table2d after,
    List<CellChange> cells,
    @Nullable Refusal refusal,
    double settledSeconds,
    int visits,
    @Nullable LocalGain gain,
    @Nullable CarTwin twin) {

  /**
   * Why nothing is proposed.
   *
   * @param code snake_case name
   * @param text what is the matter
   * @param next what to do
   */
  public record Refusal(String code, String text, String next) {}

  /** Copies the cells. */
  public Correction {
    cells = List.copyOf(cells);
  }

  /** Nothing is proposed. */
  public boolean refused() {
    return refusal != null;
  }

  /** Any cell moves. */
  public boolean changes() {
    return !after.equals(before);
  }
}
