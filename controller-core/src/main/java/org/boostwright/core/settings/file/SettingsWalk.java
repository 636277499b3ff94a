package org.boostwright.core.settings.file;

import java.util.Locale;
import org.boostwright.core.AnalogChannel;
import org.boostwright.core.settings.AnalogSensor;
import org.boostwright.core.settings.ConverterSettings;
import org.boostwright.core.settings.PinSettings;
import org.boostwright.core.settings.Settings;
import org.boostwright.core.settings.UnitSettings;
import org.boostwright.core.settings.WiringSettings;
import org.boostwright.core.table.Curve;

/**
 * Goes through every effective value once, so that the listing and the digests can never see
 * different ones. Keys are those of the file without a pressure unit at the end.
 */
final class SettingsWalk {
  private static final Quantity SECONDS = Quantity.plain("s");

  private final Settings settings;
  private final SettingsVisitor visitor;
  private final Quantity level;
  private final Quantity spring;
  private final Quantity difference;
  private final Quantity rate;

  SettingsWalk(Settings settings, SettingsVisitor visitor) {
    this(settings, settings.units(), visitor);
  }

  /** The same in other units than the file's own. */
  SettingsWalk(Settings settings, UnitSettings units, SettingsVisitor visitor) {
    this.settings = settings;
    this.visitor = visitor;
    level = Quantity.level(units);
    spring = Quantity.gaugeLevel(new UnitSettings(units.pressure(), true));
    difference = Quantity.difference(units.pressure());
    rate = Quantity.rate(units.pressure());
  }

  /** Everything. */
  void all() {
    shown();
    car();
    hardware();
    limits();
    control();
  }

  /** What changes only how things are shown. */
  private void shown() {
    visitor.text("units.pressure", settings.units().pressure().label());
    visitor.text("units.reference", settings.units().gauge() ? "gauge" : "absolute");
    visitor.text("car.name", settings.car().name());
  }

  /** Everything that decides what the controller does. */
  void behaviour() {
    car();
    hardware();
    limits();
    control();
  }

  private void hardware() {
    visitor.text("actuator.layout", lower(settings.actuator().layout()));
    visitor.number("actuator.spring_cracks", settings.actuator().springCracksKpaGauge(), spring);
    visitor.number(
        "actuator.spring_full_lift", settings.actuator().springFullLiftKpaGauge(), spring);
    sensors();
    valve();
    wires();
    wiring();
    pins();
    converter();
  }

  private void car() {
    visitor.whole("car.cylinders", settings.car().cylinders());
    visitor.number(
        "car.pulses_per_revolution", settings.car().pulsesPerRevolution(), Quantity.plain(""));
    visitor.number("car.redline_rpm", settings.car().redlineRpm(), Quantity.RPM);
    visitor.number("car.running_above_rpm", settings.car().idleRpm(), Quantity.RPM);
    visitor.number(
        "car.road_pulses_per_km", settings.car().roadPulsesPerKm(), Quantity.plain("1/km"));
    visitor.list(
        "car.gear_rpm_per_kmh", settings.car().gearRpmPerKmh(), Quantity.plain("1/min per km/h"));
  }

  private void sensors() {
    visitor.text("sensors.map.location", lower(settings.sensors().mapLocation()));
    visitor.number("sensors.map.life_change", settings.sensors().lifeChangeKpa(), difference);
    for (AnalogChannel channel : AnalogChannel.values()) {
      AnalogSensor sensor = settings.sensors().channel(channel);
      String group = "sensors." + channel.id();
      if (sensor == null) {
        visitor.remark(group, "not fitted");
      } else {
        sensor(channel, sensor, group);
      }
    }
    visitor.number("sensors.assumed_ambient", settings.sensors().ambientKpaAbs(), level);
  }

  private void sensor(AnalogChannel channel, AnalogSensor sensor, String group) {
    Curve curve = sensor.calibration();
    visitor.list(group + ".volts", curve.axis().points(), Quantity.VOLTS);
    visitor.list(
        group + "." + SensorReader.valueKey(channel),
        curve.values(),
        SensorReader.isPressure(channel) ? level : SensorReader.valueQuantity(channel));
    visitor.list(
        group + ".valid_volts",
        new double[] {sensor.validLowVolts(), sensor.validHighVolts()},
        Quantity.VOLTS);
    visitor.number(group + ".step_volts", sensor.stepVolts(), Quantity.VOLTS);
    if (SensorReader.isPressure(channel)) {
      double noiseKpa = sensor.noiseVolts() * SensorReader.steepest(curve);
      visitor.number(group + ".noise", noiseKpa, difference);
    } else {
      visitor.number(group + ".noise_volts", sensor.noiseVolts(), Quantity.VOLTS);
    }
    visitor.number(group + ".refresh_ms", sensor.refreshMillis(), Quantity.plain("ms"));
    visitor.number(
        group + "." + SensorReader.rateKey(channel),
        sensor.maxRatePerSecond(),
        SensorReader.isPressure(channel) ? rate : SensorReader.rateQuantity(channel));
  }

  private void valve() {
    visitor.text("valve.energised", "vents_actuator");
    visitor.number("valve.frequency_hz", settings.valve().frequencyHz(), Quantity.plain("Hz"));
    visitor.number("valve.window_low_pct", settings.valve().windowLowDuty(), Quantity.SHARE);
    visitor.number("valve.window_high_pct", settings.valve().windowHighDuty(), Quantity.SHARE);
    curve(
        "valve.command_pct",
        Quantity.SHARE,
        "valve.command_duty_pct",
        settings.valve().commandToDuty(),
        Quantity.SHARE);
    visitor.number("valve.coil_ohms", settings.valve().coilOhms(), Quantity.plain("ohm"));
  }

  private void wires() {
    visitor.flag("wires.key", settings.optional().keyInput());
    visitor.flag("wires.permit", settings.optional().permitInput());
    visitor.flag("wires.boost_selector", settings.optional().boostSelector());
    visitor.flag("wires.coil_feedback", settings.optional().coilFeedback());
    visitor.flag("wires.spring_only_sense", settings.optional().springOnlySense());
  }

  private void wiring() {
    WiringSettings w = settings.wiring();
    Quantity ohm = Quantity.plain("ohm");
    volts("converter_supply_volts", w.converterSupplyVolts());
    volts("sensor_supply_volts", w.map().sensorSupplyVolts());
    visitor.flag("wiring.map_buffered", w.map().buffered());
    visitor.number("wiring.map_bias_ohms", w.map().biasOhms(), ohm);
    visitor.number("wiring.map_divider_top_ohms", w.map().dividerTopOhms(), ohm);
    visitor.number("wiring.map_divider_bottom_ohms", w.map().dividerBottomOhms(), ohm);
    visitor.number("wiring.map_filter_ohms", w.map().filterOhms(), ohm);
    visitor.number("wiring.map_filter_nf", w.map().filterFarads(), WiringReader.NANOFARAD);
    visitor.number("wiring.coil_mh", w.coil().henries(), WiringReader.MILLIHENRY);
    visitor.number("wiring.pick_up_a", w.coil().pickUpAmps(), WiringReader.AMPERE);
    visitor.number("wiring.drop_out_a", w.coil().dropOutAmps(), WiringReader.AMPERE);
    visitor.number("wiring.spool_on_ms", w.coil().spoolOnSeconds(), WiringReader.MILLISECOND);
    visitor.number("wiring.spool_off_ms", w.coil().spoolOffSeconds(), WiringReader.MILLISECOND);
    visitor.text("wiring.clamp", lower(w.coil().clamp()));
    volts("clamp_volts", w.coil().clampVolts());
    volts("gate_drive_volts", w.driver().gateDriveVolts());
    volts("mosfet_threshold_max_volts", w.driver().thresholdMaxVolts());
    volts("mosfet_rating_volts", w.driver().drainRatingVolts());
    visitor.number("wiring.mosfet_on_ohms", w.driver().onOhms(), ohm);
    visitor.number("wiring.pull_down_ohms", w.driver().pullDownOhms(), ohm);
    visitor.number("wiring.coil_fuse_a", w.driver().fuseAmps(), WiringReader.AMPERE);
    volts("load_dump_volts", w.driver().loadDumpVolts());
    visitor.number("wiring.heartbeat_bleed_ohms", w.heartbeat().bleedOhms(), ohm);
    visitor.number(
        "wiring.heartbeat_reservoir_nf", w.heartbeat().reservoirFarads(), WiringReader.NANOFARAD);
    visitor.number(
        "wiring.heartbeat_coupling_nf", w.heartbeat().couplingFarads(), WiringReader.NANOFARAD);
    volts("heartbeat_pump_volts", w.heartbeat().pumpVolts());
    volts("heartbeat_threshold_min_volts", w.heartbeat().thresholdMinVolts());
    volts("heartbeat_threshold_max_volts", w.heartbeat().thresholdMaxVolts());
  }

  private void volts(String key, double volts) {
    visitor.number("wiring." + key, volts, Quantity.VOLTS);
  }

  private void pins() {
    PinSettings pins = settings.pins();
    if (pins == null) {
      visitor.remark("pins", "none");
      return;
    }
    visitor.whole("pins.pwm_chip", pins.pwmChip());
    visitor.whole("pins.pwm_channel", pins.pwmChannel());
    visitor.whole("pins.pwm", pins.pwm());
    visitor.whole("pins.heartbeat", pins.heartbeat());
    visitor.whole("pins.coil_supply", pins.coilSupply());
    visitor.whole("pins.engine_cut", pins.engineCut());
    visitor.whole("pins.lamp", pins.lamp());
    visitor.whole("pins.key", pins.key());
    visitor.whole("pins.permit", pins.permit());
    visitor.whole("pins.boost_selector", pins.boostSelector());
    visitor.whole("pins.spring_only_sense", pins.springOnlySense());
    visitor.whole("pins.coil_feedback", pins.coilFeedback());
    visitor.whole("pins.tach", pins.tach());
    visitor.whole("pins.road", pins.road());
    visitor.flag("pins.i2c_in_use", pins.i2cInUse());
    visitor.flag("pins.spi_in_use", pins.spiInUse());
    visitor.flag("pins.uart_in_use", pins.uartInUse());
    visitor.flag("pins.audio_board_in_use", pins.audioBoardInUse());
    visitor.whole("pins.watchdog_board", pins.watchdogBoard());
    visitor.flag("pins.machine_watchdog", pins.machineWatchdog());
  }

  private void converter() {
    ConverterSettings converter = settings.converter();
    if (converter == null) {
      visitor.remark("converter", "none");
      return;
    }
    visitor.text("converter.kind", lower(converter.kind()));
    visitor.whole("converter.bus", converter.bus());
    boolean i2c = converter.kind() == ConverterSettings.Kind.ADS1115;
    visitor.whole("converter." + (i2c ? "i2c_address" : "chip_select"), converter.address());
    visitor.number("converter.full_scale_volts", converter.fullScaleVolts(), Quantity.VOLTS);
    for (AnalogChannel channel : AnalogChannel.values()) {
      visitor.whole("converter." + channel.id(), converter.input(channel));
    }
  }

  private void limits() {
    visitor.number("limits.cutoff", settings.limits().cutoffKpaAbs(), level);
    visitor.number(
        "limits.pressure_ratio_max", settings.limits().pressureRatioMax(), Quantity.plain(""));
    curve(
        "limits.duty_ceiling_rpm",
        Quantity.RPM,
        "limits.duty_ceiling_pct",
        settings.limits().dutyCeiling(),
        Quantity.SHARE);
    visitor.number("limits.trim_cap_pct", settings.limits().trimCapDuty(), Quantity.SHARE);
    curve(
        "limits.intake_air_c",
        Quantity.CELSIUS,
        "limits.intake_air_boost_pct",
        settings.limits().targetFactorOverIntakeC(),
        Quantity.SHARE);
    visitor.number(
        "limits.spring_only_above_c", settings.limits().springOnlyIntakeC(), Quantity.CELSIUS);
    visitor.list("limits.gear_target", settings.limits().gearTargetKpaAbs(), level);
    visitor.number("limits.low_boost", settings.limits().lowBoostKpaAbs(), level);
    visitor.number("limits.min_rpm", settings.limits().minControlRpm(), Quantity.RPM);
    visitor.number("limits.min_throttle_pct", settings.limits().minThrottlePct(), Quantity.PERCENT);
    visitor.flag("limits.engine_cut", settings.limits().engineCut());
    visitor.flag("limits.guest", settings.limits().guest());
  }

  private void control() {
    visitor.remark("target.rows", "over " + settings.demand().id());
    visitor.table("target.boost", settings.target(), level);
    visitor.table("base_duty.duty_pct", settings.baseDuty(), Quantity.SHARE);
    curve(
        "base_duty.exhaust_help_rpm",
        Quantity.RPM,
        "base_duty.exhaust_help",
        settings.exhaustHelp(),
        Quantity.plain("kPa per kPa"));
    visitor.flag("feedback.enabled", settings.feedback().enabled());
    gain("kp_pct_per_kpa", settings.feedback().kpDutyPerKpa(), "% per kPa");
    gain("ki_pct_per_kpa_s", settings.feedback().kiDutyPerKpaSecond(), "% per kPa and second");
    gain("kd_pct_s_per_kpa", settings.feedback().kdDutySecondPerKpa(), "% per kPa/s");
    visitor.number("feedback.tracking_s", settings.feedback().trackingSeconds(), SECONDS);
    visitor.number(
        "feedback.derivative_filter_s", settings.feedback().derivativeFilterSeconds(), SECONDS);
    visitor.number("feedback.active_within", settings.feedback().activeWithinKpa(), difference);
    visitor.flag("spool.enabled", settings.spool().enabled());
    visitor.number("spool.lead_s", settings.spool().leadSeconds(), SECONDS);
    visitor.number("spool.time_limit_s", settings.spool().timeLimitSeconds(), SECONDS);
    visitor.number("spool.min_rise", settings.spool().minRiseKpaPerSecond(), rate);
  }

  private void gain(String key, Curve curve, String unit) {
    curve(
        "feedback.rpm (" + key + ")",
        Quantity.RPM,
        "feedback." + key,
        curve,
        Quantity.sharePer(unit));
  }

  private void curve(
      String axisKey, Quantity axisQuantity, String key, Curve curve, Quantity quantity) {
    if (curve.axis().size() > 1) {
      visitor.list(axisKey, curve.axis().points(), axisQuantity);
      visitor.list(key, curve.values(), quantity);
    } else {
      visitor.number(key, curve.value(0), quantity);
    }
  }

  private static String lower(Enum<?> constant) {
    return constant.name().toLowerCase(Locale.ROOT);
  }
}
