package org.boostwright.pi.io;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Path;
import org.boostwright.core.settings.Settings;
import org.boostwright.core.settings.file.SettingsFile;

/** A Pi of device models with the example's settings, and a hand-made car on its pins. */
public final class PiBench {
  /** GPIO numbers of the example. */
  public static final int HEARTBEAT = 17;

  public static final int COIL_SUPPLY = 16;
  public static final int LAMP = 27;
  public static final int PERMIT = 13;
  public static final int KEY = 22;
  public static final int SELECTOR = 23;
  public static final int SPRING_ONLY = 24;
  public static final int COIL_FEEDBACK = 25;

  private static final long TICK = 5_000_000L;

  public final SteppedClock clock = new SteppedClock(1_000_000_000L);
  public final ModelHardware hardware = new ModelHardware(clock);
  public final SysfsFolder sysfs;
  public final Settings settings;
  public final PiIo io;

  /** What the car does. */
  public double mapKpaAbs = 100.0;

  public double throttlePct;
  public double engineRpm;
  public double roadKmh;
  public boolean converterHangs;
  public boolean coilAlwaysOn;

  private double shownRpm;
  private double revolutions;
  private double roadPulses;
  private long tick;

  /** Everything opened; the key is on. */
  public PiBench(Path folder) {
    this(folder, example());
  }

  /** With other settings than the example's. */
  public PiBench(Path folder, Settings settings) {
    try {
      sysfs = new SysfsFolder(folder);
      this.settings = settings;
      hardware.levels[PERMIT] = true;
      hardware.levels[KEY] = true;
      hardware.levels[SELECTOR] = true;
      hardware.levels[SPRING_ONLY] = true;
      hardware.volts(2, 2.666); // 20 degC
      hardware.volts(3, 2.8); // 14 V through the divider
      io = PiIo.open(settings, hardware, sysfs.places(), clock);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /** The shipped example. */
  public static Settings example() {
    Path root = Path.of(System.getProperty("boostwright.root", ".."));
    return SettingsFile.load(root.resolve("docs/project-car.toml")).orThrow();
  }

  /** What happens between two ticks: conversions and pulses; the clock ends at the next tick. */
  public long between() {
    long next = (Math.floorDiv(clock.nanoTime(), TICK) + 1L) * TICK;
    tick++;
    hardware.volts(0, 0.5 + 4.0 * (mapKpaAbs - 20.0) / 280.0 + 0.002 * (tick % 5 - 2));
    hardware.volts(1, 0.5 + 0.04 * throttlePct + 0.001 * (tick % 3 - 1));
    double period = Double.parseDouble(sysfs.value("period"));
    double phase = clock.nanoTime() % period;
    hardware.levels[COIL_FEEDBACK] =
        coilAlwaysOn
            || hardware.levels[COIL_SUPPLY]
                && phase < Double.parseDouble(sysfs.value("duty_cycle"));
    pulses(next);
    clock.sleepUntil(next - 3_600_000L);
    if (!converterHangs) {
      io.scan().pass();
    }
    clock.sleepUntil(next);
    return next;
  }

  private void pulses(long until) {
    double perSecondOfRoad = roadKmh / 3600.0 * settings.car().roadPulsesPerKm();
    double roadBefore = roadPulses;
    roadPulses += perSecondOfRoad * 0.005;
    for (double edge = Math.floor(roadBefore) + 1.0; edge <= roadPulses; edge += 1.0) {
      io.road().edge(until - (long) (1e9 * (roadPulses - edge) / perSecondOfRoad));
    }
    if (engineRpm <= 0.0) {
      shownRpm = 0.0;
      return;
    }
    shownRpm = shownRpm == 0.0 ? engineRpm : Math.min(engineRpm, shownRpm + 15_000.0 * 0.005);
    double perSecond = shownRpm / 60.0 * 2.0;
    double before = revolutions;
    revolutions += perSecond * 0.005;
    for (double edge = Math.floor(before) + 1.0; edge <= revolutions; edge += 1.0) {
      io.engine().edge(until - (long) (1e9 * (revolutions - edge) / perSecond));
    }
  }
}
