package org.boostwright.core.bench;

import org.boostwright.core.AnalogChannel;
import org.boostwright.core.Inputs;
import org.boostwright.core.Outputs;
import org.boostwright.core.settings.AnalogSensor;
import org.boostwright.core.settings.Settings;
import org.boostwright.core.state.SafetyState;

/**
 * A bench session on the controller's ticks: the car's own pressure sensor, teed into the actuator
 * line, is the line sensor; the session asks, the controller decides.
 *
 * <p>Per tick: {@link #before}, {@code Controller.step}, {@link #after}. The PWM is set to {@link
 * #frequencyHz()} while it rests.
 */
public final class TickedBench {
  private static final int MAP = AnalogChannel.MAP.ordinal();

  private final BenchSession session;
  private final AnalogSensor sensor;
  private final BenchInputs in = new BenchInputs();
  private final BenchOutputs out = new BenchOutputs();

  /**
   * @param settings settings of the controller; the pressure sensor's calibration is theirs
   */
  public TickedBench(BenchPlan plan, Settings settings) {
    AnalogSensor map = settings.sensors().channel(AnalogChannel.MAP);
    if (map == null) {
      throw new IllegalArgumentException("the bench needs the pressure sensor of the settings");
    }
    session = new BenchSession(plan);
    sensor = map;
  }

  /** The session, for its progress and its record. */
  public BenchSession session() {
    return session;
  }

  /** What the session is told beside pressure: answers and the wish to stop. */
  public BenchInputs told() {
    return in;
  }

  /** What the session wants, its open question included. */
  public BenchOutputs wanted() {
    return out;
  }

  /** PWM frequency the session wants, Hz; it stays at rest long enough for a change. */
  public double frequencyHz() {
    return out.frequencyHz;
  }

  /** Before the controller's step: writes the request into its inputs. */
  public void before(long nowNanos, Inputs inputs) {
    double volts = inputs.volts[MAP];
    boolean valid =
        inputs.answered[MAP] && volts >= sensor.validLowVolts() && volts <= sensor.validHighVolts();
    in.lineKpaAbs = valid ? sensor.calibration().at(volts) : Double.NaN;
    in.sampleNanos = inputs.sampleNanos[MAP];
    session.step(nowNanos, in, out);
    in.answered = false;
    out.into(inputs);
  }

  /** After the controller's step: notes whether it followed. */
  public void after(Outputs outputs) {
    in.refused = out.coilSupplyClosed && outputs.state != SafetyState.BENCH;
  }
}
