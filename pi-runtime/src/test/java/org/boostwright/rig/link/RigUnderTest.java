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
public final class RigUnderTest implements AutoCloseable {
  private final VirtualCar car;
  private final ConcurrentLinkedQueue<Runnable> wishes = new ConcurrentLinkedQueue<>();
  private final SerialWires wires;
  private final WireObserver observer = new WireObserver();
  private final Thread thread;
  private volatile boolean stopping;
  private volatile double mapKpaAbs;
  private volatile double dutyFraction;

  /** Opens the port and starts ticking with the key on and the engine standing. */
  public RigUnderTest(String port, int baud, Settings settings) {
    long digest =
        Long.parseUnsignedLong(SettingsDigest.of(settings).substring(0, 16), 16);
    wires = SerialWires.open(port, baud, digest, 1L);
    car =
        new VirtualCar(
            PlantParams.PROJECT_CAR.withPwmHz(settings.valve().frequencyHz()),
            Atmosphere.at(0.0, 20.0),
            1L);
    car.sensors().keyOn = true;
    warmUp();
    RealTime.liftMachine();
    RigLoop loop = new RigLoop(wires, new VirtualCarSide(car), observer, RigClock.SYSTEM);
    thread =
        new Thread(
            () -> {
              RealTime.liftThread();
              while (!stopping) {
                for (Runnable wish = wishes.poll(); wish != null; wish = wishes.poll()) {
                  wish.run();
                }
                loop.tick();
                mapKpaAbs = car.mapKpaAbs();
                dutyFraction = observer.last().dutyFraction;
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
