package org.boostwright.rig.kernel;

import java.io.EOFException;
import java.io.IOException;
import java.nio.file.Path;
import java.util.Objects;
import java.util.function.BooleanSupplier;
import org.boostwright.core.AnalogChannel;
import org.boostwright.core.Inputs;
import org.boostwright.core.settings.ConverterSettings;
import org.boostwright.core.settings.PinSettings;
import org.boostwright.core.settings.Settings;
import org.boostwright.rig.link.CarSide;

/**
 * The virtual car, or the valve on its bench, at the other end of the guest's kernel: what PWM,
 * coil supply and heartbeat do drives the valve, what sensors read goes to converter inputs and
 * lines. One step is one exchange; the car moves on by exactly the time that has passed in the
 * guest.
 */
final class KernelRig implements AutoCloseable {
  /** Guest time between two exchanges: one tick, ns. */
  static final int STEP_NANOS = 5_000_000;

  private static final double STEP_SECONDS = STEP_NANOS * 1e-9;
  private static final double MICRO = 1e6;

  private final Path image;
  private final GuestDisk disk;
  private GuestMachine machine;
  private final CarSide side;
  private final ConverterSettings converter;
  private final PinSettings pins;
  private final PwmDiary pwm;
  private final LineDiary lines;
  private final GuestShell shell;
  private final GuestOrders orders = new GuestOrders();
  private final Inputs inputs = new Inputs();
  private Runnable eachStep = () -> {};
  private long nowNanos;
  private long lostEvents;
  private int boots;

  /** Switches a machine on, with a car at its other end. */
  KernelRig(Path image, GuestDisk disk, Settings settings, CarSide side) throws IOException {
    this.image = image;
    this.disk = disk;
    machine = GuestMachine.on(image, disk.file(), disk.folder(), 1);
    this.side = side;
    converter = Objects.requireNonNull(settings.converter());
    pins = Objects.requireNonNull(settings.pins());
    pwm = new PwmDiary(pins.pwmChannel());
    lines = new LineDiary(pins.heartbeat());
    shell = new GuestShell(orders, this::step);
    orders.pulseLine[GuestOrders.TACH] = pins.tach();
    orders.pulseLine[GuestOrders.ROAD] = pins.road() == PinSettings.NOT_WIRED ? 0 : pins.road();
  }

  /**
   * One exchange.
   *
   * @throws EOFException when the guest has ended
   */
  void step() throws IOException {
    GuestReport report = report();
    long before = nowNanos;
    nowNanos = report.nanos();
    if (boots == 0 || nowNanos < before) {
      boots++;
      pwm.boot();
      lines.boot();
      shell.boot();
      before = nowNanos;
    }
    for (KernelEvent event : report.events()) {
      pwm.take(event);
      lines.take(event);
    }
    lostEvents = report.lostEvents();
    shell.hear(report.text());
    moveCar(nowNanos - before);
    orders.stepNanos = STEP_NANOS;
    machine.order(orders);
  }

  /**
   * A machine that its watchdog has reset is a new one with the old disk: the emulator's own reset
   * hangs where it counts instructions.
   */
  private GuestReport report() throws IOException {
    try {
      return machine.report();
    } catch (EOFException e) {
      machine.close();
      if (!machine.endedByWatchdog()) {
        throw e;
      }
      nowNanos = Long.MAX_VALUE;
      machine = GuestMachine.on(image, disk.file(), disk.folder(), boots + 1);
      return machine.report();
    }
  }

  private void moveCar(long nanos) {
    // Lines keep their level when a program dies; only the missing heartbeat opens the supply.
    boolean supply =
        lines.gate().closed(nowNanos)
            && (pins.coilSupply() == PinSettings.NOT_WIRED || lines.high(pins.coilSupply()));
    side.coil(pwm.dutyFraction(), pwm.hz(), pwm.running(), supply);
    side.engineCut(pins.engineCut() != PinSettings.NOT_WIRED && lines.high(pins.engineCut()));
    if (nanos > 0L) {
      side.advance(nanos);
    }
    eachStep.run();
    side.read(nowNanos, inputs);
    for (AnalogChannel channel : AnalogChannel.values()) {
      int input = converter.input(channel);
      if (input != ConverterSettings.NOT_WIRED) {
        orders.microVolts[input] = (int) Math.round(inputs.volts[channel.ordinal()] * MICRO);
      }
    }
    level(pins.key(), inputs.keyOn);
    level(pins.permit(), inputs.permit);
    level(pins.boostSelector(), inputs.highBoost);
    level(pins.springOnlySense(), inputs.coilFeed);
    level(pins.coilFeedback(), inputs.coilEnergised);
    orders.halfNanos[GuestOrders.TACH] =
        half(inputs.engineSeen, inputs.enginePulseNanos, inputs.enginePeriodNanos);
    orders.halfNanos[GuestOrders.ROAD] =
        pins.road() == PinSettings.NOT_WIRED
            ? 0L
            : half(inputs.roadSeen, inputs.roadPulseNanos, inputs.roadPeriodNanos);
  }

  private void level(int line, boolean high) {
    if (line != PinSettings.NOT_WIRED) {
      orders.level(line, high);
    }
  }

  /** Half a period of a pulse train; 0 when the next pulse is long overdue. */
  private long half(boolean seen, long lastNanos, double periodNanos) {
    boolean alive = seen && periodNanos > 0.0 && nowNanos - lastNanos < 3.0 * periodNanos;
    return alive ? Math.min(Integer.MAX_VALUE, Math.round(periodNanos / 2.0)) : 0L;
  }

  /** Lets guest and car run for a time, s. */
  void run(double seconds) throws IOException {
    long end = nowNanos + Math.round(seconds * 1e9);
    do {
      step();
    } while (nowNanos < end);
  }

  /**
   * Lets guest and car run until something is so.
   *
   * @return false when it was not within the time
   */
  boolean runUntil(BooleanSupplier so, double longestSeconds) throws IOException {
    long steps = Math.round(longestSeconds / STEP_SECONDS);
    for (long i = 0; i < steps && !so.getAsBoolean(); i++) {
      step();
    }
    return so.getAsBoolean();
  }

  /** Cuts the power, at whatever moment this is. */
  void cutPower() throws IOException {
    machine.report();
    orders.stepNanos = 0;
    machine.order(orders);
  }

  @Override
  public void close() throws IOException {
    machine.close();
  }

  /** Something to look at after each move of the car. */
  void eachStep(Runnable look) {
    eachStep = look;
  }

  /** Everything off that acts through the coil: channel off and coil supply not held. */
  boolean outputsOff() {
    boolean supplyLow =
        pins.coilSupply() == PinSettings.NOT_WIRED || !lines.high(pins.coilSupply());
    return pwm.off() && supplyLow;
  }

  /** The controller holds boost: the valve is driven through all of PWM, supply and heartbeat. */
  boolean driving() {
    return pwm.running() && pwm.dutyFraction() > 0.0 && lines.gate().closed(nowNanos);
  }

  /** Warning lamp. */
  boolean lamp() {
    return lines.high(pins.lamp());
  }

  GuestOrders orders() {
    return orders;
  }

  GuestShell shell() {
    return shell;
  }

  PwmDiary pwm() {
    return pwm;
  }

  LineDiary lines() {
    return lines;
  }

  PinSettings pins() {
    return pins;
  }

  /** Time in the guest, ns. */
  long nowNanos() {
    return nowNanos;
  }

  /** Boots so far. */
  int boots() {
    return boots;
  }

  /** Events that found the guest's buffer full. */
  long lostEvents() {
    return lostEvents;
  }
}
