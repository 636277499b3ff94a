package org.boostwright.rig.scenario.campaign;

import java.util.List;
import org.boostwright.core.settings.Settings;
import org.boostwright.rig.inject.FaultKind;
import org.boostwright.rig.plant.PlantParams;

/**
 * What a campaign draws from. The same plan gives the same runs.
 *
 * @param seed seed of everything
 * @param runs how many runs
 * @param settings settings of the controller, whose base duty is drawn around
 * @param car the car whose tolerances are drawn
 * @param kinds faults to draw from
 */
public record CampaignPlan(
    long seed, long runs, Settings settings, PlantParams car, List<FaultKind> kinds) {

  /** Copies the kinds. */
  public CampaignPlan {
    kinds = List.copyOf(kinds);
    if (kinds.isEmpty()) {
      throw new IllegalArgumentException("a campaign needs at least one kind of fault");
    }
  }

  /** Even runs have one fault; odd runs a pair, every ordered pair in turn. */
  public boolean isPair(long index) {
    return kinds.size() > 1 && index % 2 == 1;
  }

  /** The kinds of fault in a run, first one first. */
  public List<FaultKind> kindsOf(long index) {
    int count = kinds.size();
    if (kinds.size() == 1) {
      return List.of(kinds.get(0));
    }
    long turn = index / 2;
    if (!isPair(index)) {
      return List.of(kinds.get((int) (turn % count)));
    }
    int pair = (int) (turn % ((long) count * (count - 1)));
    int first = pair / (count - 1);
    int second = pair % (count - 1);
    return List.of(kinds.get(first), kinds.get(second < first ? second : second + 1));
  }
}
