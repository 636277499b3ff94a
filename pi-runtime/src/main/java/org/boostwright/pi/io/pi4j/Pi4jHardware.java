package org.boostwright.pi.io.pi4j;

import com.pi4j.Pi4J;
import com.pi4j.context.Context;
import com.pi4j.io.i2c.I2C;
import com.pi4j.io.spi.Spi;
import com.pi4j.io.spi.SpiMode;
import com.pi4j.library.gpiod.internal.GpioDContext;
import com.pi4j.library.gpiod.internal.GpioLine;
import com.pi4j.library.gpiod.internal.GpioLineEvent;
import com.pi4j.plugin.linuxfs.provider.i2c.LinuxFsI2CProvider;
import com.pi4j.plugin.linuxfs.provider.spi.LinuxFsSpiProvider;
import java.io.IOException;
import org.boostwright.pi.io.EdgeLine;
import org.boostwright.pi.io.Hardware;
import org.boostwright.pi.io.I2cDevice;
import org.boostwright.pi.io.InputLine;
import org.boostwright.pi.io.OutputLine;
import org.boostwright.pi.io.SpiDevice;

/**
 * A Raspberry Pi through Pi4J: I2C and SPI by its linuxfs plugin, lines by its gpiod library, which
 * alone passes on when the kernel saw an edge.
 */
public final class Pi4jHardware implements Hardware {
  private static final String CONSUMER = "boostwright ";

  private final Context context;
  private final GpioDContext gpio;

  /**
   * @throws IOException when this is no Raspberry Pi or its GPIO chip cannot be opened
   */
  public Pi4jHardware() throws IOException {
    try {
      // Only what is used is loaded: searching the class path costs a second of start-up.
      context =
          Pi4J.newContextBuilder()
              .noAutoDetect()
              .disableShutdownHook()
              .add(LinuxFsI2CProvider.newInstance(), LinuxFsSpiProvider.newInstance())
              .build();
      gpio = GpioDContext.getInstance();
      gpio.initialize();
    } catch (RuntimeException | LinkageError e) {
      throw failed("this machine's GPIO", e);
    }
  }

  private static IOException failed(String what, Throwable cause) {
    Throwable root = cause;
    while (root.getCause() != null) {
      root = root.getCause();
    }
    String words = root.getMessage() == null ? root.toString() : root.getMessage();
    return new IOException(what + ": " + words + advice(words), cause);
  }

  /** What to do about the two things that go wrong most, by the words of the C library. */
  static String advice(String words) {
    if (words.contains("Permission denied")) {
      return "; is this user in the groups gpio, i2c and spi? See docs/install-pi.md";
    }
    if (words.contains("busy")) {
      return "; another program holds it, maybe this one, started twice: gpioinfo says which";
    }
    return "";
  }

  @Override
  public I2cDevice i2c(int bus, int address) throws IOException {
    String name = "I2C bus " + bus + " address 0x" + Integer.toHexString(address);
    try {
      I2C device =
          context.create(
              I2C.newConfigBuilder(context)
                  .id("i2c-" + bus + "-" + address)
                  .bus(bus)
                  .device(address)
                  .provider(LinuxFsI2CProvider.ID)
                  .build());
      return new Pi4jI2c(name, device);
    } catch (RuntimeException e) {
      throw failed(name, e);
    }
  }

  private record Pi4jI2c(String name, I2C device) implements I2cDevice {
    @Override
    public void write(byte[] bytes) throws IOException {
      try {
        if (device.write(bytes) < 0) {
          throw new IOException(name + ": write failed");
        }
      } catch (RuntimeException e) {
        throw failed(name, e);
      }
    }

    @Override
    public void readRegister(int register, byte[] into) throws IOException {
      try {
        if (device.readRegister(register, into) < 0) {
          throw new IOException(name + ": read failed");
        }
      } catch (RuntimeException e) {
        throw failed(name, e);
      }
    }

    @Override
    public void close() {
      device.close();
    }
  }

  @Override
  public SpiDevice spi(int bus, int chipSelect, int hz) throws IOException {
    String name = "SPI bus " + bus + " chip select " + chipSelect;
    try {
      Spi device =
          context.create(
              Spi.newConfigBuilder(context)
                  .id("spi-" + bus + "-" + chipSelect)
                  .address(chipSelect)
                  .bus(bus)
                  .mode(SpiMode.MODE_0)
                  .baud(hz)
                  .provider(LinuxFsSpiProvider.ID)
                  .build());
      return new Pi4jSpi(name, device);
    } catch (RuntimeException e) {
      throw failed(name, e);
    }
  }

  private record Pi4jSpi(String name, Spi device) implements SpiDevice {
    @Override
    public void transfer(byte[] out, byte[] in) throws IOException {
      try {
        if (device.transfer(out, 0, in, 0, out.length) < 0) {
          throw new IOException(name + ": transfer failed");
        }
      } catch (RuntimeException e) {
        throw failed(name, e);
      }
    }

    @Override
    public void close() {
      device.close();
    }
  }

  private GpioLine line(int number) {
    return gpio.getOrOpenLine(number);
  }

  @Override
  public OutputLine output(int number, String name) throws IOException {
    String what = "GPIO " + number + " (" + name + ")";
    try {
      GpioLine line = line(number);
      line.requestOutput(CONSUMER + name, 0);
      return new Pi4jOutput(what, line, gpio);
    } catch (RuntimeException e) {
      throw failed(what, e);
    }
  }

  private record Pi4jOutput(String name, GpioLine line, GpioDContext gpio) implements OutputLine {
    @Override
    public void set(boolean high) throws IOException {
      try {
        line.setValue(high ? 1 : 0);
      } catch (RuntimeException e) {
        throw failed(name, e);
      }
    }

    @Override
    public boolean get() throws IOException {
      try {
        return line.getValue() != 0;
      } catch (RuntimeException e) {
        throw failed(name, e);
      }
    }

    @Override
    public void close() {
      try {
        line.setValue(0);
      } finally {
        gpio.closeLine(line);
      }
    }
  }

  @Override
  public InputLine input(int number, String name) throws IOException {
    String what = "GPIO " + number + " (" + name + ")";
    try {
      GpioLine line = line(number);
      line.requestInput(CONSUMER + name);
      return new Pi4jInput(what, line, gpio);
    } catch (RuntimeException e) {
      throw failed(what, e);
    }
  }

  private record Pi4jInput(String name, GpioLine line, GpioDContext gpio) implements InputLine {
    @Override
    public boolean get() throws IOException {
      try {
        return line.getValue() != 0;
      } catch (RuntimeException e) {
        throw failed(name, e);
      }
    }

    @Override
    public void close() {
      gpio.closeLine(line);
    }
  }

  @Override
  public EdgeLine edges(int number, String name) throws IOException {
    String what = "GPIO " + number + " (" + name + ")";
    try {
      GpioLine line = line(number);
      line.requestRisingEdgeEvents(CONSUMER + name);
      return new Pi4jEdges(what, line, gpio);
    } catch (RuntimeException e) {
      throw failed(what, e);
    }
  }

  private static final class Pi4jEdges implements EdgeLine {
    private final String name;
    private final GpioLine line;
    private final GpioDContext gpio;
    private final GpioLineEvent event;

    private Pi4jEdges(String name, GpioLine line, GpioDContext gpio) {
      this.name = name;
      this.line = line;
      this.gpio = gpio;
      event = gpio.openLineEvent();
    }

    @Override
    public long await(long nanos) throws IOException {
      try {
        if (!line.eventWait(nanos)) {
          return NONE;
        }
        return line.eventRead(event).getTimeNs();
      } catch (RuntimeException e) {
        throw failed(name, e);
      }
    }

    @Override
    public void close() {
      gpio.closeLineEvent(event);
      gpio.closeLine(line);
    }
  }

  @Override
  public void close() {
    gpio.close();
    context.shutdown();
  }
}
