package org.boostwright.rig.cli;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.boostwright.rig.bench.BenchMistake;
import org.boostwright.rig.bench.BenchSetup;
import org.boostwright.rig.plant.PlantParams;

/** What of the virtual bench can be changed for one run: air, leak and mistakes of plumbing. */
final class VirtualBenchKeys {
  private static final String MISTAKE = "virtual.mistake=";
  private static final String SUPPLY = "virtual.bench_air_kpa_gauge=";

  private final List<String> rest = new ArrayList<>();
  private Optional<BenchMistake> mistake = Optional.empty();
  private double supplyKpaGauge = BenchSetup.TWELVE_PSI_KPA;

  /** Takes the bench's own keys out of the list of changes. */
  static VirtualBenchKeys of(List<String> sets) throws WrongUseException {
    VirtualBenchKeys keys = new VirtualBenchKeys();
    for (String set : sets) {
      if (set.startsWith(MISTAKE)) {
        keys.mistake = Optional.of(mistake(set.substring(MISTAKE.length()).strip()));
      } else if (set.startsWith(SUPPLY)) {
        keys.supplyKpaGauge = air(set.substring(SUPPLY.length()).strip());
      } else {
        keys.rest.add(set);
      }
    }
    return keys;
  }

  private static double air(String text) throws WrongUseException {
    try {
      double value = Double.parseDouble(text);
      Range.check(SUPPLY + text, value, 20.0, 140.0);
      return value;
    } catch (NumberFormatException e) {
      throw new WrongUseException(SUPPLY + text + " is not a number", "give kPa gauge");
    }
  }

  private static BenchMistake mistake(String name) throws WrongUseException {
    List<String> names = new ArrayList<>();
    for (BenchMistake candidate : BenchMistake.values()) {
      if (candidate.id().equals(name.toLowerCase(Locale.ROOT))) {
        return candidate;
      }
      names.add(candidate.id());
    }
    throw new WrongUseException(
        MISTAKE + name + " is no mistake the virtual bench can make",
        "known are " + String.join(", ", names));
  }

  /** All other changes. */
  List<String> rest() {
    return rest;
  }

  /** The mistake made, if any. */
  Optional<BenchMistake> mistake() {
    return mistake;
  }

  /** The bench with the valve, line and actuator of a virtual car. */
  BenchSetup setup(PlantParams car) {
    return BenchSetup.standard()
        .withValve(car.valve())
        .withChamber(car.chamber())
        .withActuator(car.actuator())
        .withSupplyKpaGauge(supplyKpaGauge);
  }
}
