package org.boostwright.rig.upkeep;

import java.util.Locale;
import org.boostwright.core.AnalogChannel;
import org.boostwright.core.bench.proof.Proof;
import org.boostwright.core.bench.proof.ProofMeasurement;
import org.boostwright.core.ladder.Change;
import org.boostwright.core.ladder.Entry;
import org.boostwright.core.ladder.Ladder;
import org.boostwright.core.ladder.RungState;
import org.boostwright.core.ladder.Standing;
import org.boostwright.core.settings.ActuatorLayout;
import org.boostwright.core.settings.ActuatorSettings;
import org.boostwright.core.settings.AnalogSensor;
import org.boostwright.core.settings.ConverterSettings;
import org.boostwright.core.settings.LimitSettings;
import org.boostwright.core.settings.MapLocation;
import org.boostwright.core.settings.OptionalWires;
import org.boostwright.core.settings.Settings;
import org.boostwright.core.settings.ValveSettings;
import org.boostwright.rig.report.DisplayUnits;
import org.boostwright.rig.result.Result;
import org.boostwright.rig.result.ResultBuilder;
import org.boostwright.rig.result.SettingsTables;
import org.boostwright.rig.result.Severity;
import org.boostwright.rig.result.Units;

/** The record of a car for its folder or its next owner: parts, limits, proofs, history. */
public final class CarRecord {
  /** How the controller is taken out of the car, in order. */
  public static final String TO_SPRING =
      "Back to the plain spring: open the spring-only switch or pull the valve's plug; the coil is"
          + " dead and the actuator sees boost. To take it all out, run one hose from the"
          + " compressor outlet straight to the actuator, clamp both ends, close the vent's"
          + " connection to the intake, and drive once on the spring with a gauge.";

  private final ResultBuilder result;
  private final Settings car;
  private final DisplayUnits units;

  /** Writes into a result. */
  public CarRecord(ResultBuilder result, Settings car) {
    this.result = result;
    this.car = car;
    units = new DisplayUnits(car.units());
  }

  /** What is fitted and what is never exceeded. */
  public void parts() {
    ActuatorSettings actuator = car.actuator();
    note(
        "part_actuator",
        "Actuator: %s; the gate begins to open at %s and is open at %s.",
        actuator.layout() == ActuatorLayout.SINGLE_PORT
            ? "one port, internal gate"
            : "external gate, the spring's side open to the air",
        known(actuator.springCracksKpaGauge(), Units.KPA_GAUGE),
        known(actuator.springFullLiftKpaGauge(), Units.KPA_GAUGE));
    ValveSettings valve = car.valve();
    note(
        "part_valve",
        "Valve: three ports, energised vents the actuator; coil %.1f ohm, %.0f Hz, window %.1f to"
            + " %.1f %% duty.",
        valve.coilOhms(),
        valve.frequencyHz(),
        100.0 * valve.windowLowDuty(),
        100.0 * valve.windowHighDuty());
    AnalogSensor map = car.sensors().channel(AnalogChannel.MAP);
    if (map != null) {
      double[] kpa = map.calibration().values();
      note(
          "part_pressure_sensor",
          "Pressure sensor: %s, up to %s.",
          car.sensors().mapLocation() == MapLocation.INTAKE_MANIFOLD
              ? "on the intake manifold"
              : "before the throttle",
          units.text(Math.max(kpa[0], kpa[kpa.length - 1]), Units.KPA_ABS));
    }
    ConverterSettings converter = car.converter();
    note(
        "part_converter",
        "Converter: %s. Wires fitted: %s.",
        converter == null ? "none declared" : converter.kind().name(),
        wires(car.optional()));
    limits();
    SettingsTables.add(result, car);
  }

  private void limits() {
    LimitSettings limits = car.limits();
    double most = 0.0;
    for (double duty : limits.dutyCeiling().values()) {
      most = Math.max(most, duty);
    }
    note(
        "limits",
        "Limits: overboost %s, engine cut %s, pressure ratio %.2f, duty at most %.0f %%, trim at"
            + " most %.0f %%, low boost %s, spring only above %.0f degC.",
        units.text(limits.cutoffKpaAbs(), Units.KPA_ABS),
        limits.engineCut() ? "wired" : "not used",
        limits.pressureRatioMax(),
        100.0 * most,
        100.0 * limits.trimCapDuty(),
        units.text(limits.lowBoostKpaAbs(), Units.KPA_ABS),
        limits.springOnlyIntakeC());
    StringBuilder gears = new StringBuilder();
    for (int i = 0; i < limits.gearTargets(); i++) {
      gears
          .append(i == 0 ? "" : ", ")
          .append(i + 1)
          .append(": ")
          .append(units.text(limits.gearTargetKpaAbs(i), Units.KPA_ABS));
    }
    if (gears.length() > 0) {
      note("limits_gears", "Highest target in each gear: %s.", gears);
    }
  }

  private static String wires(OptionalWires wires) {
    StringBuilder text = new StringBuilder();
    add(text, wires.keyInput(), "key");
    add(text, wires.permitInput(), "permit");
    add(text, wires.boostSelector(), "boost selector");
    add(text, wires.coilFeedback(), "coil feedback");
    add(text, wires.springOnlySense(), "spring-only switch");
    return text.length() == 0 ? "none" : text.toString();
  }

  private static void add(StringBuilder text, boolean fitted, String words) {
    if (fitted) {
      text.append(text.length() == 0 ? "" : ", ").append(words);
    }
  }

  private String known(double value, String unit) {
    return Double.isNaN(value) ? "an unknown pressure" : units.text(value, unit);
  }

  /** What the bench measured. */
  public void proof(Proof proof) {
    note(
        "bench",
        "Bench proof of %s, made on: %s; %s.",
        day(proof.date()),
        proof.source().id().replace('_', ' '),
        proof.sound() && proof.missing().isEmpty() ? "sound" : "not sound");
    for (ProofMeasurement m : proof.measurements()) {
      if (!m.id().contains("95")) {
        result.measure(m.id(), words(m.id()), m.value(), m.unit());
      }
    }
  }

  /** {@code valve.t_on_ms} to {@code valve t on}: the unit stands beside the number. */
  private static String words(String id) {
    String name = id.replaceAll("(_kpa_per_s|_kpa|_ms|_hz|_c|_mm)$", "").replaceAll("[._]", " ");
    return name.startsWith("bench") ? name : "bench: " + name;
  }

  /** The ladder, skipped rungs first of all, and everything that was done. */
  public void ladder(Ladder ladder, Standing standing, boolean practice) {
    for (RungState state : standing.rungs()) {
      boolean sound = state.status() == RungState.Status.PROVEN;
      result.find(
          "rung_" + state.rung().id() + "_" + state.status().name().toLowerCase(Locale.ROOT),
          sound ? Severity.NOTE : Severity.CAUTION,
          "Rung '" + state.rung().words() + "': " + state.words() + ".",
          "");
    }
    for (Entry entry : ladder.entries()) {
      Change change = entry.change();
      if (entry.practice() != practice) {
        continue;
      }
      if (change != null) {
        note("work_" + change.id(), "%s: %s. %s", day(entry.date()), change.words(), entry.words());
      } else if (entry.kind() == Entry.Kind.SKIPPED) {
        note(
            "skipped",
            "%s: '%s' was skipped: %s",
            day(entry.date()),
            entry.rung() == null ? "" : entry.rung().words(),
            entry.words());
      }
    }
  }

  private static String day(String date) {
    return date.length() < 10 ? date : date.substring(0, 10);
  }

  /** What the fault campaign on the virtual car found. */
  public void campaign(Result campaign, String settingsDigest) {
    campaign.measurements().stream()
        .filter(m -> m.id().startsWith("faults.") && !m.id().startsWith("faults.scenario."))
        .forEach(result::add);
    boolean same = campaign.settingsDigest().filter(settingsDigest::equals).isPresent();
    result.find(
        same ? "campaign" : "campaign_other_settings",
        same ? Severity.NOTE : Severity.CAUTION,
        "Fault campaign on the virtual car: "
            + campaign.headline()
            + (same ? "" : " It was run with other settings than these."),
        same ? "" : "run 'boostwright faults' again with these settings");
  }

  private void note(String code, String text, Object... values) {
    result.find(code, Severity.NOTE, String.format(Locale.ROOT, text, values).strip(), "");
  }
}
