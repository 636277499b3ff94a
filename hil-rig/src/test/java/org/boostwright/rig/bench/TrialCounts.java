package org.boostwright.rig.bench;

/**
 * How many seeded trials the statistical tests run: a share of them in every build, all of them
 * with {@code -Dboostwright.bench.full=true}.
 */
final class TrialCounts {
  private static final boolean FULL = Boolean.getBoolean("boostwright.bench.full");

  static final int VALVES = FULL ? 200 : 16;
  static final int DRAWS_PER_MISTAKE = FULL ? 20 : 1;
  static final int SOUND_RIGS = FULL ? 500 : 16;
  static final int VALVES_BY_TICKS = FULL ? 20 : 2;
  static final int KILL_STRIDE = FULL ? 1 : 17;
  static final int GAUGE_SESSIONS = FULL ? 60 : 8;

  private TrialCounts() {}
}
