package org.boostwright.core.settings.file;

import java.util.ArrayList;
import java.util.List;
import org.boostwright.core.settings.PressureUnit;
import org.boostwright.core.settings.UnitSettings;

/**
 * One way to write a pressure key: plain, in the file's own units, or with the unit at its end
 * ({@code cutoff}, {@code cutoff_kpa_abs}, {@code cutoff_psi_gauge}; for differences {@code
 * noise_kpa}; for rates {@code min_rise_kpa_per_s}).
 *
 * @param key the key as written
 * @param notation its unit
 * @param quantity how its number is read
 */
record Spelling(String key, UnitSettings notation, Quantity quantity) {

  /** What kind of pressure a key holds; decides the endings it may have. */
  enum Kind {
    LEVEL,
    SPRING,
    DIFFERENCE,
    RATE
  }

  /** All ways to write one key, the plain one first. */
  static List<Spelling> of(String base, Kind kind, UnitSettings fileUnits) {
    List<Spelling> all = new ArrayList<>();
    all.add(new Spelling(base, fileUnits, quantity(kind, fileUnits)));
    for (PressureUnit unit : PressureUnit.values()) {
      String name = unit.label().toLowerCase(java.util.Locale.ROOT);
      if (kind == Kind.LEVEL || kind == Kind.SPRING) {
        for (boolean gauge : new boolean[] {false, true}) {
          UnitSettings notation = new UnitSettings(unit, gauge);
          String key = base + "_" + name + (gauge ? "_gauge" : "_abs");
          all.add(new Spelling(key, notation, quantity(kind, notation)));
        }
      } else {
        UnitSettings notation = new UnitSettings(unit, false);
        String key = base + "_" + name + (kind == Kind.RATE ? "_per_s" : "");
        all.add(new Spelling(key, notation, quantity(kind, notation)));
      }
    }
    return all;
  }

  /** How a pressure key of a kind is read in some units. */
  static Quantity quantity(Kind kind, UnitSettings notation) {
    return switch (kind) {
      case LEVEL -> Quantity.level(notation);
      case SPRING -> Quantity.gaugeLevel(notation);
      case DIFFERENCE -> Quantity.difference(notation.pressure());
      case RATE -> Quantity.rate(notation.pressure());
    };
  }
}
