package org.boostwright.rig.plan;

import java.util.Arrays;
import java.util.Locale;
import org.boostwright.core.AnalogChannel;
import org.boostwright.core.settings.AnalogSensor;
import org.boostwright.core.settings.ProjectSettings;
import org.boostwright.core.settings.Settings;
import org.boostwright.core.settings.UnitSettings;
import org.boostwright.core.settings.file.CheckReport;
import org.boostwright.rig.plant.Atmosphere;
import org.boostwright.rig.plant.PlantParams;
import org.boostwright.rig.plant.ValveParams;
import org.boostwright.rig.report.DisplayUnits;
import org.boostwright.rig.result.ResultBuilder;
import org.boostwright.rig.result.Severity;
import org.boostwright.rig.result.Units;

/**
 * Go or no-go before anything is bought.
 *
 * <p>Limits are common practice without a source unless said otherwise: target over spring pressure
 * (both gauge) 1.3 to 1.7 easy, about 2 the ceiling; hose of 4 mm bore, at most half a metre;
 * pressure read 20 times a second or more, 100 for spikes.
 */
public final class Plan {
  private static final double NONE = Double.NaN;
  private static final double LOWEST_RATIO = 1.05;
  private static final double EASY_RATIO = 1.7;
  private static final double HIGHEST_RATIO = 2.0;

  /** What is lost in the cooler (5 to 15 kPa) and the filter, kPa. */
  private static final double COOLER_DROP_KPA = 10.0;

  private static final double FILTER_DROP_KPA = 2.0;

  /** A sensor that ends at the run-away pressure does not see it. */
  private static final double SENSOR_HEADROOM = 1.02;

  private static final double LONGEST_HOSE_MM = 500.0;
  private static final double NARROWEST_BORE_MM = 3.0;
  private static final double WIDEST_BORE_MM = 6.0;

  /** Filling time above which the actuator lags behind a spooling turbo, ms (own choice). */
  private static final double LONGEST_FILL_MS = 160.0;

  /** Narrowest usable share of the duty (own choice; half of it is left for the trim). */
  private static final double NARROWEST_WINDOW = 0.40;

  private static final double SLOWEST_MS = 50.0;
  private static final double SPIKE_MS = 10.0;
  private static final double COARSEST_KPA = 1.0;

  private final Settings settings;
  private final ProjectSettings project;
  private final PlantParams car;
  private final CheckReport check;
  private final ResultBuilder result;
  private final DisplayUnits units;

  private Plan(
      Settings settings,
      ProjectSettings project,
      PlantParams base,
      CheckReport check,
      ResultBuilder result) {
    this.settings = settings;
    this.project = project;
    this.check = check;
    this.result = result;
    car = PlannedCar.of(settings, project, base);
    units = new DisplayUnits(settings.units());
  }

  /**
   * Adds everything there is to say; the result's verdict is go or no-go.
   *
   * @param base virtual car to begin with
   * @param check report on the settings, for the converter's figures
   */
  public static void add(
      ResultBuilder result,
      Settings settings,
      ProjectSettings project,
      PlantParams base,
      CheckReport check) {
    Plan plan = new Plan(settings, project, base, check, result);
    plan.spring();
    plan.fuel();
    plan.altitudes();
    plan.sensor();
    plan.hoses();
    plan.valve();
    plan.converter();
  }

  /** Highest target, kPa absolute. */
  private double target() {
    return Arrays.stream(settings.target().values()).max().orElse(NONE);
  }

  private String level(double kpaAbs) {
    return units.text(kpaAbs, Units.KPA_ABS);
  }

  private void problem(String code, String text, String next) {
    result.find(code, Severity.PROBLEM, text, next);
  }

  private void spring() {
    double spring = settings.actuator().springCracksKpaGauge();
    double boost = target() - UnitSettings.STANDARD_ATMOSPHERE_KPA;
    double ratio = boost / spring;
    result.measure(
        "plan.target_over_spring",
        "target over spring, both gauge (easy: 1.3 to 1.7)",
        ratio,
        "",
        LOWEST_RATIO,
        HIGHEST_RATIO);
    String pressures =
        "spring "
            + units.text(spring, Units.KPA_GAUGE)
            + ", target "
            + units.text(boost, Units.KPA_GAUGE);
    if (Double.isNaN(ratio)) {
      problem(
          "spring_unknown",
          "The spring's pressure is not stated.",
          "measure it on the bench and write actuator.spring_cracks");
    } else if (ratio > HIGHEST_RATIO) {
      problem(
          "spring_too_soft",
          "The spring is too soft for the target (" + pressures + "): exhaust pressure pushes the"
              + " gate open before the target is held.",
          "fit a stiffer spring, at least " + units.text(boost / EASY_RATIO, Units.KPA_GAUGE)
              + ", if fuel and engine stand that for ever; or ask for less");
    } else if (!(ratio >= LOWEST_RATIO)) {
      problem(
          "spring_too_stiff",
          "The spring alone gives what the target asks for, or more (" + pressures + "): no valve"
              + " can lower boost below the spring.",
          "fit a softer spring, or none of this");
    } else if (ratio > EASY_RATIO) {
      result.find(
          "spring_soft",
          Severity.CAUTION,
          "The target is far above the spring (" + pressures + "): expect sag at high speed.",
          "a stiffer spring makes it easier");
    }
    if (!project.springIsSafe()) {
      problem(
          "spring_not_stated_safe",
          "Every failure ends at spring pressure, and you have not stated that fuel, ignition and"
              + " engine stand that for ever.",
          "make sure of it, then write spring_is_safe = true in [project]");
    }
  }

  private void fuel() {
    double cutoff = settings.limits().cutoffKpaAbs();
    double margin = cutoff - target();
    result.measure(
        "plan.limit_over_target_kpa",
        "overboost limit above the target",
        margin,
        Units.KPA);
    if (!(margin >= 10.0 && margin <= 40.0)) {
      result.find(
          "limit_margin",
          Severity.CAUTION,
          "The overboost limit lies " + units.text(margin, Units.KPA) + " above the target.",
          "15 to 25 kPa (2.2 to 3.6 psi) let it act before harm and not before need");
    }
    double safe = project.safeKpaAbs();
    if (Double.isNaN(safe)) {
      result.find(
          "safe_boost_unknown",
          Severity.CAUTION,
          "What fuel and engine stand is not stated.",
          "ask who tuned the fuel, then write safe_boost in [project]");
    } else if (!(target() <= safe)) {
      problem(
          "target_above_safe",
          "The target, " + level(target()) + ", is above what you stated fuel and engine to stand, "
              + level(safe) + ".",
          "lower the target, or have fuel and ignition made ready for it first");
    }
  }

  private void altitudes() {
    double available = Math.min(project.compressorRatioMax(), settings.limits().pressureRatioMax());
    double worst = NONE;
    for (double altitude : project.altitudesM()) {
      double ambient = Atmosphere.standardKpaAbs(altitude);
      double needed = (target() + COOLER_DROP_KPA) / (ambient - FILTER_DROP_KPA);
      worst = Double.isNaN(worst) ? needed : Math.max(worst, needed);
      if (!(needed <= project.compressorRatioMax())) {
        problem(
            "altitude",
            String.format(
                Locale.ROOT,
                "At %.0f m the target of %s needs a pressure ratio of %.2f; the compressor has"
                    + " %.2f. The controller would hold the target down there.",
                altitude,
                level(target()),
                needed,
                project.compressorRatioMax()),
            "ask for less boost, or for less altitude");
      } else if (!(target() / ambient <= settings.limits().pressureRatioMax())) {
        result.find(
            "altitude_limited",
            Severity.CAUTION,
            String.format(
                Locale.ROOT,
                "At %.0f m limits.pressure_ratio_max holds the target down to %s.",
                altitude,
                level(settings.limits().pressureRatioMax() * ambient)),
            "");
      }
    }
    result.measure(
        "plan.pressure_ratio",
        "pressure ratio needed at the highest place",
        worst,
        "",
        NONE,
        project.compressorRatioMax());
    result.measure("plan.pressure_ratio_available", "pressure ratio available", available, "");
  }

  private void sensor() {
    AnalogSensor map = settings.sensors().channel(AnalogChannel.MAP);
    double top = map == null ? NONE : Arrays.stream(map.calibration().values()).max().orElse(NONE);
    double lowest = Arrays.stream(project.altitudesM()).min().orElse(0.0);
    double runaway =
        Double.isNaN(project.runawayKpaAbs())
            ? PlannedCar.runawayKpaAbs(
                car, Atmosphere.at(lowest, 20.0), settings.car().redlineRpm())
            : project.runawayKpaAbs();
    result.measure(
        "plan.runaway_kpa", "pressure with the gate held shut", runaway, Units.KPA_ABS);
    result.measure(
        "plan.sensor_top_kpa",
        "highest pressure the sensor shows",
        top,
        Units.KPA_ABS,
        SENSOR_HEADROOM * runaway,
        NONE);
    if (!(top >= SENSOR_HEADROOM * runaway)) {
      problem(
          "sensor_saturates",
          "The pressure sensor ends at " + level(top) + ", and with the gate held shut this engine"
              + " reaches " + level(runaway) + ": it cannot see how bad an overboost is.",
          "fit a sensor that goes beyond "
              + level(SENSOR_HEADROOM * runaway));
    }
  }

  private void hoses() {
    double volume = project.volumeCm3();
    double conductance = ValveParams.DEFAULT.supplyConductance();
    // ISO 6358 with the reference density: a chamber fills with tau = V / (C * 100 kPa).
    double fillMs = 1e3 * volume * 1e-6 / (conductance * 1e5);
    result.measure("plan.volume_cm3", "volume the valve fills and vents", volume, "cm3");
    result.measure(
        "plan.fill_ms",
        "time to fill it by two thirds, ordinary valve",
        fillMs,
        Units.MILLISECONDS,
        NONE,
        LONGEST_FILL_MS);
    boolean bore =
        project.hoseBoreMm() >= NARROWEST_BORE_MM && project.hoseBoreMm() <= WIDEST_BORE_MM;
    double each = project.hoseLengthMm() / project.actuators();
    if (!(each <= LONGEST_HOSE_MM) || !bore || !(fillMs <= LONGEST_FILL_MS)) {
      problem(
          "hose",
          String.format(
              Locale.ROOT,
              "%.0f mm of %.1f mm hose: %.0f cm3 that take %.0f ms to fill.",
              project.hoseLengthMm(),
              project.hoseBoreMm(),
              volume,
              fillMs),
          "put the valve next to the actuator: at most half a metre of 4 mm hose to each");
    }
    if (project.actuators() > 1 && !project.equalLegs()) {
      problem(
          "unequal_legs",
          "Two actuators on one valve with unequal hoses open one after the other.",
          "make both legs from the tee of one length and bore");
    }
  }

  private void valve() {
    double hz = settings.valve().frequencyHz();
    ValveParams ordinary = ValveParams.DEFAULT;
    double low = settings.valve().windowLowDuty();
    double high = settings.valve().windowHighDuty();
    double ordinaryWidth = 1.0 - (ordinary.onDelaySeconds() + ordinary.offDelaySeconds()) * hz;
    double width = Math.min(high - low, ordinaryWidth);
    result.measure(
        "plan.window_pct",
        "usable share of the duty at this frequency",
        100.0 * width,
        Units.PERCENT,
        100.0 * NARROWEST_WINDOW,
        NONE);
    if (!(width >= NARROWEST_WINDOW)) {
      problem(
          "valve_window",
          String.format(
              Locale.ROOT,
              "At %.0f Hz only %.0f %% of the duty does anything: an ordinary valve needs %.1f ms to"
                  + " leave its seat and %.1f ms to come back.",
              hz,
              Math.max(0.0, 100.0 * width),
              1e3 * ordinary.onDelaySeconds(),
              1e3 * ordinary.offDelaySeconds()),
          "26 to 39 Hz suit valves of this kind; the bench finds yours");
    }
  }

  private void converter() {
    AnalogSensor map = settings.sensors().channel(AnalogChannel.MAP);
    double every = Math.max(figure("converter.map_every_ms"), map == null ? 0 : map.refreshMillis());
    double step = figure("map.step_kpa");
    result.measure(
        "plan.map_every_ms",
        "pressure is read every",
        every,
        Units.MILLISECONDS,
        NONE,
        SLOWEST_MS);
    result.measure("plan.map_step_kpa", "in steps of", step, Units.KPA, NONE, COARSEST_KPA);
    if (!(every <= SLOWEST_MS) || !(step <= COARSEST_KPA)) {
      problem(
          "converter",
          String.format(
              Locale.ROOT,
              "Pressure would be read every %.0f ms in steps of %s: too slow or too coarse to stop"
                  + " an overboost in time.",
              every,
              units.text(step, Units.KPA)),
          "20 readings a second are the least, 100 for spikes, in steps of 1 kPa or finer");
    } else if (every > SPIKE_MS) {
      result.find(
          "converter_slow",
          Severity.CAUTION,
          "Fewer than 100 readings a second: spikes are missed.",
          "");
    }
    if (settings.converter() == null) {
      result.find("converter_unknown", Severity.NOTE, "No [converter] is stated yet.", "");
    }
  }

  /** A figure of the check; 0 where it has none, because nothing of the kind is stated. */
  private double figure(String id) {
    return check.figures().stream()
        .filter(f -> f.id().equals(id))
        .mapToDouble(CheckReport.Figure::value)
        .findFirst()
        .orElse(0.0);
  }
}
