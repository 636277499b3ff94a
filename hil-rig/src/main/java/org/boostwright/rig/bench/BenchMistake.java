package org.boostwright.rig.bench;

import java.util.EnumSet;
import java.util.Locale;
import java.util.Random;
import java.util.Set;
import org.boostwright.core.bench.BenchPlan;
import org.boostwright.core.bench.VerdictCode;
import org.boostwright.core.bench.model.Coil;
import org.boostwright.core.settings.PressureUnit;
import org.boostwright.rig.plant.PortSwap;
import org.boostwright.rig.plant.ValveFaults;

/** What people plumb and wire wrongly on a bench, with the verdicts that are right for it. */
public enum BenchMistake {
  SUPPLY_AND_VENT_SWAPPED(VerdictCode.PORTS_SWAPPED) {
    @Override
    void apply(VirtualBench bench, Person person, Random random) {
      bench.valve().faults().portSwap = PortSwap.SUPPLY_WITH_VENT;
    }
  },
  ACTUATOR_ON_VENT_PORT(VerdictCode.ACTUATOR_ON_VENT) {
    @Override
    void apply(VirtualBench bench, Person person, Random random) {
      bench.valve().faults().portSwap = PortSwap.ACTUATOR_WITH_VENT;
    }
  },
  SUPPLY_AND_ACTUATOR_SWAPPED(VerdictCode.SUPPLY_AND_ACTUATOR_EXCHANGED) {
    @Override
    void apply(VirtualBench bench, Person person, Random random) {
      bench.valve().faults().portSwap = PortSwap.SUPPLY_WITH_ACTUATOR;
    }
  },
  VENT_BLOCKED(VerdictCode.VENT_BLOCKED) {
    @Override
    void apply(VirtualBench bench, Person person, Random random) {
      bench.valve().faults().ventOpen = 0.0;
    }
  },
  VENT_NEARLY_BLOCKED(VerdictCode.VENT_RESTRICTED) {
    @Override
    void apply(VirtualBench bench, Person person, Random random) {
      bench.valve().faults().ventOpen = 0.08 + 0.1 * random.nextDouble();
    }
  },
  COIL_OPEN(VerdictCode.COIL_OPEN) {
    @Override
    void apply(VirtualBench bench, Person person, Random random) {
      bench.valve().faults().coilOpen = true;
    }
  },
  COIL_SHORTED(VerdictCode.COIL_SHORT) {
    @Override
    void apply(VirtualBench bench, Person person, Random random) {
      bench.valve().faults().coilShort = true;
    }
  },
  NO_DRIVE(VerdictCode.NO_DRIVE) {
    @Override
    void apply(VirtualBench bench, Person person, Random random) {
      bench.driverConnected = false;
    }
  },
  DRIVER_INVERTED(VerdictCode.DRIVER_INVERTED) {
    @Override
    void apply(VirtualBench bench, Person person, Random random) {
      bench.valve().setInverted(true);
    }
  },
  DRIVER_STUCK_ON(VerdictCode.DRIVER_STUCK_ON) {
    @Override
    void apply(VirtualBench bench, Person person, Random random) {
      bench.valve().faults().driverStuckOn = true;
    }
  },
  STUCK_AT_REST(VerdictCode.VALVE_STUCK_AT_REST) {
    @Override
    void apply(VirtualBench bench, Person person, Random random) {
      bench.valve().faults().stuck = ValveFaults.Stuck.AT_REST;
    }
  },
  STUCK_ENERGISED(VerdictCode.VALVE_STUCK_ENERGISED) {
    @Override
    void apply(VirtualBench bench, Person person, Random random) {
      bench.valve().faults().stuck = ValveFaults.Stuck.ENERGISED;
    }
  },
  SUPPLY_HOSE_OFF(VerdictCode.NO_AIR_AT_ACTUATOR) {
    @Override
    void apply(VirtualBench bench, Person person, Random random) {
      bench.valve().faults().supplyHoseOff = true;
    }
  },
  SUPPLY_HOSE_BLOCKED(VerdictCode.NO_AIR_AT_ACTUATOR) {
    @Override
    void apply(VirtualBench bench, Person person, Random random) {
      bench.valve().faults().supplyOpen = 0.0;
    }
  },
  SUPPLY_HOSE_KINKED(VerdictCode.SUPPLY_RESTRICTED) {
    @Override
    void apply(VirtualBench bench, Person person, Random random) {
      bench.valve().faults().supplyOpen = 0.08 + 0.1 * random.nextDouble();
    }
  },
  ACTUATOR_HOSE_OFF(VerdictCode.NO_AIR_AT_ACTUATOR, VerdictCode.LEAK) {
    @Override
    void apply(VirtualBench bench, Person person, Random random) {
      bench.valve().faults().actuatorHoseOff = true;
    }
  },
  LINE_LEAKS(VerdictCode.LEAK) {
    @Override
    void apply(VirtualBench bench, Person person, Random random) {
      double share = 0.07 + 0.6 * random.nextDouble();
      bench.valve().faults().leakConductance = share * bench.setup().valve().supplyConductance();
    }
  },
  SUPPLY_DROOPS(VerdictCode.SUPPLY_DROOPS) {
    @Override
    BenchSetup setup(BenchSetup sound, Random random) {
      double chokedGramsPerSecond = sound.valve().supplyConductance() * 185e3 * 1.185 * 1000.0;
      double kpaAtChokedFlow = 120.0 + 100.0 * random.nextDouble();
      return sound.withRegulator(kpaAtChokedFlow / chokedGramsPerSecond);
    }
  },
  SENSOR_ON_SUPPLY(VerdictCode.SENSOR_ON_WRONG_LINE) {
    @Override
    void apply(VirtualBench bench, Person person, Random random) {
      bench.sensorPlace = VirtualBench.SensorPlace.SUPPLY;
    }
  },
  SENSOR_IN_OPEN_AIR(VerdictCode.SENSOR_ON_WRONG_LINE) {
    @Override
    void apply(VirtualBench bench, Person person, Random random) {
      bench.sensorPlace = VirtualBench.SensorPlace.OPEN_AIR;
    }
  },
  GAUGE_IN_OTHER_UNITS(VerdictCode.GAUGE_UNITS) {
    @Override
    void apply(VirtualBench bench, Person person, Random random) {
      switch (random.nextInt(4)) {
        case 0 -> bench.sensorFactor = 1.0 / PressureUnit.PSI.toKpa(1.0);
        case 1 -> bench.sensorFactor = PressureUnit.PSI.toKpa(1.0);
        case 2 -> bench.sensorOffset = -bench.setup().ambientKpaAbs();
        default -> person.regulatorUnit = PressureUnit.PSI;
      }
    }
  },
  FREQUENCY_TOO_HIGH(VerdictCode.FREQUENCY_TOO_HIGH) {
    @Override
    BenchPlan plan(BenchPlan plan, BenchSetup setup, Random random) {
      double none = 1.0 / (setup.valve().onDelaySeconds() + setup.valve().offDelaySeconds());
      return plan.withFrequencyHz(Math.min(100.0, none * (0.9 + 0.6 * random.nextDouble())));
    }

    @Override
    BenchSetup setup(BenchSetup sound, Random random) {
      double off = 8e-3 + 6e-3 * random.nextDouble();
      return sound.withValve(sound.valve().withDelays(sound.valve().onDelaySeconds(), off));
    }
  },
  COIL_TOO_HOT(VerdictCode.COIL_TOO_HOT) {
    @Override
    BenchPlan plan(BenchPlan plan, BenchSetup setup, Random random) {
      return plan.withCoil(new Coil(4.0 + 6.0 * random.nextDouble(), 0.03, 14.0));
    }
  },
  BLEED_VALVE(VerdictCode.BLEED_VALVE) {
    @Override
    void apply(VirtualBench bench, Person person, Random random) {
      bench.bleedOnly = true;
    }
  };

  private final Set<VerdictCode> right;

  BenchMistake(VerdictCode first, VerdictCode... more) {
    right = EnumSet.of(first, more);
  }

  /** Name on the command line. */
  public String id() {
    return name().toLowerCase(Locale.ROOT);
  }

  /** Verdicts that are right for it. */
  public Set<VerdictCode> right() {
    return right;
  }

  /** The bench with this mistake in its parts. */
  BenchSetup setup(BenchSetup sound, Random random) {
    return sound;
  }

  /** The plan of a person who makes this mistake. */
  BenchPlan plan(BenchPlan plan, BenchSetup setup, Random random) {
    return plan;
  }

  /** Makes the mistake on a bench. */
  void apply(VirtualBench bench, Person person, Random random) {
    // Some mistakes lie in the parts or in the plan alone.
  }
}
