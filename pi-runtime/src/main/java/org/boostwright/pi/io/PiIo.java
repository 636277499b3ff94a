package org.boostwright.pi.io;

import java.io.IOException;
import java.util.ArrayDeque;
import java.util.Deque;
import org.boostwright.core.Inputs;
import org.boostwright.core.Outputs;
import org.boostwright.core.settings.CarSettings;
import org.boostwright.core.settings.ConverterSettings;
import org.boostwright.core.settings.PinSettings;
import org.boostwright.core.settings.ScanPlan;
import org.boostwright.core.settings.Settings;
import org.jspecify.annotations.Nullable;

/** The Pi's own pins: converter, pulses, switches, coil, engine cut and lamp. */
public final class PiIo implements CarIo {
  /** The pressure sample is ready this long before the tick that uses it, ns. */
  private static final long AHEAD_NANOS = 300_000L;

  /** Pulses this much faster than the redline are spikes of the wire. */
  private static final double SPIKE_FACTOR = 4.0;

  /** Road pulses faster than this are spikes, 1/s. */
  private static final double ROAD_SPIKE_PER_SECOND = 4000.0;

  private final Deque<AutoCloseable> opened = new ArrayDeque<>();
  private final PiCoil coil;
  private final @Nullable OutputLine engineCut;
  private final @Nullable OutputLine lampLine;
  private final Switches switches;
  private final AnalogScan scan;
  private final ScanThread scanThread;
  private final PulseTimer engine;
  private final PulseTimer road;
  private final EdgeReader engineReader;
  private final @Nullable EdgeReader roadReader;

  private PiIo(Settings settings, Hardware hardware, SysfsPlaces places, Clock clock)
      throws IOException {
    PinSettings pins = settings.pins();
    ConverterSettings converterSettings = settings.converter();
    if (pins == null || converterSettings == null) {
      throw new IOException(
          "the settings have no ["
              + (pins == null ? "pins" : "converter")
              + "], which driving a"
              + " valve from the Pi needs; see docs/install-pi.md");
    }
    opened.push(hardware);
    try {
      // Outputs first, each low; inputs only once nothing can be energised any more.
      SysfsPwm pwm =
          SysfsPwm.open(
              places.pwm(),
              pins.pwmChip(),
              pins.pwmChannel(),
              settings.valve().frequencyHz(),
              clock);
      opened.push(pwm);
      OutputLine heartbeat = opened(hardware.output(pins.heartbeat(), "heartbeat"));
      coil = new PiCoil(pwm, heartbeat, output(hardware, pins.coilSupply(), "coil supply"));
      engineCut = output(hardware, pins.engineCut(), "engine cut");
      lampLine = output(hardware, pins.lamp(), "lamp");
      switches = new Switches(hardware, pins, settings.optional());
      opened.push(switches);
      Converter converter = converter(converterSettings, hardware, places, clock);
      opened.push(converter);
      converter.check();
      ScanPlan plan = ScanPlan.of(converterSettings);
      scan = new AnalogScan(converter, plan, clock);
      CarSettings car = settings.car();
      double redlinePulses = car.redlineRpm() / 60.0 * car.pulsesPerRevolution();
      engine = new PulseTimer((long) (1e9 / (SPIKE_FACTOR * redlinePulses)));
      road = new PulseTimer((long) (1e9 / ROAD_SPIKE_PER_SECOND));
      engineReader = reader(hardware, pins.tach(), "tach", engine, clock);
      roadReader =
          pins.road() == PinSettings.NOT_WIRED
              ? null
              : reader(hardware, pins.road(), "road speed", road, clock);
      scanThread = new ScanThread(scan, clock, plan.convertNanos() + AHEAD_NANOS);
      opened.push(scanThread);
    } catch (IOException | RuntimeException e) {
      closeAll();
      throw e;
    }
  }

  /**
   * Opens everything, outputs off; {@link #start} then starts the inputs' threads.
   *
   * @throws IOException with words for people
   */
  public static PiIo open(Settings settings, Hardware hardware, SysfsPlaces places, Clock clock)
      throws IOException {
    return new PiIo(settings, hardware, places, clock);
  }

  /** Starts the threads that convert and that wait for pulses. */
  public void start() {
    scanThread.start();
    engineReader.start();
    if (roadReader != null) {
      roadReader.start();
    }
  }

  /** The converter's passes; run by its thread once started. */
  AnalogScan scan() {
    return scan;
  }

  /** The road-speed pulses; fed by its thread once started. */
  PulseTimer road() {
    return road;
  }

  /** The engine-speed pulses; fed by its thread once started. */
  PulseTimer engine() {
    return engine;
  }

  private OutputLine opened(OutputLine line) {
    opened.push(line);
    return line;
  }

  private @Nullable OutputLine output(Hardware hardware, int pin, String name) throws IOException {
    return pin == PinSettings.NOT_WIRED ? null : opened(hardware.output(pin, name));
  }

  private EdgeReader reader(Hardware hardware, int pin, String name, PulseTimer timer, Clock clock)
      throws IOException {
    EdgeReader reader = new EdgeReader(name, hardware.edges(pin, name), timer, clock);
    opened.push(reader);
    return reader;
  }

  private static Converter converter(
      ConverterSettings settings, Hardware hardware, SysfsPlaces places, Clock clock)
      throws IOException {
    if (settings.kind() == ConverterSettings.Kind.MCP3208) {
      return new Mcp3208(
          hardware.spi(settings.bus(), settings.address(), ScanPlan.SPI_HZ),
          settings.fullScaleVolts());
    }
    places.requireI2cHz(settings.bus(), ScanPlan.I2C_HZ);
    return new Ads1115(
        hardware.i2c(settings.bus(), settings.address()), clock, settings.fullScaleVolts());
  }

  @Override
  public void read(long nowNanos, Inputs inputs) {
    scan.read(inputs);
    engine.update();
    inputs.engineSeen = engine.seen();
    inputs.enginePeriodNanos = engine.periodNanos();
    inputs.enginePulseNanos = engine.lastNanos();
    road.update();
    inputs.roadSeen = road.seen();
    inputs.roadPeriodNanos = road.periodNanos();
    inputs.roadPulseNanos = road.lastNanos();
    switches.read(inputs);
  }

  @Override
  public boolean apply(long nowNanos, Outputs outputs) {
    boolean good = coil.apply(outputs);
    return set(engineCut, outputs.engineCutRequest) && good;
  }

  private static boolean set(@Nullable OutputLine line, boolean high) {
    if (line == null) {
      return true;
    }
    try {
      line.set(high);
      return line.get() == high;
    } catch (IOException e) {
      return false;
    }
  }

  @Override
  public void endTick(long nowNanos, Outputs outputs, boolean beat, boolean lamp) {
    if (beat) {
      coil.beat();
    }
    set(lampLine, lamp);
  }

  @Override
  public boolean setPwmHz(double hz) {
    return coil.setHz(hz);
  }

  @Override
  public void rest() {
    coil.rest();
  }

  @Override
  public String health() {
    StringBuilder words = new StringBuilder();
    words.append("converter failures ").append(scan.failures());
    if (!scan.lastFailure().isEmpty()) {
      words.append(" (last: ").append(scan.lastFailure()).append(')');
    }
    words.append(", tach spikes ").append(engine.spikes());
    if (!engineReader.failure().isEmpty()) {
      words.append(", tach: ").append(engineReader.failure());
    }
    return words.toString();
  }

  @Override
  public void close() {
    coil.close();
    closeAll();
  }

  private void closeAll() {
    while (!opened.isEmpty()) {
      try {
        opened.pop().close();
      } catch (Exception e) {
        // Everything else still has to be closed; the coil was first.
      }
    }
  }
}
