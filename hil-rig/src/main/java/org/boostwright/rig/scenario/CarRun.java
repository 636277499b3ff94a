package org.boostwright.rig.scenario;

import java.util.function.Consumer;
import org.boostwright.core.Controller;
import org.boostwright.core.Inputs;
import org.boostwright.core.Outputs;
import org.boostwright.core.record.LogFormat;
import org.boostwright.core.settings.MapLocation;
import org.boostwright.core.settings.Settings;
import org.boostwright.core.state.Permission;
import org.boostwright.core.state.SafetyState;
import org.boostwright.rig.plant.VirtualCar;

/**
 * The controller in the virtual car, 200 ticks a second of stepped time.
 *
 * <p>One tick: the car moves on for 5 ms under the last commands, its sensors are read, the
 * controller steps, the car takes the new commands, the tick is logged.
 */
public final class CarRun {
  private static final double TICK_SECONDS = Controller.TICK_NANOS * 1e-9;
  private static final double KEY_ON_SECONDS = 3.0;
  private static final double CRANK_RPM = 200.0;
  private static final double CRANK_RPM_PER_SECOND = 800.0;
  private static final double IDLE_SECONDS = 1.5;
  private static final double RAMP_RPM_PER_SECOND = 2500.0;

  private final VirtualCar car;
  private final Settings settings;
  private final Permission permission;
  private final Inputs inputs = new Inputs();
  private final Outputs outputs = new Outputs();
  private final RunLog log;
  private final double[] row = new double[LogFormat.COLUMN_COUNT];
  private Controller controller;
  private Consumer<Inputs> disturbance = unchanged -> {};
  private boolean logged = true;
  private long nowNanos;

  /** A controller with every proof given in a car that stands with its key on. */
  public CarRun(Settings settings, VirtualCar car) {
    this(settings, Permission.FULL, car);
  }

  /** A controller with the given permission. */
  public CarRun(Settings settings, Permission permission, VirtualCar car) {
    this.car = car;
    this.settings = settings;
    this.permission = permission;
    car.setMapBeforeThrottle(settings.sensors().mapLocation() == MapLocation.BEFORE_THROTTLE);
    controller = new Controller(settings, permission);
    log = new RunLog(permission);
  }

  /** One tick. */
  public void tick() {
    tick(0L);
  }

  /** One tick that comes this much later than it should, ns. */
  public void tick(long lateNanos) {
    pass(Controller.TICK_NANOS + lateNanos);
    car.read(inputs, nowNanos);
    disturbance.accept(inputs);
    controller.step(nowNanos, inputs, outputs);
    car.apply(outputs);
    if (logged) {
      LogFormat.fill(row, nowNanos, inputs, outputs);
      log.add(row, car);
    }
  }

  /** Time passes without the controller, ns: the car goes on under its last commands. */
  public void pass(long nanos) {
    car.advance(nanos);
    nowNanos += nanos;
  }

  /**
   * A new controller in the same car, as after a power cut: at rest, with the ambient pressure that
   * the one before had stored.
   */
  public void restartController() {
    double ambientKpaAbs = controller.monitor().ambientKpaAbs();
    controller = new Controller(settings, permission);
    controller.monitor().recallAmbient(ambientKpaAbs);
    inputs.clear();
    outputs.rest();
    outputs.heartbeatPermitted = false;
    outputs.state = SafetyState.RESTING;
    outputs.activeFaults = 0L;
    outputs.findings = 0L;
  }

  /** The clock's reading at the start, ns; before the first tick only. */
  public void startClockAt(long nanos) {
    nowNanos = nanos;
  }

  /** Whether rows are kept from now on; not for runs by the thousand. */
  public void keepLog(boolean keep) {
    logged = keep;
  }

  /** Changes what the converter delivers, after the sensors and before the controller. */
  public void disturb(Consumer<Inputs> change) {
    disturbance = change;
  }

  /** Ticks for a time, s. */
  public void run(double seconds) {
    long ticks = Math.round(seconds / TICK_SECONDS);
    for (long i = 0; i < ticks; i++) {
      tick();
    }
  }

  /**
   * Key on with the engine stopped until ambient is known, cranking, then idle until the sensor has
   * shown life.
   */
  public void startEngine() {
    car.setThrottlePct(0.0);
    run(KEY_ON_SECONDS);
    double idleRpm = car.params().car().idleRpm();
    car.holdRpm(CRANK_RPM, CRANK_RPM_PER_SECOND);
    run((idleRpm - CRANK_RPM) / CRANK_RPM_PER_SECOND);
    car.holdRpm(idleRpm);
    run(IDLE_SECONDS);
  }

  /**
   * From wherever the engine turns to a speed and throttle, then settled there for a time: the
   * engine is held as on a dynamometer.
   */
  public void settleHeld(double rpm, double throttlePct, double seconds) {
    double from = car.engineRpm();
    car.setThrottlePct(throttlePct);
    double rampSeconds = Math.abs(rpm - from) / RAMP_RPM_PER_SECOND;
    if (rampSeconds > TICK_SECONDS) {
      car.holdRpm(from, Math.signum(rpm - from) * RAMP_RPM_PER_SECOND);
      run(rampSeconds);
    }
    car.holdRpm(rpm);
    run(seconds);
  }

  /** The car; driver's wishes and faults are set on it. */
  public VirtualCar car() {
    return car;
  }

  /** The controller. */
  public Controller controller() {
    return controller;
  }

  /** Outputs of the last tick. */
  public Outputs outputs() {
    return outputs;
  }

  /** Inputs of the last tick. */
  public Inputs inputs() {
    return inputs;
  }

  /** Rows so far. */
  public RunLog log() {
    return log;
  }

  /** Time of the last tick, ns. */
  public long nowNanos() {
    return nowNanos;
  }
}
