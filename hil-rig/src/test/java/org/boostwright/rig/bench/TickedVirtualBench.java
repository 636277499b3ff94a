package org.boostwright.rig.bench;

import java.util.Random;
import org.boostwright.core.AnalogChannel;
import org.boostwright.core.Controller;
import org.boostwright.core.Inputs;
import org.boostwright.core.Outputs;
import org.boostwright.core.bench.BenchInputs;
import org.boostwright.core.bench.BenchOutputs;
import org.boostwright.core.bench.BenchPlan;
import org.boostwright.core.bench.BenchSession;
import org.boostwright.core.bench.Question;
import org.boostwright.core.bench.TickedBench;
import org.boostwright.core.state.Permission;
import org.boostwright.rig.plant.ProjectCar;
import org.boostwright.rig.scenario.ProjectCarSettings;

/**
 * The whole controller at the virtual bench, as on the car: 200 ticks a second, the project car's
 * pressure sensor with its filter teed into the actuator line, nothing proven yet, the PWM taking
 * another frequency at rest only, a person who needs a few seconds for each answer.
 */
final class TickedVirtualBench {
  private static final long TICK = Controller.TICK_NANOS;
  private static final int SAMPLES_PER_TICK = 5;
  // 5.6 kohm and 680 nF, docs/project-car.toml.
  private static final double FILTER_SHARE = 1.0 - Math.exp(-0.001 / 0.0038);
  private static final double COIL_SEEN_AMPS = 0.05;

  final VirtualBench bench;
  final TickedBench ticked;
  final Controller controller = new Controller(ProjectCarSettings.load(), Permission.NONE);
  final Inputs inputs = new Inputs();
  final Outputs outputs = new Outputs();

  /** Engine turns, 1/min; 0 is standing still. */
  double engineRpm;

  /** The pressure sensor's plug is in; out, its wire reads 0 V. */
  boolean sensorPlugged = true;

  /** The pressure sensor's volts come as something that is no number. */
  boolean garbled;

  /** How long the person takes for each answer, ticks. */
  int thinkingTicks = 500;

  /** The converter gives new samples. */
  boolean converterAlive = true;

  private final Person person;
  private final Random noise = new Random(77L);
  private final BenchInputs sampled = new BenchInputs();
  private final BenchOutputs commanded = new BenchOutputs();
  private double filteredKpaAbs = Double.NaN;
  private long nowNanos = 1_000_000_000L;
  private int thought;

  TickedVirtualBench(VirtualBench bench, Person person, BenchPlan plan) {
    this.bench = bench;
    this.person = person;
    ticked = new TickedBench(plan, ProjectCarSettings.load());
    inputs.keyOn = true;
    inputs.permit = true;
    inputs.coilFeed = true;
  }

  BenchSession session() {
    return ticked.session();
  }

  /** Time passes at the bench, one tick of it; nothing of the program runs. */
  void passTick() {
    nowNanos += TICK;
    for (int i = 0; i < SAMPLES_PER_TICK; i++) {
      bench.sample(sampled);
      filteredKpaAbs =
          Double.isNaN(filteredKpaAbs)
              ? sampled.lineKpaAbs
              : filteredKpaAbs + FILTER_SHARE * (sampled.lineKpaAbs - filteredKpaAbs);
    }
  }

  /** One tick; false once the session has finished. */
  boolean tick() {
    passTick();
    read();
    ticked.before(nowNanos, inputs);
    controller.step(nowNanos, inputs, outputs);
    ticked.after(outputs);
    apply();
    think();
    return !session().finished();
  }

  private void read() {
    if (converterAlive) {
      double volts = ProjectCar.mapVolts(filteredKpaAbs) + 1e-3 * noise.nextGaussian();
      inputs.sample(
          AnalogChannel.MAP, garbled ? Double.NaN : sensorPlugged ? volts : 0.0, nowNanos);
      sample(AnalogChannel.THROTTLE, ProjectCar.throttleVolts(0.0));
      sample(AnalogChannel.INTAKE_AIR, ProjectCar.temperatureVolts(20.0));
      sample(AnalogChannel.SUPPLY, ProjectCar.supplyVolts(12.5));
    }
    if (engineRpm > 0.0) {
      inputs.engineSeen = true;
      inputs.enginePulseNanos = nowNanos - 1_000_000L;
      inputs.enginePeriodNanos = 60e9 / (engineRpm * ProjectCar.TACH_PULSES_PER_REV);
    }
    inputs.coilEnergised = bench.valve().coilAmps() > COIL_SEEN_AMPS;
  }

  private void sample(AnalogChannel channel, double volts) {
    inputs.sample(channel, volts + 1e-3 * noise.nextGaussian(), nowNanos);
  }

  private void apply() {
    commanded.dutyFraction = outputs.dutyFraction;
    commanded.pwmEnabled = outputs.pwmEnabled;
    commanded.coilSupplyClosed = outputs.coilSupplyClosed;
    if (!outputs.pwmEnabled) {
      commanded.frequencyHz = ticked.frequencyHz();
    }
    bench.command(commanded);
  }

  private void think() {
    Question question = ticked.wanted().question;
    thought = question == null ? 0 : thought + 1;
    if (question != null && thought > thinkingTicks) {
      ticked.told().answer = person.answer(question);
      ticked.told().answered = true;
      thought = 0;
    }
  }

  void run() {
    while (tick()) {
      // Ticking is the work.
    }
  }

  /** Nothing of the controller energises the coil. */
  boolean atRest() {
    return outputs.dutyFraction == 0.0 && !outputs.pwmEnabled && !outputs.coilSupplyClosed;
  }
}
