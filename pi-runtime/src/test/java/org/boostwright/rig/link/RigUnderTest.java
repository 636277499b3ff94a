package org.boostwright.rig.link;

import java.util.concurrent.ConcurrentLinkedQueue;
import java.util.function.Consumer;
import org.boostwright.core.settings.Settings;
import org.boostwright.core.settings.file.SettingsDigest;
import org.boostwright.pi.io.RealTime;
import org.boostwright.rig.plant.Atmosphere;
import org.boostwright.rig.plant.PlantParams;
import org.boostwright.rig.plant.VirtualCar;

/** The rig at a serial port in real time on a thread of its own, told what to do by a test. */
@SuppressWarnings("NonAtomicVolatileUpdate") // a test may miss a tick
public final class RigUnderTest implements AutoCloseable {
  private static final double CRANK_RPM = 200.0;
  private static final double RPM_PER_SECOND = 800.0;

  private final VirtualCar car;
  private final ConcurrentLinkedQueue<Runnable> wishes = new ConcurrentLinkedQueue<>();
  private final SerialWires wires;
  private final WireObserver observer = new WireObserver();
  private final RigLoop loop;
  private final Thread thread;
  private double rampEndRpm = Double.NaN;
  private volatile boolean stopping;
  private volatile boolean driven;
  private volatile double mapKpaAbs;
  private volatile double dutyFraction;
  private volatile double heldUpMillis;

  /** Opens the port and starts ticking with the key on and the engine standing. */
  public RigUnderTest(String port, int baud, Settings settings) {
    long digest = Long.parseUnsignedLong(SettingsDigest.of(settings).substring(0, 16), 16);
    wires = SerialWires.open(port, baud, digest, 1L);
    car =
        new VirtualCar(
            PlantParams.PROJECT_CAR.withPwmHz(settings.valve().frequencyHz()),
            Atmosphere.at(0.0, 20.0),
            1L);
    car.sensors().keyOn = true;
    warmUp();
    RealTime.liftMachine();
    loop = new RigLoop(wires, new VirtualCarSide(car), observer, RigClock.SYSTEM);
    thread =
        new Thread(
            () -> {
              RealTime.liftThread();
              while (!stopping) {
                for (Runnable wish = wishes.poll(); wish != null; wish = wishes.poll()) {
                  wish.run();
                }
                endRamp();
                loop.tick();
                mapKpaAbs = car.mapKpaAbs();
                dutyFraction = observer.last().dutyFraction;
                driven |= dutyFraction > 0.0;
                noteLateness();
              }
            },
            "rig");
    thread.start();
  }

  /** Cold code is ten times slower; a car that is late would be the rig's fault. */
  private void warmUp() {
    VirtualCar other = new VirtualCar(car.params(), Atmosphere.at(0.0, 20.0), 2L);
    other.holdRpm(3000.0);
    other.setThrottlePct(60.0);
    for (int i = 0; i < 1_000; i++) {
      other.coil(0.3, true, true);
      other.advance(5_000_000L);
    }
  }

  /** Done on the rig's own thread before its next tick. */
  public void wish(Consumer<VirtualCar> wish) {
    wishes.add(() -> wish.accept(car));
  }

  /** Engine speed to there at a pace a signal can have; held from then on. */
  public void rampTo(double rpm) {
    wishes.add(
        () -> {
          double from = Math.max(CRANK_RPM, car.engineRpm());
          rampEndRpm = rpm;
          car.holdRpm(from, Math.signum(rpm - from) * RPM_PER_SECOND);
        });
  }

  private void endRamp() {
    if (Math.abs(car.engineRpm() - rampEndRpm) <= RPM_PER_SECOND * 0.005) {
      car.holdRpm(rampEndRpm);
      rampEndRpm = Double.NaN;
    }
  }

  private void noteLateness() {
    long cable = Math.max(observer.longestHeldNanos(), observer.longestOutNanos());
    heldUpMillis = Math.max(heldUpMillis, 1e-6 * Math.max(cable, loop.latestNanos()));
  }

  /** Forgets how late rig and cable were so far. */
  public void forgetLateness() {
    wishes.add(
        () -> {
          loop.arm();
          heldUpMillis = 0.0;
        });
  }

  /** Longest time since {@link #forgetLateness} for which cable or rig stood still, ms. */
  public double heldUpMillis() {
    return heldUpMillis;
  }

  /** Whether the coil was ever driven since this was asked last. */
  public boolean driven() {
    boolean was = driven;
    driven = false;
    return was;
  }

  /** True manifold pressure now, kPa absolute. */
  public double mapKpaAbs() {
    return mapKpaAbs;
  }

  /** Duty as it arrived at the wire. */
  public double dutyFraction() {
    return dutyFraction;
  }

  @Override
  public void close() {
    stopping = true;
    try {
      thread.join(5_000L);
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
    }
    wires.close();
  }
}
