package org.boostwright.rig.link;

import java.util.Random;
import org.boostwright.core.AnalogChannel;
import org.boostwright.core.Inputs;
import org.boostwright.core.bench.BenchInputs;
import org.boostwright.core.bench.BenchOutputs;
import org.boostwright.core.bench.Question;
import org.boostwright.rig.bench.BenchSetup;
import org.boostwright.rig.bench.Person;
import org.boostwright.rig.bench.VirtualBench;
import org.boostwright.rig.plant.ProjectCar;

/**
 * The valve on the bench behind the wires, on regulated air, engine off and key on: the project
 * car's pressure sensor with its filter is teed into the line between valve and actuator. What the
 * person at the bench does is told by {@link #asked}.
 */
public final class BenchSide implements CarSide {
  private static final long SAMPLE_NANOS = Math.round(1e9 * VirtualBench.SAMPLE_SECONDS);
  private static final double VOLTS_NOISE = 1e-3;

  /** Current the coil-feedback wire sees, A. */
  private static final double COIL_SEEN_AMPS = 0.05;

  // 5.6 kohm and 680 nF, docs/project-car.toml.
  private static final double FILTER_SHARE = 1.0 - Math.exp(-0.001 / 0.0038);

  private final VirtualBench bench;
  private final Person person;
  private final Random noise;
  private final BenchInputs sampled = new BenchInputs();
  private final BenchOutputs commanded = new BenchOutputs();
  private double filteredKpaAbs = Double.NaN;

  /** A bench with its air off. */
  public BenchSide(BenchSetup setup, long seed) {
    bench = new VirtualBench(setup, seed);
    person = new Person(bench);
    noise = new Random(seed);
  }

  /** Does what a session asks of a person, and says what that person would answer. */
  public double asked(Question question) {
    return person.answer(question);
  }

  @Override
  public boolean advance(long nanos) {
    for (long left = nanos; left > 0L; left -= SAMPLE_NANOS) {
      bench.sample(sampled);
      double share = Double.isNaN(filteredKpaAbs) ? 1.0 : FILTER_SHARE;
      double before = Double.isNaN(filteredKpaAbs) ? 0.0 : filteredKpaAbs;
      filteredKpaAbs = before + share * (sampled.lineKpaAbs - before);
    }
    return true;
  }

  @Override
  public void read(long nowNanos, Inputs inputs) {
    sample(inputs, AnalogChannel.MAP, ProjectCar.mapVolts(filteredKpaAbs), nowNanos);
    sample(inputs, AnalogChannel.THROTTLE, ProjectCar.throttleVolts(0.0), nowNanos);
    sample(inputs, AnalogChannel.INTAKE_AIR, ProjectCar.temperatureVolts(20.0), nowNanos);
    sample(inputs, AnalogChannel.SUPPLY, ProjectCar.supplyVolts(12.5), nowNanos);
    inputs.keyOn = true;
    inputs.permit = true;
    inputs.coilFeed = true;
    inputs.coilEnergised = bench.valve().coilAmps() > COIL_SEEN_AMPS;
  }

  private void sample(Inputs inputs, AnalogChannel channel, double volts, long nowNanos) {
    inputs.sample(channel, volts + VOLTS_NOISE * noise.nextGaussian(), nowNanos);
  }

  @Override
  public void coil(double dutyFraction, double pwmHz, boolean pwmEnabled, boolean supplyClosed) {
    commanded.dutyFraction = dutyFraction;
    commanded.pwmEnabled = pwmEnabled;
    commanded.coilSupplyClosed = supplyClosed;
    if (pwmHz > 0.0) {
      commanded.frequencyHz = pwmHz;
    }
    bench.command(commanded);
  }

  @Override
  public void engineCut(boolean requested) {
    // No engine runs on the bench.
  }
}
