package org.boostwright.rig.plant;

import java.util.concurrent.TimeUnit;
import org.boostwright.core.Inputs;
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

/** What one second of the plant costs; 1000 us are a thousand times real time. */
@State(Scope.Thread)
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.MICROSECONDS)
@Warmup(iterations = 3, time = 2)
@Measurement(iterations = 5, time = 2)
@Fork(1)
public class PlantBenchmark {
  private static final long TICK_NANOS = 5_000_000L;
  private static final int TICKS_PER_SECOND = 200;

  private final Inputs inputs = new Inputs();
  private VirtualCar car;
  private EngineBench engine;
  private BenchValve valve;
  private boolean open;

  /** A car at 4500 1/min and 30 % duty, a bare engine and a bench valve. */
  @Setup
  public void build() {
    car = new VirtualCar(PlantParams.PROJECT_CAR, Atmosphere.REFERENCE, 1);
    car.coil(0.3, true, true);
    car.settleAt(4500.0, 100.0);
    engine = new EngineBench(EngineParams.PROJECT_CAR, Atmosphere.REFERENCE);
    engine.setRpm(4500.0);
    engine.setThrottlePct(100.0);
    engine.setLift(0.2);
    engine.settle();
    valve = new BenchValve();
    valve.setSupplyKpaGauge(82.7);
    valve.setSupplyClosed(true);
    valve.setDuty(0.3);
    valve.setEnabled(true);
  }

  /** The whole car, PWM resolved, sensors read at every tick, throttle stepped once a second. */
  @Benchmark
  public Inputs wholeCarSecond() {
    open = !open;
    car.setThrottlePct(open ? 100.0 : 30.0);
    for (int i = 0; i < TICKS_PER_SECOND; i++) {
      car.advance(TICK_NANOS);
      car.read(inputs, car.clockNanos());
    }
    return inputs;
  }

  /** The engine alone. */
  @Benchmark
  public double engineSecond() {
    engine.advance(1.0);
    return engine.intakeKpaAbs();
  }

  /** The valve on the bench alone. */
  @Benchmark
  public double valveSecond() {
    valve.advance(1.0);
    return valve.chamberKpaGauge();
  }
}
