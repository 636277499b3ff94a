package org.boostwright.core.ladder;

import java.util.EnumMap;
import java.util.EnumSet;
import java.util.Map;
import java.util.Set;

/** The voiding rules once more, written out by hand as in docs/commissioning.md. */
final class VoidedBy {
  private VoidedBy() {}

  /** Written out by hand: which rungs a change in a part of the settings brings down. */
  static final Map<SettingsPart, Set<Rung>> SETTINGS =
      new EnumMap<>(
          Map.of(
              SettingsPart.HARDWARE,
              EnumSet.allOf(Rung.class),
              SettingsPart.SENSORS,
              EnumSet.range(Rung.FIRST_START, Rung.PRESSURE_FEEDBACK),
              SettingsPart.CAR,
              EnumSet.range(Rung.CUT_PROVEN, Rung.PRESSURE_FEEDBACK),
              SettingsPart.PROTECTION,
              EnumSet.of(
                  Rung.CUT_PROVEN, Rung.FIRST_BOOST, Rung.FULL_TABLE, Rung.PRESSURE_FEEDBACK),
              SettingsPart.REACH,
              EnumSet.range(Rung.FIRST_BOOST, Rung.PRESSURE_FEEDBACK),
              SettingsPart.TABLES,
              EnumSet.of(Rung.FULL_TABLE, Rung.PRESSURE_FEEDBACK),
              SettingsPart.FEEDBACK,
              EnumSet.of(Rung.PRESSURE_FEEDBACK)));

  /** Written out by hand: the lowest rung each reported work brings the car back to. */
  static final Map<Change, Set<Rung>> WORK =
      Map.of(
          Change.VALVE,
          benchAndDrives(),
          Change.HOSE,
          benchAndDrives(),
          Change.ACTUATOR,
          benchAndDrives(),
          Change.PRESSURE_SENSOR,
          EnumSet.allOf(Rung.class),
          Change.OTHER_SENSOR,
          EnumSet.range(Rung.FIRST_START, Rung.PRESSURE_FEEDBACK),
          Change.WIRING,
          EnumSet.allOf(Rung.class),
          Change.ENGINE_CUT,
          EnumSet.of(Rung.CUT_PROVEN),
          Change.TURBO,
          EnumSet.range(Rung.FIRST_START, Rung.PRESSURE_FEEDBACK),
          Change.ENGINE,
          EnumSet.range(Rung.FIRST_START, Rung.PRESSURE_FEEDBACK),
          Change.FUEL,
          EnumSet.range(Rung.FIRST_BOOST, Rung.PRESSURE_FEEDBACK));

  private static Set<Rung> benchAndDrives() {
    Set<Rung> rungs = EnumSet.range(Rung.SPRING_DRIVE, Rung.PRESSURE_FEEDBACK);
    rungs.add(Rung.BENCH);
    return rungs;
  }
}
