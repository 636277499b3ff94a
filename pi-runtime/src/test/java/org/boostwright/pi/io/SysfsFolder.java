package org.boostwright.pi.io;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.ByteBuffer;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;

/** A folder that stands in for sysfs: one PWM chip of two channels, one I2C bus, and a diary. */
public final class SysfsFolder {
  private final Path root;

  /** Every write in order, as {@code file=number}. */
  public final List<String> diary = new ArrayList<>();

  /** A write to this file fails; empty for none. */
  public String failing = "";

  /** Makes chip 0 with two channels, the first exported and left running by whoever was before. */
  public SysfsFolder(Path root) throws IOException {
    this.root = root;
    Path chip = Files.createDirectories(root.resolve("pwm/pwmchip0"));
    Files.writeString(chip.resolve("npwm"), "2\n");
    Files.writeString(chip.resolve("export"), "");
    Path channel = Files.createDirectories(channel());
    Files.writeString(channel.resolve("period"), "33333333\n");
    Files.writeString(channel.resolve("duty_cycle"), "16000000\n");
    Files.writeString(channel.resolve("enable"), "1\n");
    Files.writeString(channel.resolve("polarity"), "normal\n");
    Path node = Files.createDirectories(root.resolve("i2c/i2c-1/of_node"));
    Files.write(node.resolve("clock-frequency"), ByteBuffer.allocate(4).putInt(400_000).array());
  }

  /** Folder of channel 0. */
  public Path channel() {
    return root.resolve("pwm/pwmchip0/pwm0");
  }

  /** Channel 0 as it is after boot: no period yet, and the kernel refuses everything but one. */
  public void neverRan() throws IOException {
    intrude("period", "0");
    intrude("duty_cycle", "0");
    intrude("enable", "0");
  }

  /** The places for {@link PiIo}. */
  public SysfsPlaces places() {
    return new SysfsPlaces(root.resolve("pwm"), root.resolve("i2c"));
  }

  /** First line of an attribute of channel 0. */
  public String value(String attribute) {
    try {
      return Files.readString(channel().resolve(attribute)).split("\n")[0];
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /** Somebody else writes an attribute. */
  public void intrude(String attribute, String text) throws IOException {
    Files.writeString(channel().resolve(attribute), text + "\n");
  }

  /** Opens the real file and keeps the diary. */
  NumberFile open(Path path) throws IOException {
    String name = String.valueOf(path.getFileName());
    AttributeFile file = new AttributeFile(path);
    return new NumberFile() {
      @Override
      public void write(long number) throws IOException {
        diary.add(name + "=" + number);
        // Linux 6.1, pwm_apply_state(): nothing is applied to a channel without a period.
        if (!name.equals("period") && value("period").equals("0")) {
          throw new IOException("Invalid argument");
        }
        if (name.equals(failing)) {
          throw new IOException("cannot write " + name);
        }
        file.write(number);
      }

      @Override
      public long read() throws IOException {
        return file.read();
      }

      @Override
      public void close() {
        file.close();
      }
    };
  }
}
