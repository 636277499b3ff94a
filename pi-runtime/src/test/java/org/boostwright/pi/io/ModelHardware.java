package org.boostwright.pi.io;

import java.io.IOException;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;

/** A Pi made of device models: one ADS1115, one MCP3208 and 28 lines. */
public final class ModelHardware implements Hardware {
  final Ads1115Model ads1115;
  final Mcp3208Model mcp3208 = new Mcp3208Model();

  /** Level of each line, by GPIO number. */
  public final boolean[] levels = new boolean[28];

  /** Rising and falling edges given on each output. */
  public final int[] edges = new int[28];

  /** Lines that no longer follow what is written. */
  public final boolean[] stuck = new boolean[28];

  /** Lines that somebody else holds. */
  public final boolean[] busy = new boolean[28];

  /** Lines in the order in which they were opened. */
  public final List<String> opened = new ArrayList<>();

  private final Map<Integer, String> users = new HashMap<>();

  /** A Pi at rest. */
  public ModelHardware(SteppedClock clock) {
    ads1115 = new Ads1115Model(clock, 400e3);
  }

  /** Volts at an input of the ADS1115. */
  public void volts(int input, double volts) {
    ads1115.pinVolts[input] = volts;
  }

  /** The ADS1115 stops answering, or answers again. */
  public void converterDead(boolean dead) {
    ads1115.nacks = dead ? Integer.MAX_VALUE : 0;
  }

  /** The conversion register of the ADS1115 no longer changes. */
  public void converterStuck(boolean stuckData) {
    ads1115.stuckData = stuckData;
  }

  private void take(int gpio, String name) throws IOException {
    if (busy[gpio] || users.putIfAbsent(gpio, name) != null) {
      throw new IOException("GPIO " + gpio + " (" + name + "): Device or resource busy");
    }
    opened.add(name);
  }

  @Override
  public I2cDevice i2c(int bus, int address) {
    opened.add("i2c");
    return ads1115;
  }

  @Override
  public SpiDevice spi(int bus, int chipSelect, int hz) {
    opened.add("spi");
    return mcp3208;
  }

  @Override
  public OutputLine output(int gpio, String name) throws IOException {
    take(gpio, name);
    levels[gpio] = false;
    return new OutputLine() {
      @Override
      public void set(boolean high) {
        if (!stuck[gpio] && levels[gpio] != high) {
          levels[gpio] = high;
          edges[gpio]++;
        }
      }

      @Override
      public boolean get() {
        return levels[gpio];
      }

      @Override
      public void close() {
        levels[gpio] = false;
        users.remove(gpio);
      }
    };
  }

  @Override
  public InputLine input(int gpio, String name) throws IOException {
    take(gpio, name);
    return new InputLine() {
      @Override
      public boolean get() throws IOException {
        if (stuck[gpio]) {
          throw new IOException("cannot be read");
        }
        return levels[gpio];
      }

      @Override
      public void close() {
        users.remove(gpio);
      }
    };
  }

  @Override
  public EdgeLine edges(int gpio, String name) throws IOException {
    take(gpio, name);
    return new EdgeLine() {
      @Override
      public long await(long nanos) {
        return NONE;
      }

      @Override
      public void close() {
        users.remove(gpio);
      }
    };
  }

  @Override
  public void close() {}
}
