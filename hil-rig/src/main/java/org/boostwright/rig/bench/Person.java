package org.boostwright.rig.bench;

import org.boostwright.core.bench.Heard;
import org.boostwright.core.bench.Question;
import org.boostwright.core.settings.PressureUnit;
import org.boostwright.rig.plant.ValveFaults;

/**
 * Answers a session's questions as a person at the virtual bench would: reads gauges to within a
 * few kPa, miscounts now and then, does what is asked.
 */
public final class Person {
  private static final double READING_KPA = 1.5;

  /** Unit the regulator's gauge is read in but not converted from; kPa is right. */
  public PressureUnit regulatorUnit = PressureUnit.KPA;

  /** Cannot hear or will not say. */
  public boolean silent;

  private final VirtualBench bench;
  private double openShare;
  private boolean coilWasOpen;

  /** A person at that bench. */
  public Person(VirtualBench bench) {
    this.bench = bench;
  }

  /** Does what is asked and answers. */
  public double answer(Question question) {
    var faults = bench.valve().faults();
    var actuator = bench.setup().actuator();
    switch (question) {
      case AIR_OFF:
        bench.air(false);
        letPass(3.0);
        bench.takeClicks();
        return Double.NaN;
      case AIR_ON:
        bench.air(true);
        letPass(1.0);
        return regulatorUnit.fromKpa(read(bench.valve().supplyKpaGauge()));
      case CLICK_COUNT:
        int heard = bench.takeClicks();
        boolean miscounts = heard > 2 && bench.random().nextDouble() < 0.1;
        return silent ? Double.NaN : miscounts ? heard - 1 : heard;
      case COIL_OHMS:
        return silent ? Double.NaN : coilOhms();
      case BATTERY_CLICK:
        return silent ? Double.NaN : clicksOnBattery() ? 1.0 : 0.0;
      case LISTEN_AT_VENT:
        return heardAtVent().asAnswer();
      case REGULATOR_WORKING:
        return regulatorUnit.fromKpa(read(bench.workingSupplyKpaGauge()));
      case UNPLUG_COIL:
        coilWasOpen = faults.coilOpen;
        faults.coilOpen = true;
        letPass(2.0);
        return silent ? Double.NaN : read(bench.valve().chamberKpaGauge());
      case PLUG_COIL:
        faults.coilOpen = coilWasOpen;
        return Double.NaN;
      case SUPPLY_SHUT:
        openShare = faults.supplyOpen;
        faults.supplyOpen = 0.0;
        return Double.NaN;
      case SUPPLY_OPEN:
        faults.supplyOpen = openShare;
        return Double.NaN;
      case ROD_CRACK:
        return read(actuator.crackKpaGauge());
      case ROD_FULL:
        return read(actuator.crackKpaGauge() + actuator.spanKpa());
      case ROD_HELD:
        double left = Math.exp(-60.0 * leakPerSecond());
        return read(left * (actuator.crackKpaGauge() + actuator.spanKpa()));
      case ROD_PRELOAD:
        return 2.0;
      default:
        throw new IllegalArgumentException("no answer to " + question);
    }
  }

  private double leakPerSecond() {
    // Conductance times reference pressure over volume: isothermal, choked at worst.
    return 1e5 * bench.valve().faults().leakConductance / bench.setup().chamber().volumeM3();
  }

  private void letPass(double seconds) {
    bench.pass(seconds);
  }

  private double read(double kpaGauge) {
    return Math.max(0.0, kpaGauge + READING_KPA * (2.0 * bench.random().nextDouble() - 1.0));
  }

  private double coilOhms() {
    var faults = bench.valve().faults();
    double ohms = bench.setup().valve().coil().ohms();
    return faults.coilOpen ? Double.POSITIVE_INFINITY : faults.coilShort ? 0.8 : ohms;
  }

  private boolean clicksOnBattery() {
    var faults = bench.valve().faults();
    return !faults.coilOpen && !faults.coilShort && faults.stuck == ValveFaults.Stuck.FREE;
  }

  private Heard heardAtVent() {
    if (silent) {
      return Heard.UNKNOWN;
    }
    if (bench.blowsOff(true)) {
      return Heard.STEADY_WHILE_ON;
    }
    if (bench.blowsOff(false)) {
      return Heard.STEADY_WHILE_OFF;
    }
    return bench.puffs() ? Heard.PUFF : Heard.NOTHING;
  }
}
