package org.boostwright.rig.link;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.function.Consumer;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.HdrHistogram.Histogram;
import org.boostwright.core.AnalogChannel;
import org.boostwright.core.link.Peer;
import org.boostwright.core.settings.AnalogSensor;
import org.boostwright.rig.plant.Atmosphere;
import org.boostwright.rig.plant.PlantParams;
import org.boostwright.rig.plant.VirtualCar;
import org.jspecify.annotations.Nullable;

/** One rig run: connect, drive or replay, inject, measure. Ends with everything closed. */
public final class RigSession {
  private static final double CONNECT_SECONDS = 20.0;
  private static final double WARM_SECONDS = 4.0;
  private static final Pattern MISSED =
      Pattern.compile("\"id\": \"link\\.missed\", \"value\": (\\d+)");

  private final RigPlan plan;
  private final Consumer<String> progress;
  private @Nullable RuntimeProcess program;
  private double startSeconds = Double.NaN;
  private long lateBefore;

  private RigSession(RigPlan plan, Consumer<String> progress) {
    this.plan = plan;
    this.progress = progress;
  }

  /**
   * Runs it, in real time.
   *
   * @param progress told what is going on, in words
   */
  public static RigReport run(RigPlan plan, Consumer<String> progress) throws Exception {
    return new RigSession(plan, progress).run();
  }

  private RigReport run() throws Exception {
    warmUp();
    RealTimeThread.liftMachine();
    boolean realTime = RealTimeThread.lift();
    Files.createDirectories(plan.folder());
    if (plan.port().isPresent()) {
      return withPort(plan.port().get(), realTime);
    }
    try (PtyPair cable = new PtyPair(plan.folder())) {
      progress.accept("starting the controller's program");
      program = new RuntimeProcess(commandLine(cable.controllerEnd()), programLog());
      try {
        return withPort(cable.rigEnd().toString(), realTime);
      } finally {
        program.close();
      }
    }
  }

  private Path programLog() {
    return plan.folder().resolve("drive.txt");
  }

  private List<String> commandLine(Path controllerEnd) {
    List<String> words = new ArrayList<>(plan.program());
    words.addAll(
        List.of(
            "drive",
            "--io",
            "link:" + controllerEnd,
            "--settings",
            plan.settingsFile().toAbsolutePath().toString(),
            "--data",
            plan.folder().resolve("data").toAbsolutePath().toString(),
            "--json"));
    return words;
  }

  /** Cold code is ten times slower; a car that is late would be the rig's fault. */
  private void warmUp() {
    VirtualCar car = newCar();
    car.holdRpm(3000.0);
    car.setThrottlePct(60.0);
    for (int i = 0; i < WARM_SECONDS / 0.005; i++) {
      car.coil(0.3, true, true);
      car.advance(5_000_000L);
    }
  }

  private VirtualCar newCar() {
    return new VirtualCar(
        PlantParams.PROJECT_CAR.withPwmHz(plan.settings().valve().frequencyHz()), Atmosphere.at(0.0, 20.0), plan.seed());
  }

  private RigReport withPort(String port, boolean realTime) throws Exception {
    long digest = Long.parseUnsignedLong(plan.settingsDigest().substring(0, 16), 16);
    try (SerialWires wires = SerialWires.open(port, plan.baud(), digest, plan.seed())) {
      VirtualCar car = newCar();
      CarSide side =
          plan.trace().isEmpty() ? new VirtualCarSide(car) : new RecordSide(plan.trace());
      WireObserver observer = new WireObserver();
      RigLoop loop = new RigLoop(wires, side, observer, RigClock.SYSTEM);
      progress.accept("waiting for the controller on " + port);
      boolean connected = loop.runUntil(() -> observer.frames() > 0L, CONNECT_SECONDS);
      if (program != null && connected) {
        startSeconds = (observer.lastArrivedNanos() - program.startedNanos()) * 1e-9;
      }
      if (!connected || wires.end().peer().state() != Peer.State.AGREED) {
        return report(wires, loop, null, realTime, false, new Drove(0L, 0L, 0L, 0L, 0.0, 0.0, 0.0));
      }
      return plan.trace().isEmpty()
          ? withCar(wires, loop, car, realTime)
          : withTrace(wires, loop, realTime);
    }
  }

  /** What stood when the first fault was about to be injected. */
  private record Drove(
      long missed,
      long lateTicks,
      long faults,
      long frames,
      double highestDuty,
      double tickMaxMillis,
      double rigLateMaxMillis) {}

  private Drove drove(SerialWires wires, RigLoop loop) {
    WireObserver observer = loop.observer();
    return new Drove(
        wires.end().peer().sequence().missed(),
        observer.last().lateTicks - lateBefore,
        observer.faultsSeen(),
        observer.frames(),
        observer.highestDuty(),
        observer.tickMicros().getMaxValue() * 1e-3,
        loop.latenessMicros().getMaxValue() * 1e-3);
  }

  private RigReport withCar(SerialWires wires, RigLoop loop, VirtualCar car, boolean realTime)
      throws Exception {
    RoadDriver driver = new RoadDriver(loop, car);
    progress.accept("key on, starting the engine");
    driver.startEngine();
    loop.arm();
    loop.observer().clearTiming();
    loop.latenessMicros().reset();
    lateBefore = loop.observer().last().lateTicks;
    if (plan.driveSeconds() > 0.0) {
      progress.accept("driving");
      driver.drive(plan.driveSeconds(), () -> true);
    }
    Drove drove = drove(wires, loop);
    FaultBench bench = new FaultBench(loop, car, driver, wires, program);
    AnalogSensor map = plan.settings().sensors().channel(AnalogChannel.MAP);
    FaultRunner runner = new FaultRunner(bench, map == null ? Double.NaN : map.refreshMillis());
    List<FaultCase> cases =
        FaultCases.all(plan.settings(), program != null).stream()
            .filter(fault -> plan.cases().contains(fault.id()))
            .toList();
    runner.run(
        cases,
        outcome ->
            progress.accept(
                outcome.id() + ": " + outcome.verdict().name().toLowerCase(Locale.ROOT)));
    return report(wires, loop, runner, realTime, true, drove);
  }

  private RigReport withTrace(SerialWires wires, RigLoop loop, boolean realTime)
      throws IOException {
    progress.accept("replaying the trace");
    loop.arm();
    while (loop.more()) {
      loop.tick();
    }
    return report(wires, loop, null, realTime, true, drove(wires, loop));
  }

  private RigReport report(
      SerialWires wires,
      RigLoop loop,
      @Nullable FaultRunner runner,
      boolean realTime,
      boolean connected,
      Drove drove)
      throws IOException {
    WireObserver observer = loop.observer();
    Histogram roundTrip = observer.roundTripMicros();
    Histogram ticks = observer.tickMicros();
    Peer peer = wires.end().peer();
    long digest = Long.parseUnsignedLong(plan.settingsDigest().substring(0, 16), 16);
    RigReport report =
        new RigReport(
            connected,
            wires.health(),
            peer.settingsDigest() == digest,
            realTime,
            observer.frames(),
            observer.broken(),
            drove.missed(),
            Double.NaN,
            roundTrip.getValueAtPercentile(50.0) * 1e-3,
            roundTrip.getValueAtPercentile(99.0) * 1e-3,
            ticks.getValueAtPercentile(99.9) * 1e-3,
            drove.tickMaxMillis(),
            drove.rigLateMaxMillis(),
            drove.lateTicks(),
            drove.faults(),
            drove.highestDuty(),
            startSeconds,
            runner == null ? Double.NaN : runner.restartSeconds(),
            runner == null || runner.restartAtRest(),
            observer.rolledOver(),
            runner == null ? List.of() : runner.outcomes());
    return plan.cases().isEmpty() && program != null ? report.missedAtController(missed()) : report;
  }

  /** What the program says at its orderly end. */
  private double missed() throws IOException {
    if (program == null) {
      return Double.NaN;
    }
    program.close();
    Matcher matcher = MISSED.matcher(Files.readString(programLog(), StandardCharsets.UTF_8));
    return matcher.find() ? Double.parseDouble(matcher.group(1)) : Double.NaN;
  }
}
