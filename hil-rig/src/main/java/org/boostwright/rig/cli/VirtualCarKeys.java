package org.boostwright.rig.cli;

import java.util.LinkedHashMap;
import java.util.Map;
import org.boostwright.rig.plant.PlantParams;

/** What of the virtual car can be changed for one run, by name: {@code virtual.mass_kg=1300}. */
final class VirtualCarKeys {
  /** Keys of the virtual car begin with this; all others are settings. */
  static final String PREFIX = "virtual.";

  private static final Map<String, Key> KEYS = keys();

  private VirtualCarKeys() {}

  /** Changes one part of a car. */
  interface Change {
    PlantParams to(PlantParams car, double value);
  }

  private record Key(double low, double high, Change change) {}

  private static Map<String, Key> keys() {
    Map<String, Key> keys = new LinkedHashMap<>();
    keys.put("mass_kg", new Key(400, 3500, (c, v) -> c.withCar(c.car().withMass(v))));
    keys.put(
        "spring_cracks_kpa_gauge",
        new Key(
            10, 200, (c, v) -> c.withActuator(c.actuator().withSpring(v, c.actuator().spanKpa()))));
    keys.put(
        "spring_span_kpa",
        new Key(
            5,
            200,
            (c, v) -> c.withActuator(c.actuator().withSpring(c.actuator().crackKpaGauge(), v))));
    keys.put(
        "actuator_lag_ms",
        new Key(1, 500, (c, v) -> c.withActuator(c.actuator().withLag(v * 1e-3))));
    keys.put(
        "actuator_friction_n",
        new Key(0, 100, (c, v) -> c.withActuator(c.actuator().withFriction(v))));
    keys.put(
        "lever_ratio", new Key(0, 2, (c, v) -> c.withActuator(c.actuator().withLeverRatio(v))));
    keys.put(
        "valve_t_on_ms",
        new Key(
            0.5,
            20,
            (c, v) -> c.withValve(c.valve().withDelays(v * 1e-3, c.valve().offDelaySeconds()))));
    keys.put(
        "valve_t_off_ms",
        new Key(
            0.5,
            30,
            (c, v) -> c.withValve(c.valve().withDelays(c.valve().onDelaySeconds(), v * 1e-3))));
    keys.put("hose_more_m", new Key(0, 5, (c, v) -> c.withChamber(c.chamber().withMoreHose(v))));
    keys.put(
        "chamber_cm3", new Key(5, 500, (c, v) -> c.withChamber(c.chamber().withVolume(v * 1e-6))));
    keys.put(
        "turbine_k1",
        new Key(
            0.01,
            0.05,
            (c, v) -> c.withEngine(c.engine().withTurbo(c.engine().turbo().withTurbineK1(v)))));
    keys.put(
        "turbo_inertia_kg_m2",
        new Key(
            1e-5,
            5e-4,
            (c, v) -> c.withEngine(c.engine().withTurbo(c.engine().turbo().withInertia(v)))));
    keys.put(
        "displacement_l",
        new Key(0.6, 6, (c, v) -> c.withEngine(c.engine().withDisplacement(v * 1e-3))));
    keys.put(
        "map_offset_kpa",
        new Key(
            -50, 50, (c, v) -> c.withSensors(c.sensors().withMapError(v, c.sensors().mapScale()))));
    keys.put(
        "map_noise_kpa",
        new Key(
            0,
            20,
            (c, v) -> c.withSensors(c.sensors().withMapNoise(v, c.sensors().pulsationKpa()))));
    keys.put(
        "pulsation_kpa",
        new Key(
            0,
            40,
            (c, v) -> c.withSensors(c.sensors().withMapNoise(c.sensors().mapNoiseKpa(), v))));
    return keys;
  }

  /** The car with one change. */
  static PlantParams apply(PlantParams car, String key, String text) throws WrongUseException {
    Key known = KEYS.get(key.substring(PREFIX.length()));
    if (known == null) {
      throw new WrongUseException(
          key + " is no part of the virtual car",
          "known are " + PREFIX + String.join(", " + PREFIX, KEYS.keySet()));
    }
    double value;
    try {
      value = Double.parseDouble(text);
    } catch (NumberFormatException e) {
      throw new WrongUseException(key + ": '" + text + "' is not a number", "give a number");
    }
    Range.check(key, value, known.low(), known.high());
    return known.change().to(car, value);
  }
}
