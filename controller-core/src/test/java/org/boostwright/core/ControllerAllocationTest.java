package org.boostwright.core;

import static org.assertj.core.api.Assertions.assertThat;

import java.lang.management.ManagementFactory;
import org.boostwright.core.record.LogFormat;
import org.junit.jupiter.api.Test;

/** A warmed tick allocates nothing, as the thread's own allocation counter sees it. */
class ControllerAllocationTest {
  @Test
  void aMillionWarmedTicksAllocateNothing() {
    // With a barometer no finding comes up during the run.
    TestCar car = new TestCar().fit(AnalogChannel.BAROMETER, 50.0, 110.0, 5.0);
    ControllerBench bench = new ControllerBench(car.build());
    bench.otherVolts[AnalogChannel.BAROMETER.ordinal()] = 0.5 + 4.0 * 50.0 / 60.0;
    bench.driveTo(175.0);
    var threads = (com.sun.management.ThreadMXBean) ManagementFactory.getThreadMXBean();
    double[] row = new double[LogFormat.COLUMN_COUNT];
    // Warm is when two million ticks allocated nothing: until then the virtual machine asks for
    // classes while it queues methods for its compiler, and that is counted to this thread.
    long warm = 0L;
    int quiet = 0;
    for (int i = 0; i < 200_000 && quiet < 20_000; i++) {
      long bytes = ticks(bench, row, threads, 100);
      quiet = bytes == 0L ? quiet + 1 : 0;
      warm += bytes;
    }
    long counted = 0L;
    for (int i = 0; i < 10_000; i++) {
      counted += ticks(bench, row, threads, 100);
    }
    assertThat(bench.outputs.dutyFraction).isPositive();
    assertThat(counted).as("bytes of a million ticks (warm-up took %d)", warm).isZero();
  }

  private static long ticks(
      ControllerBench bench, double[] row, com.sun.management.ThreadMXBean threads, int count) {
    Inputs in = bench.inputs;
    Outputs out = bench.outputs;
    int map = AnalogChannel.MAP.ordinal();
    int throttle = AnalogChannel.THROTTLE.ordinal();
    int barometer = AnalogChannel.BAROMETER.ordinal();
    long before = threads.getCurrentThreadAllocatedBytes();
    for (int i = 0; i < count; i++) {
      bench.nowNanos += Controller.TICK_NANOS;
      in.volts[map] += (i & 1) == 0 ? 0.004 : -0.004;
      in.sampleNanos[map] = bench.nowNanos;
      in.sampleNanos[throttle] = bench.nowNanos;
      in.sampleNanos[barometer] = bench.nowNanos;
      in.enginePulseNanos = bench.nowNanos;
      bench.controller.step(bench.nowNanos, in, out);
      LogFormat.fill(row, bench.nowNanos, in, out);
    }
    return threads.getCurrentThreadAllocatedBytes() - before;
  }
}
