package org.boostwright.rig.inject;

import java.util.ArrayList;
import java.util.List;
import java.util.function.Consumer;
import org.boostwright.core.AnalogChannel;
import org.boostwright.core.monitor.FaultCode;
import org.boostwright.rig.plant.ProjectCar;
import org.boostwright.rig.plant.WireFaults;

/** Rows S1 to S12 and B1: sensors, their wires and hoses, and the converter. */
final class SensorFaults {
  private static final int MAP = AnalogChannel.MAP.ordinal();
  private static final double WIRE_SECONDS = 0.040;

  private final List<FaultKind> kinds = new ArrayList<>();

  private SensorFaults() {}

  static List<FaultKind> all() {
    SensorFaults all = new SensorFaults();
    all.mapWires();
    all.mapReadings();
    all.mapNumbers();
    all.otherSensors();
    all.converter();
    return all.kinds;
  }

  private static WireFaults map(FaultyRun at) {
    return at.faults().wire(AnalogChannel.MAP);
  }

  private void wire(String id, String words, WireFaults.Wire wire, FaultCode code) {
    kinds.add(
        FaultKind.of(id, words, Site.MAP_INPUT)
            .restWithin(WIRE_SECONDS)
            .reports(code)
            .allows(FaultCode.MAP_JUMPS, FaultCode.MAP_FALL_UNEXPLAINED)
            .done(
                (at, amount) -> map(at).wire = wire, at -> map(at).wire = WireFaults.Wire.SOUND));
  }

  private void mapWires() {
    wire(
        "s1_map_open",
        "pressure sensor wire open",
        WireFaults.Wire.OPEN,
        FaultCode.MAP_SIGNAL_LOW);
    wire(
        "s2_map_to_ground",
        "pressure sensor short to ground",
        WireFaults.Wire.SHORT_TO_GROUND,
        FaultCode.MAP_SIGNAL_LOW);
    wire(
        "s3_map_to_supply",
        "pressure sensor short to supply",
        WireFaults.Wire.SHORT_TO_SUPPLY,
        FaultCode.MAP_SIGNAL_HIGH);
  }

  private void mapReadings() {
    kinds.add(
        FaultKind.of("s4_map_frozen", "pressure reading frozen in range", Site.MAP_INPUT)
            .restWithin(0.100)
            .reports(FaultCode.MAP_FROZEN)
            .allows(FaultCode.MAP_JUMPS)
            .done((at, amount) -> map(at).frozen = true, at -> map(at).frozen = false));
    kinds.add(
        FaultKind.of("s5_map_offset", "pressure sensor reads too high or too low", Site.MAP_INPUT)
            .amount("added to the reading", "kPa", -60.0, 60.0, -25.0)
            .allows(
                FaultCode.MAP_AMBIENT_MISMATCH,
                FaultCode.MAP_JUMPS,
                FaultCode.MAP_FALL_UNEXPLAINED,
                FaultCode.OVERBOOST,
                FaultCode.OVERBOOST_REPEATED,
                FaultCode.MAP_SIGNAL_LOW,
                FaultCode.MAP_SIGNAL_HIGH,
                FaultCode.VALVE_NO_EFFECT)
            .done(
                (at, amount) -> map(at).offsetVolts = amount * ProjectCar.mapVoltsPerKpa(),
                at -> map(at).offsetVolts = 0.0));
    kinds.add(
        FaultKind.of("s5_map_scale", "pressure sensor's gain is off", Site.MAP_INPUT)
            .amount("factor on its volts", "1", 0.7, 1.3, 0.85)
            .allows(
                FaultCode.MAP_AMBIENT_MISMATCH,
                FaultCode.MAP_JUMPS,
                FaultCode.MAP_FALL_UNEXPLAINED,
                FaultCode.OVERBOOST,
                FaultCode.OVERBOOST_REPEATED,
                FaultCode.MAP_SIGNAL_HIGH,
                FaultCode.VALVE_NO_EFFECT)
            .done((at, amount) -> map(at).scale = amount, at -> map(at).scale = 1.0));
    kinds.add(
        FaultKind.of("s6_map_noise", "noise on the pressure reading", Site.MAP_INPUT)
            .amount("factor on the rated noise", "1", 1.5, 12.0, 5.0)
            .allows(FaultCode.MAP_NOISY, FaultCode.MAP_JUMPS, FaultCode.MAP_FALL_UNEXPLAINED)
            .done((at, amount) -> map(at).noiseFactor = amount, at -> map(at).noiseFactor = 1.0));
    loose("s7_map_loose_at_converter", "loose contact at the converter, sample by sample", 0.0);
    loose("s7_map_loose_wire", "loose contact in the pressure sensor's wire", 0.05);
    kinds.add(
        FaultKind.of("s8_map_jump", "pressure reading leaps within its range", Site.MAP_INPUT)
            .amount("reading afterwards", "kPa absolute", 25.0, 295.0, 55.0)
            .reports(FaultCode.MAP_JUMPS, FaultCode.MAP_FROZEN, FaultCode.OVERBOOST)
            .allows(
                FaultCode.MAP_FALL_UNEXPLAINED,
                FaultCode.OVERBOOST_REPEATED,
                FaultCode.VALVE_NO_EFFECT,
                FaultCode.MAP_NOISY)
            .restWithin(0.100)
            .done(
                (at, amount) -> map(at).replacedVolts = ProjectCar.mapVolts(amount),
                at -> map(at).replacedVolts = Double.NaN));
    kinds.add(
        FaultKind.of("s8_map_spikes", "impossible samples again and again", Site.MAP_INPUT)
            .amount("one sample in so many", "samples", 2.0, 40.0, 2.0)
            .allows(FaultCode.MAP_JUMPS, FaultCode.MAP_NOISY, FaultCode.MAP_FALL_UNEXPLAINED)
            .done(
                (at, amount) -> {
                  at.tamper().spikeVolts = 40.0 * ProjectCar.mapVoltsPerKpa();
                  at.tamper().spikeEvery = (int) Math.round(amount);
                },
                at -> at.tamper().spikeEvery = 0));
    kinds.add(
        FaultKind.of("s8_map_spike", "one impossible sample", Site.MAP_INPUT)
            .amount("height", "kPa", -120.0, 120.0, 60.0)
            .momentary()
            .done(
                (at, amount) -> {
                  at.tamper().spikeVolts = amount * ProjectCar.mapVoltsPerKpa();
                  at.tamper().spikeOnce = true;
                },
                at -> at.tamper().spikeOnce = false));
    kinds.add(
        FaultKind.of("s9_map_stale", "pressure samples no longer renewed", Site.MAP_INPUT)
            .restWithin(0.020)
            .reports(FaultCode.MAP_STALE)
            .done((at, amount) -> map(at).stale = true, at -> map(at).stale = false));
    kinds.add(
        FaultKind.of("s9_map_late", "pressure samples come late", Site.MAP_INPUT)
            .amount("delay", "ticks", 4.0, 40.0, 4.0)
            .restWithin(0.040)
            .reports(FaultCode.MAP_STALE)
            .done(
                (at, amount) -> at.tamper().lateTicks = (int) Math.round(amount),
                at -> at.tamper().lateTicks = 0));
    kinds.add(
        FaultKind.of("s11_map_hose_off", "pressure hose off the sensor", Site.MAP_INPUT)
            .restWithin(0.100)
            .onlyUnderBoost()
            .reports(FaultCode.MAP_FALL_UNEXPLAINED, FaultCode.MAP_FLAT_AT_AMBIENT)
            .allows(FaultCode.MAP_JUMPS, FaultCode.MAP_NOISY)
            .done(
                (at, amount) -> at.faults().mapHoseOff = true,
                at -> at.faults().mapHoseOff = false));
  }

  private void loose(String id, String words, double periodSeconds) {
    kinds.add(
        FaultKind.of(id, words, Site.MAP_INPUT)
            .amount("share of the time open", "0..1", 0.1, 0.9, 0.5)
            .reports(FaultCode.MAP_SIGNAL_LOW, FaultCode.MAP_JUMPS)
            .allows(FaultCode.MAP_FALL_UNEXPLAINED, FaultCode.MAP_NOISY)
            .done(
                (at, amount) -> {
                  map(at).intermittentFraction = amount;
                  map(at).intermittentPeriodSeconds = periodSeconds;
                },
                at -> map(at).intermittentFraction = 0.0));
  }

  private void number(String id, String words, double volts) {
    kinds.add(
        FaultKind.of(id, words, Site.MAP_INPUT)
            .restWithin(WIRE_SECONDS)
            .reports(FaultCode.MAP_NOT_A_NUMBER, FaultCode.MAP_SIGNAL_HIGH)
            .done(
                (at, amount) -> {
                  at.tamper().volts[MAP] = volts;
                  at.tamper().replaced[MAP] = true;
                },
                at -> at.tamper().replaced[MAP] = false));
  }

  private void mapNumbers() {
    number("s10_map_nan", "pressure channel gives no number", Double.NaN);
    number("s10_map_infinite", "pressure channel gives infinity", Double.POSITIVE_INFINITY);
    number("s10_map_overflow", "pressure channel overflows", Double.MAX_VALUE);
    kinds.add(
        FaultKind.of("s10_pulse_period", "pulse periods that are none", Site.PULSES)
            .amount("0 = NaN, 1 = infinity, 2 = negative, 3 = overflow", "1", 0.0, 3.0, 0.0)
            .allows(FaultCode.ENGINE_SPEED_JUMPS, FaultCode.ENGINE_SPEED_LOST)
            .done(
                (at, amount) -> {
                  double[] periods = {Double.NaN, Double.POSITIVE_INFINITY, -1.0, Double.MAX_VALUE};
                  at.tamper().periodNanos = periods[(int) Math.round(amount)];
                  at.tamper().periodReplaced = true;
                },
                at -> at.tamper().periodReplaced = false));
  }

  private void channel(
      String id,
      String words,
      AnalogChannel channel,
      FaultCode code,
      Consumer<WireFaults> on,
      double restWithin) {
    kinds.add(
        FaultKind.of(id, words, Site.OTHER_INPUT)
            .restWithin(restWithin)
            .reports(code)
            .allows(FaultCode.SUPPLY_LOW, FaultCode.SUPPLY_SIGNAL, FaultCode.MAP_NOISY)
            .done(
                (at, amount) -> on.accept(at.faults().wire(channel)),
                at -> at.faults().wire(channel).clear()));
  }

  private void otherSensors() {
    AnalogChannel throttle = AnalogChannel.THROTTLE;
    FaultCode signal = FaultCode.THROTTLE_SIGNAL;
    channel(
        "s12_throttle_open",
        "throttle sensor wire open",
        throttle,
        signal,
        w -> w.wire = WireFaults.Wire.OPEN,
        0.100);
    channel(
        "s12_throttle_to_supply",
        "throttle sensor short to supply",
        throttle,
        signal,
        w -> w.wire = WireFaults.Wire.SHORT_TO_SUPPLY,
        0.100);
    channel(
        "s12_throttle_stale",
        "throttle samples no longer renewed",
        throttle,
        FaultCode.THROTTLE_STALE,
        w -> w.stale = true,
        0.100);
    channel(
        "s12_intake_air_open",
        "intake air sensor wire open",
        AnalogChannel.INTAKE_AIR,
        FaultCode.INTAKE_AIR_SIGNAL,
        w -> w.wire = WireFaults.Wire.OPEN,
        Double.NaN);
    channel(
        "s12_supply_open",
        "supply voltage wire open",
        AnalogChannel.SUPPLY,
        FaultCode.SUPPLY_SIGNAL,
        w -> w.wire = WireFaults.Wire.OPEN,
        Double.NaN);
    kinds.add(
        FaultKind.of(
                "s12_throttle_stuck", "throttle plate stuck open with the pedal closed", Site.CAR)
            .amount("throttle", "%", 60.0, 100.0, 100.0)
            .allows(FaultCode.THROTTLE_AGAINST_PEDAL)
            .done(
                (at, amount) -> at.faults().throttleStuckPct = amount,
                at -> at.faults().throttleStuckPct = Double.NaN));
  }

  private void converter() {
    kinds.add(
        FaultKind.of("b1_map_no_answer", "converter does not answer for pressure", Site.MAP_INPUT)
            .restWithin(0.020)
            .reports(FaultCode.MAP_STALE)
            .done((at, amount) -> map(at).noAnswer = true, at -> map(at).noAnswer = false));
    kinds.add(
        FaultKind.of("b1_bus_hangs", "converter answers on no channel", Site.MAP_INPUT)
            .restWithin(0.020)
            .reports(FaultCode.MAP_STALE)
            .allows(
                FaultCode.THROTTLE_STALE, FaultCode.SUPPLY_SIGNAL, FaultCode.INTAKE_AIR_SIGNAL)
            .done(
                (at, amount) -> {
                  for (AnalogChannel channel : AnalogChannel.values()) {
                    at.faults().wire(channel).noAnswer = true;
                  }
                },
                at -> {
                  for (AnalogChannel channel : AnalogChannel.values()) {
                    at.faults().wire(channel).noAnswer = false;
                  }
                }));
  }
}
