package org.boostwright.core.bench;

import org.jspecify.annotations.Nullable;

/**
 * Coil off, air on: the actuator line must see the supply, first with the coil's supply switch
 * open, then with it closed and duty 0. Where it does not, the tests that tell the causes apart
 * follow and the session ends.
 */
final class RestRoutine implements Routine {
  static final double SEES_SUPPLY_SHARE = 0.5;

  private final boolean hasCoilSwitch;
  private final ListenSequence listen = new ListenSequence();
  private int at;

  RestRoutine(boolean hasCoilSwitch) {
    this.hasCoilSwitch = hasCoilSwitch;
  }

  @Override
  public BenchStep step() {
    return BenchStep.REST;
  }

  @Override
  public @Nullable Action next(BenchRecord record, Outcome last) {
    switch (at) {
      case 0:
        at = 1;
        return new Action.Ask(Question.AIR_ON);
      case 1:
        record.regulatorKpaGauge = last.answer();
        at = hasCoilSwitch ? 2 : 3;
        return hasCoilSwitch ? Action.dead(0.5) : Action.settle(BenchPlan.LOWEST_HZ, 0.0, 0.5);
      case 2:
        record.restDead = last.driven();
        at = 3;
        return Action.settle(BenchPlan.LOWEST_HZ, 0.0, 0.5);
      case 3:
        record.rest = last.driven();
        if (seesSupply(record)) {
          return null;
        }
        record.stop = true;
        at = 4;
        return Action.settle(BenchPlan.LOWEST_HZ, 1.0, 0.5);
      case 4:
        record.energised = last.driven();
        at = 5;
        return listen.next(record, Outcome.NONE);
      case 5:
        Action action = listen.next(record, last);
        if (action != null) {
          return action;
        }
        at = 6;
        return hasCoilSwitch ? null : new Action.Ask(Question.UNPLUG_COIL);
      case 6:
        record.unpluggedKpaGauge = last.answer();
        at = 7;
        return new Action.Ask(Question.PLUG_COIL);
      default:
        return null;
    }
  }

  private static boolean seesSupply(BenchRecord record) {
    double expected = record.regulatorKpaGauge;
    double goal = Double.isNaN(expected) ? 20.0 : SEES_SUPPLY_SHARE * expected;
    return record.restKpaGauge() >= goal;
  }
}
