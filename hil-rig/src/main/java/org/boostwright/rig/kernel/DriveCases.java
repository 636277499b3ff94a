package org.boostwright.rig.kernel;

import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.function.Consumer;
import org.boostwright.rig.link.CaseOutcome;
import org.boostwright.rig.plant.VirtualCar;
import org.jspecify.annotations.Nullable;

/** Driving the virtual car with the real program: from boot over boost and faults to the reset. */
final class DriveCases extends BenchCases {
  /**
   * Which part of the recording belongs to a case.
   *
   * @param id the case
   * @param start which start of the program recorded it, from 0
   * @param fromNanos guest time, ns
   * @param toNanos guest time, ns
   * @param fault what was injected; null where nothing was
   */
  record Stretch(String id, int start, long fromNanos, long toNanos, @Nullable KernelFault fault) {}

  private static final double IDLE_RPM_SECONDS = 1.0;
  private static final double CRANK_RPM = 200.0;
  private static final double CRANK_RPM_PER_SECOND = 800.0;
  private static final double RAMP_RPM_PER_SECOND = 4000.0;
  private static final double HELD_RPM = 4000.0;
  private static final double BOOSTED_KPA = 150.0;
  private static final double KEY_ON_SECONDS = 3.5;
  private static final double BOOST_SECONDS = 8.0;
  private static final double LONGEST_WAIT_SECONDS = 4.0;
  private static final double KEY_SECONDS = 0.3;
  private static final double GATE_MILLIS = 100.0;

  /** Exit code of a program that was killed: 128 + 9. */
  private static final int KILLED = 137;

  private static final int WATCHDOG_SECONDS = 6;
  private static final String DRIVE = "drive --settings car.toml --data recorded";

  private final KernelRig rig;
  private final VirtualCar car;
  private final GuestProgram program;
  private double highestMapKpaAbs;
  private int starts;
  private final List<Stretch> stretches = new ArrayList<>();

  DriveCases(KernelRig rig, VirtualCar car, Consumer<CaseOutcome> each) {
    super(each);
    this.rig = rig;
    this.car = car;
    rig.eachStep(() -> highestMapKpaAbs = Math.max(highestMapKpaAbs, car.mapKpaAbs()));
    program = new GuestProgram(rig);
  }

  @Override
  double takePeak() {
    double highest = highestMapKpaAbs;
    highestMapKpaAbs = 0.0;
    return highest;
  }

  /** How often the program was started to drive. */
  int starts() {
    return starts;
  }

  List<Stretch> stretches() {
    return List.copyOf(stretches);
  }

  /** Everything, in the order of a story. */
  void all() throws IOException {
    run(
        "boot_to_rest",
        "started after boot: everything off, and it stays off",
        Double.NaN,
        this::boot);
    run("ready", "ready after the engine has started", Double.NaN, this::startEngine);
    run("pull", "full-throttle pull in third gear, loop closed", Double.NaN, this::pull);
    for (KernelFault fault : KernelFault.all(rig, car.faults())) {
      run(fault);
    }
    KernelFault stuck = KernelFault.driverStuckOn(car.faults());
    run(
        stuck.id(),
        stuck.text() + "; locked until the key has been off",
        stuck.withinMillis(),
        notes -> {
          inject(stuck, notes);
          stuck.clear().run();
          car.setThrottlePct(0.0);
          rig.run(KEY_SECONDS);
          notes.must(rig.outputsOff() && rig.lamp(), "the lock did not hold");
          car.sensors().keyOn = false;
          rig.run(KEY_SECONDS);
          car.sensors().keyOn = true;
          notes.must(rig.runUntil(() -> !rig.lamp(), LONGEST_WAIT_SECONDS), "locked for ever");
        });
    run(
        "stopped",
        "kill -STOP at boost: heartbeat stops, supply opens",
        GATE_MILLIS,
        notes -> gateOpens(notes, "STOP"));
    run(
        "watchdog",
        "the kernel's watchdog resets the machine; started with the engine running, at rest first",
        Double.NaN,
        this::watchdog);
    run(
        "killed",
        "kill -9 at boost: heartbeat stops, supply opens; any start then switches the PWM off",
        GATE_MILLIS,
        this::killed);
  }

  private void boot(BenchCases.Notes notes) throws IOException {
    program.loadWatchdog(WATCHDOG_SECONDS);
    startProgram(notes);
    long edges = rig.lines().gate().edges();
    rig.run(0.5);
    notes.must(rig.outputsOff(), "outputs are not off");
    notes.must(rig.lines().gate().edges() == edges, "the heartbeat runs at rest");
    notes.must(rig.lamp(), "the lamp is off");
    notes.must(rig.lines().highFirst() == 0L, "a line began high");
  }

  private void startProgram(BenchCases.Notes notes) throws IOException {
    long before = rig.nowNanos();
    program.start(DRIVE);
    starts++;
    notes.must(program.awaitOutputs(), "it did not take its outputs");
    notes.must(rig.outputsOff(), "outputs were not off when it took them");
    notes.seen.add(
        String.format(
            Locale.ROOT, "outputs in its hands after %.2f s", (rig.nowNanos() - before) * 1e-9));
  }

  private void startEngine(BenchCases.Notes notes) throws IOException {
    car.setThrottlePct(0.0);
    rig.run(KEY_ON_SECONDS);
    notes.must(rig.lamp(), "ready without an engine");
    crank();
    notes.must(rig.runUntil(() -> !rig.lamp(), LONGEST_WAIT_SECONDS), "never ready");
    notes.must(rig.pwm().dutyFraction() == 0.0, "duty is not 0 when ready");
  }

  private void crank() throws IOException {
    double idle = car.params().car().idleRpm();
    car.holdRpm(CRANK_RPM, CRANK_RPM_PER_SECOND);
    rig.run((idle - CRANK_RPM) / CRANK_RPM_PER_SECOND);
    car.holdRpm(idle);
    rig.run(IDLE_RPM_SECONDS);
  }

  private void pull(BenchCases.Notes notes) throws IOException {
    rampTo(2500.0);
    car.setThrottlePct(15.0);
    rig.run(1.0);
    car.driveInGearAtRpm(3, 2500.0);
    long from = rig.nowNanos();
    takePeak();
    car.setThrottlePct(100.0);
    double[] sum = {0.0, 0.0};
    notes.must(
        rig.runUntil(
            () -> {
              if (car.engineRpm() > 4500.0 && car.engineRpm() < 5500.0) {
                sum[0] += car.mapKpaAbs();
                sum[1]++;
              }
              return car.engineRpm() >= 6200.0;
            },
            15.0),
        "the car did not get to 6200 1/min");
    double held = sum[0] / sum[1];
    car.setThrottlePct(0.0);
    rig.run(0.5);
    notes.must(rig.pwm().dutyFraction() == 0.0, "duty is not 0 with the throttle shut");
    notes.must(Math.abs(held - 180.0) <= 8.0, "boost was not held at its target of 180 kPa");
    notes.seen.add(String.format(Locale.ROOT, "%.1f kPa held from 4500 to 5500 1/min", held));
    stretches.add(new Stretch("pull", starts - 1, from, rig.nowNanos(), null));
  }

  private void rampTo(double rpm) throws IOException {
    double from = car.engineRpm();
    double seconds = Math.abs(rpm - from) / RAMP_RPM_PER_SECOND;
    if (seconds > 0.01) {
      car.holdRpm(from, Math.signum(rpm - from) * RAMP_RPM_PER_SECOND);
      rig.run(seconds);
    }
    car.holdRpm(rpm);
  }

  /** Full throttle at a held speed until the controller holds boost. */
  private boolean toBoost() throws IOException {
    rampTo(HELD_RPM);
    car.setThrottlePct(100.0);
    boolean there =
        rig.runUntil(() -> rig.driving() && car.mapKpaAbs() > BOOSTED_KPA, BOOST_SECONDS);
    rig.run(0.2);
    return there && rig.driving();
  }

  private void run(KernelFault fault) throws IOException {
    run(
        fault.id(),
        fault.text(),
        fault.withinMillis(),
        notes -> {
          inject(fault, notes);
          fault.clear().run();
          notes.must(rig.runUntil(rig::driving, LONGEST_WAIT_SECONDS), "control did not come back");
        });
  }

  /** Injects a fault at boost and waits for what must come of it. */
  private void inject(KernelFault fault, BenchCases.Notes notes) throws IOException {
    notes.effect = toBoost();
    if (!notes.effect) {
      notes.wrong.add("no boost before it");
    }
    takePeak();
    long injected = rig.nowNanos();
    fault.inject().run();
    boolean rested = rig.runUntil(rig::outputsOff, fault.rests() ? LONGEST_WAIT_SECONDS : 1.5);
    notes.must(rested == fault.rests(), fault.rests() ? "no rest" : "it rests");
    if (rested) {
      notes.reactionMillis = (rig.pwm().lastNanos() - injected) * 1e-6;
    }
    rig.run(fault.keptSeconds());
    notes.must(fault.expected().isEmpty() || rig.outputsOff(), "rest was not kept");
    stretches.add(new Stretch(fault.id(), starts - 1, injected, rig.nowNanos(), fault));
  }

  /** Watches the gate open after whatever stopped the heartbeat at boost. */
  private void gateOpens(BenchCases.Notes notes, String signal) throws IOException {
    notes.effect = toBoost();
    takePeak();
    // From the line typed on: the shell's few milliseconds, the last tick's edge, the gate's hold.
    long typed = rig.nowNanos();
    program.signal(signal);
    notes.must(
        rig.runUntil(() -> !rig.lines().gate().closed(rig.nowNanos()), 1.0),
        "the heartbeat goes on");
    notes.reactionMillis = (rig.lines().gate().opensNanos() - typed) * 1e-6;
    long edges = rig.lines().gate().edges();
    rig.run(0.5);
    notes.must(rig.lines().gate().edges() == edges, "the heartbeat came back");
    notes.seen.add(
        rig.pwm().running()
            ? "the PWM runs on in the kernel: only the open supply stops the coil"
            : "the PWM is off");
  }

  private void killed(BenchCases.Notes notes) throws IOException {
    gateOpens(notes, "KILL");
    notes.must(program.await() == KILLED, "it did not end by the signal");
    notes.must(!rig.outputsOff(), "nothing was left to switch off");
    program.run(GuestProgram.User.DRIVER, "--version");
    notes.must(rig.pwm().off(), "a start leaves the PWM on");
    notes.must(rig.lines().highFirst() == 0L, "a line began high");
    notes.must(rig.lostEvents() == 0L, "the kernel's log has gaps");
  }

  private void watchdog(BenchCases.Notes notes) throws IOException {
    int boots = rig.boots();
    car.setThrottlePct(12.0);
    notes.must(
        rig.runUntil(() -> rig.boots() > boots, WATCHDOG_SECONDS + 2.0),
        "the machine was not reset");
    program.loadWatchdog(WATCHDOG_SECONDS);
    notes.must(rig.outputsOff(), "outputs are not off after the reset");
    startProgram(notes);
    rig.run(0.5);
    notes.must(rig.pwm().dutyFraction() == 0.0, "duty is not 0 with the throttle nearly shut");
  }
}
