package org.boostwright.rig.bench;

import java.util.Random;
import org.boostwright.core.bench.BenchInputs;
import org.boostwright.core.bench.BenchOutputs;
import org.boostwright.rig.plant.BenchValve;
import org.boostwright.rig.plant.PortSwap;
import org.boostwright.rig.plant.ValveFaults;

/**
 * A virtual valve on a bench: takes a session's outputs, lets a millisecond pass, gives the
 * sensor's sample. Sensor: 1 ms lag, noise, resolution.
 *
 * <p>What is wrong with it is set through {@link #valve()} and the fields here.
 */
public final class VirtualBench {
  /** Time between samples, s. */
  public static final double SAMPLE_SECONDS = 0.001;

  private static final long SAMPLE_NANOS = 1_000_000L;
  private static final double SENSOR_LAG_SECONDS = 0.001;
  private static final double HEARTBEAT_SECONDS = 0.06;

  /** Where the line sensor is plugged in. */
  public enum SensorPlace {
    LINE,
    SUPPLY,
    OPEN_AIR
  }

  /** Where the line sensor is plugged in. */
  public SensorPlace sensorPlace = SensorPlace.LINE;

  /** Number the sensor gives per kPa; 1 is right. */
  public double sensorFactor = 1.0;

  /** Added to the number, for gauge instead of absolute. */
  public double sensorOffset;

  /** The driver gets its commands. */
  public boolean driverConnected = true;

  /** A two-port bleed valve: energised opens a bleed from the line, supply stays joined. */
  public boolean bleedOnly;

  /** The sensor's plug is in. */
  public boolean sensorConnected = true;

  private final BenchSetup setup;
  private final BenchValve valve;
  private final Random random;

  private long nanos;
  private double sensorKpaAbs;
  private double sinceCommandSeconds;
  private boolean commandedSupply;
  private boolean before;
  private int clicks;
  private boolean lastOnSpool;
  private boolean lastOffSpool;
  private double supplySum;
  private int supplyCount;
  private double lastDriveSupplyKpaGauge = Double.NaN;
  private boolean wasDriven;

  /** A bench with its air off. */
  public VirtualBench(BenchSetup setup, long seed) {
    this.setup = setup;
    random = new Random(seed);
    valve = new BenchValve(setup.valve(), setup.chamber(), setup.actuator(), setup.ambientKpaAbs());
    valve.setRegulatorKpaPerGramPerSecond(setup.regulatorKpaPerGramPerSecond());
    valve.faults().leakConductance = setup.leakConductance();
    sensorKpaAbs = setup.ambientKpaAbs();
  }

  /** How it was built. */
  public BenchSetup setup() {
    return setup;
  }

  /** The valve, with its faults. */
  public BenchValve valve() {
    return valve;
  }

  /** Random numbers of this bench. */
  Random random() {
    return random;
  }

  /** Time on this bench, ns. */
  public long nanos() {
    return nanos;
  }

  /** Takes over the commands; a caller that stops calling loses the coil supply by heartbeat. */
  public void command(BenchOutputs out) {
    sinceCommandSeconds = 0.0;
    commandedSupply = out.coilSupplyClosed;
    valve.setSupplyClosed(out.coilSupplyClosed);
    if (driverConnected) {
      valve.setFrequencyHz(out.frequencyHz);
      valve.setDuty(out.dutyFraction);
      valve.setEnabled(out.pwmEnabled);
    }
    noteDrive(out.pwmEnabled && out.dutyFraction > 0.0);
  }

  private void noteDrive(boolean driven) {
    if (driven) {
      if (!wasDriven) {
        supplySum = 0.0;
        supplyCount = 0;
      }
      supplySum += valve.supplyKpaGauge();
      supplyCount++;
    } else if (wasDriven) {
      lastDriveSupplyKpaGauge = supplySum / supplyCount;
    }
    wasDriven = driven;
  }

  /** Lets time pass without anybody looking, s; the coil is off. */
  void pass(double seconds) {
    valve.setSupplyClosed(false);
    valve.advance(seconds);
    nanos += Math.round(seconds * 1e9);
    sensorKpaAbs = setup.ambientKpaAbs() + valve.chamberKpaGauge();
  }

  /** Lets a sample time pass and reads the sensor. */
  public void sample(BenchInputs in) {
    sinceCommandSeconds += SAMPLE_SECONDS;
    if (commandedSupply && sinceCommandSeconds > HEARTBEAT_SECONDS) {
      valve.setSupplyClosed(false);
    }
    if (bleedOnly) {
      valve.faults().stuck = ValveFaults.Stuck.AT_REST;
      boolean open = valve.coilAmps() > 0.2;
      valve.faults().leakConductance =
          setup.leakConductance() + (open ? setup.valve().ventConductance() : 0.0);
      noteSpool(open);
    }
    valve.advance(SAMPLE_SECONDS);
    nanos += SAMPLE_NANOS;
    if (!bleedOnly) {
      noteSpool(valve.spoolEnergised());
    }
    double seen =
        setup.ambientKpaAbs()
            + switch (sensorPlace) {
              case LINE -> valve.chamberKpaGauge();
              case SUPPLY -> valve.supplyKpaGauge();
              case OPEN_AIR -> 0.0;
            };
    double share = 1.0 - Math.exp(-SAMPLE_SECONDS / SENSOR_LAG_SECONDS);
    sensorKpaAbs += share * (seen - sensorKpaAbs);
    double noisy = sensorKpaAbs + setup.noiseKpa() * random.nextGaussian();
    double stepped = Math.round(noisy / setup.stepKpa()) * setup.stepKpa();
    in.lineKpaAbs = sensorConnected ? stepped * sensorFactor + sensorOffset : Double.NaN;
    if (sensorConnected) {
      in.sampleNanos = nanos;
    }
  }

  private void noteSpool(boolean energised) {
    if (energised && !before) {
      clicks++;
    }
    before = energised;
    if (valve.coilAmps() > 0.2) {
      lastOnSpool = energised;
    } else {
      lastOffSpool = energised;
    }
  }

  /** Coil current flows or will flow at the next edge: the coil is not off. */
  public boolean coilAlive() {
    return valve.coilAmps() > 1e-3;
  }

  /** Double clicks heard since this was last asked. */
  int takeClicks() {
    int heard = clicks;
    clicks = 0;
    return heard;
  }

  /** Mean supply while the valve was last driven, kPa gauge. */
  double workingSupplyKpaGauge() {
    return lastDriveSupplyKpaGauge;
  }

  /** Air on or off at the regulator. */
  void air(boolean on) {
    valve.setSupplyKpaGauge(on ? setup.supplyKpaGauge() : 0.0);
  }

  /** True when the supply is joined to the open port with the coil on (or off). */
  boolean blowsOff(boolean coilOn) {
    if (bleedOnly) {
      return coilOn;
    }
    boolean spool = coilOn ? lastOnSpool : lastOffSpool;
    PortSwap swap = valve.faults().portSwap;
    boolean joined =
        swap == PortSwap.SUPPLY_WITH_ACTUATOR && spool
            || swap == PortSwap.ACTUATOR_WITH_VENT && !spool;
    return joined && airArrives() && ventIsOpen();
  }

  /** True when the line empties through the open port as the coil goes on. */
  boolean puffs() {
    boolean moves = lastOnSpool != lastOffSpool;
    PortSwap swap = valve.faults().portSwap;
    return moves
        && swap == PortSwap.NONE
        && airArrives()
        && ventIsOpen()
        && !valve.faults().actuatorHoseOff;
  }

  private boolean airArrives() {
    return !valve.faults().supplyHoseOff && valve.faults().supplyOpen > 0.02;
  }

  private boolean ventIsOpen() {
    return valve.faults().ventOpen > 0.02;
  }
}
