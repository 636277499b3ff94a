package org.boostwright.core.settings;

import java.util.Arrays;
import java.util.Objects;
import org.boostwright.core.AnalogChannel;
import org.jspecify.annotations.Nullable;

/**
 * The analogue-to-digital converter on the Pi, and which sensor sits on which of its inputs.
 *
 * @param kind the chip
 * @param bus number of the I2C or SPI bus
 * @param address I2C address, or chip select
 * @param fullScaleVolts range of an ADS1115 (6.144, 4.096 or 2.048), reference of an MCP3208, V
 * @param inputs input by {@link AnalogChannel#ordinal()}, {@link #NOT_WIRED} for none
 */
public record ConverterSettings(
    Kind kind, int bus, int address, double fullScaleVolts, int[] inputs) {
  /** Stands for a sensor that is not on the converter. */
  public static final int NOT_WIRED = -1;

  /** Chips there is a driver for. */
  public enum Kind {
    /** Four inputs, 16 bits, I2C at 400 kHz, its own reference. */
    ADS1115(4),
    /** Eight inputs, 12 bits, SPI, ratiometric. */
    MCP3208(8);

    private final int inputs;

    Kind(int inputs) {
      this.inputs = inputs;
    }

    /** Number of inputs. */
    public int inputs() {
      return inputs;
    }
  }

  /** Takes a copy. */
  public ConverterSettings {
    inputs = inputs.clone();
  }

  /** A copy. */
  @Override
  public int[] inputs() {
    return inputs.clone();
  }

  /** Input of a channel. */
  public int input(AnalogChannel channel) {
    return inputs[channel.ordinal()];
  }

  @Override
  public boolean equals(@Nullable Object other) {
    return other instanceof ConverterSettings that
        && kind == that.kind
        && bus == that.bus
        && address == that.address
        && fullScaleVolts == that.fullScaleVolts
        && Arrays.equals(inputs, that.inputs);
  }

  @Override
  public int hashCode() {
    return Objects.hash(kind, bus, address, fullScaleVolts, Arrays.hashCode(inputs));
  }
}
