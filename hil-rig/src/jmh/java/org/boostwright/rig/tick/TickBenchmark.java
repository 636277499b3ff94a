package org.boostwright.rig.tick;

import java.util.concurrent.TimeUnit;
import org.boostwright.core.AnalogChannel;
import org.boostwright.core.Controller;
import org.boostwright.core.Inputs;
import org.boostwright.core.Outputs;
import org.boostwright.rig.plant.Atmosphere;
import org.boostwright.rig.plant.PlantParams;
import org.boostwright.rig.plant.VirtualCar;
import org.boostwright.rig.scenario.CarRun;
import org.boostwright.rig.scenario.ProjectCarSettings;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Fork;
import org.openjdk.jmh.annotations.Measurement;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.Setup;
import org.openjdk.jmh.annotations.State;
import org.openjdk.jmh.annotations.Warmup;

/** One control tick in the controlling state, feedback active, on the project car's settings. */
@State(Scope.Thread)
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.NANOSECONDS)
@Warmup(iterations = 3, time = 1)
@Measurement(iterations = 5, time = 1)
@Fork(1)
public class TickBenchmark {
  private final Outputs outputs = new Outputs();
  private Inputs inputs = new Inputs();
  private Controller controller;
  private long nowNanos;
  private double wobbleVolts = 0.004;

  /** Drives the virtual car to its target, so that the tick has all its work to do. */
  @Setup
  public void driveToTarget() {
    VirtualCar car = new VirtualCar(PlantParams.PROJECT_CAR, Atmosphere.at(0.0, 20.0), 1L);
    CarRun run = new CarRun(ProjectCarSettings.load(), car);
    run.startEngine();
    run.settleHeld(4500.0, 15.0, 0.5);
    car.setThrottlePct(100.0);
    run.run(3.0);
    controller = run.controller();
    inputs = run.inputs();
    nowNanos = run.nowNanos();
  }

  /** One tick with fresh samples on every channel. */
  @Benchmark
  public double tick() {
    nowNanos += Controller.TICK_NANOS;
    wobbleVolts = -wobbleVolts;
    inputs.volts[AnalogChannel.MAP.ordinal()] += wobbleVolts;
    for (int i = 0; i < AnalogChannel.COUNT; i++) {
      inputs.sampleNanos[i] = nowNanos;
    }
    inputs.enginePulseNanos = nowNanos;
    controller.step(nowNanos, inputs, outputs);
    return outputs.dutyFraction;
  }
}
