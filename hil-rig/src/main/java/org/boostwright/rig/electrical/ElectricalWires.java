package org.boostwright.rig.electrical;

import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import org.boostwright.core.AnalogChannel;
import org.boostwright.core.Inputs;
import org.boostwright.core.link.OutputsFrame;
import org.boostwright.core.link.RigEnd;
import org.boostwright.core.state.SafetyState;
import org.boostwright.rig.link.ControllerWires;

/**
 * Real wires to a controller on another Pi: the pressure sensor's voltage goes out, PWM and
 * heartbeat come back as edges. What the controller believes does not travel; a frame of what the
 * wires show is passed on at every poll.
 */
public final class ElectricalWires implements ControllerWires {
  private static final int MAP = AnalogChannel.MAP.ordinal();

  /**
   * Where the wires are.
   *
   * @param dac folder of the voltage output, such as {@code /sys/bus/iio/devices/iio:device0}
   * @param chip GPIO chip, such as {@code gpiochip0}
   * @param pwmLine line of the PWM wire
   * @param heartbeatLine line of the heartbeat wire
   */
  public record Places(Path dac, String chip, int pwmLine, int heartbeatLine) {}

  private final Places places;
  private final SensorVoltage voltage;
  private final EdgeLog edges;
  private final PwmCapture pwm = new PwmCapture();
  private final OutputsFrame frame = new OutputsFrame();
  private String trouble = "";
  private double lowestHz = Double.NaN;
  private double highestHz = Double.NaN;

  ElectricalWires(Places places, SensorVoltage voltage, EdgeLog edges) {
    this.places = places;
    this.voltage = voltage;
    this.edges = edges;
  }

  /** Opens the wires, the sensor's voltage at 0. */
  public static ElectricalWires open(Places places) throws IOException {
    SensorVoltage voltage = new SensorVoltage(places.dac());
    List<Integer> lines = List.of(places.pwmLine(), places.heartbeatLine());
    return new ElectricalWires(places, voltage, new EdgeLog(places.chip(), lines));
  }

  @Override
  public void put(long nowNanos, Inputs inputs) {
    try {
      voltage.set(inputs.answered[MAP] ? inputs.volts[MAP] : 0.0);
    } catch (IOException e) {
      trouble = "the sensor's voltage: " + e.getMessage();
    }
  }

  @Override
  public void poll(long nowNanos, RigEnd.Listener listener) {
    for (EdgeLog.Edge edge = edges.poll(); edge != null; edge = edges.poll()) {
      if (edge.line() == places.pwmLine()) {
        pwm.edge(edge.rising(), edge.nanos());
      } else if (edge.line() == places.heartbeatLine()) {
        frame.heartbeatLevel = edge.rising();
        show(edge.nanos(), nowNanos, listener);
      }
    }
    show(nowNanos, nowNanos, listener);
  }

  private void show(long tickNanos, long nowNanos, RigEnd.Listener listener) {
    double duty = pwm.dutyFraction(nowNanos);
    double hz = pwm.hertz(nowNanos);
    if (hz > 0.0) {
      lowestHz = Double.isNaN(lowestHz) ? hz : Math.min(lowestHz, hz);
      highestHz = Double.isNaN(highestHz) ? hz : Math.max(highestHz, hz);
    }
    frame.stampMicros = (int) (tickNanos / 1000L);
    frame.pwmHz = hz;
    frame.outputs.dutyFraction = duty;
    frame.outputs.pwmEnabled = duty > 0.0;
    // The supply's wire is not watched: with the heartbeat it is as the gate says.
    frame.outputs.coilSupplyClosed = duty > 0.0;
    frame.outputs.state = duty > 0.0 ? SafetyState.BENCH : SafetyState.RESTING;
    listener.outputs(frame, nowNanos, tickNanos, Long.MAX_VALUE);
  }

  @Override
  public int nextSequence() {
    return 0;
  }

  @Override
  public String health() {
    String edgeTrouble = edges.trouble();
    String words =
        String.format(
            Locale.ROOT,
            "PWM %s, %d periods; sensor up to %.2f V",
            Double.isNaN(lowestHz)
                ? "never seen"
                : String.format(Locale.ROOT, "%.2f to %.2f Hz", lowestHz, highestHz),
            pwm.periods(),
            voltage.topVolts());
    return words
        + (edgeTrouble.isEmpty() ? "" : "; gpiomon: " + edgeTrouble)
        + (trouble.isEmpty() ? "" : "; " + trouble);
  }

  @Override
  public void close() {
    edges.close();
    try {
      voltage.set(0.0);
    } catch (IOException e) {
      trouble = "the sensor's voltage: " + e.getMessage();
    }
  }
}
