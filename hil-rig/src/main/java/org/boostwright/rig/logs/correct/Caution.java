package org.boostwright.rig.logs.correct;

/**
 * How far one session may move a cell of the base duty table, as duty fractions.
 *
 * <p>Raising is the dangerous direction, so it is limited more than lowering; raise by 2 to 5 % at a
 * time and repeat a pull three times (common practice, no source).
 *
 * @param mostUp largest rise of a visited cell
 * @param mostDown largest fall of a visited cell
 * @param mostUnvisited largest move of a cell that was never visited, either way
 * @param visitSeconds settled time, weighted, that makes a cell a visited one, s
 * @param visitsToRaise visits (pulls) that must agree before a cell is raised
 */
public record Caution(
    double mostUp,
    double mostDown,
    double mostUnvisited,
    double visitSeconds,
    int visitsToRaise) {

  /** 5 % up, 12 % down, 1.5 % where nothing was seen; two pulls of 0.15 s to raise. */
  public static final Caution DEFAULT = new Caution(0.05, 0.12, 0.015, 0.3, 2);
}
