package org.boostwright.pi.io;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.AccessDeniedException;
import java.nio.file.DirectoryStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;

/**
 * A hardware PWM channel through the kernel's sysfs (Linux, Documentation/driver-api/pwm.rst).
 *
 * <p>A new duty is one write to {@code duty_cycle}; the period is never rewritten while the channel
 * runs and the channel never restarted, so no cycle is cut short or stretched. Off is duty 0 and
 * disabled. The channel goes on when the program dies: that is what the heartbeat is for.
 */
public final class SysfsPwm implements AutoCloseable {
  private static final long EXPORT_NANOS = 2_000_000_000L;
  private static final long EXPORT_STEP_NANOS = 10_000_000L;

  private final Path channel;
  private final NumberFile duty;
  private final NumberFile enable;
  private final NumberFile period;
  private long periodNanos;
  private long dutyNanos;
  private boolean enabled;
  private boolean closed;

  private SysfsPwm(Path channel, double hz, NumberFile.Opener opener) throws IOException {
    this.channel = channel;
    enable = opener.open(channel.resolve("enable"));
    duty = opener.open(channel.resolve("duty_cycle"));
    period = opener.open(channel.resolve("period"));
    // Since boot without a period: the kernel then lets nothing run, and refuses even "off".
    if (period.read() != 0L) {
      writeOff();
    }
    setPeriod(hz);
  }

  /**
   * Takes a channel and leaves it off.
   *
   * @param root {@code /sys/class/pwm}
   * @param chip number of the chip; it differs between boards
   * @param number channel of the chip
   * @param hz frequency, Hz
   * @throws IOException with words for people
   */
  public static SysfsPwm open(Path root, int chip, int number, double hz, Clock clock)
      throws IOException {
    return open(root, chip, number, hz, clock, AttributeFile::new);
  }

  static SysfsPwm open(
      Path root, int chip, int number, double hz, Clock clock, NumberFile.Opener opener)
      throws IOException {
    Path chipFolder = root.resolve("pwmchip" + chip);
    if (!Files.isDirectory(chipFolder)) {
      throw new IOException(
          "there is no PWM chip "
              + chip
              + "; "
              + chipsThereAre(root)
              + "; set pins.pwm_chip, and see docs/install-pi.md for the overlay");
    }
    int channels = (int) number(chipFolder.resolve("npwm"));
    if (!(number >= 0 && number < channels)) {
      throw new IOException(
          "PWM chip "
              + chip
              + " has "
              + channels
              + " channels, none of them "
              + number
              + "; set pins.pwm_channel");
    }
    Path folder = chipFolder.resolve("pwm" + number);
    if (!Files.isDirectory(folder)) {
      write(chipFolder.resolve("export"), Integer.toString(number));
    }
    awaitWritable(folder, clock);
    Path polarity = folder.resolve("polarity");
    if (Files.exists(polarity) && !text(polarity).equals("normal")) {
      throw new IOException(
          folder
              + " has polarity '"
              + text(polarity)
              + "' and not 'normal': the coil would be"
              + " energised at duty 0; write normal to it before starting");
    }
    return new SysfsPwm(folder, hz, opener);
  }

  private static String chipsThereAre(Path root) throws IOException {
    if (!Files.isDirectory(root)) {
      return root + " does not exist: no PWM driver is loaded";
    }
    List<String> names = new ArrayList<>();
    try (DirectoryStream<Path> chips = Files.newDirectoryStream(root, "pwmchip*")) {
      chips.forEach(path -> names.add(String.valueOf(path.getFileName())));
    }
    names.sort(null);
    return names.isEmpty() ? "there is none at all" : "there are " + String.join(", ", names);
  }

  private static void awaitWritable(Path folder, Clock clock) throws IOException {
    long giveUp = clock.nanoTime() + EXPORT_NANOS;
    // The folder appears at once, the rights to it when udev has been round.
    while (!(Files.isWritable(folder.resolve("duty_cycle"))
        && Files.isWritable(folder.resolve("enable"))
        && Files.isWritable(folder.resolve("period")))) {
      if (clock.nanoTime() - giveUp > 0L) {
        throw new IOException(
            folder + " cannot be written: is this user in group gpio? See docs/install-pi.md");
      }
      clock.sleepUntil(clock.nanoTime() + EXPORT_STEP_NANOS);
    }
  }

  private static String text(Path file) throws IOException {
    return Files.readString(file, StandardCharsets.US_ASCII).strip();
  }

  private static void write(Path file, String text) throws IOException {
    Files.write(file, (text + "\n").getBytes(StandardCharsets.US_ASCII));
  }

  private static long number(Path file) throws IOException {
    return Long.parseLong(text(file));
  }

  /**
   * Switches every exported channel of every chip off, without knowing any settings: the first
   * thing the program does.
   *
   * @param root {@code /sys/class/pwm}; nothing happens where it does not exist
   * @return words about what could not be switched off; empty when all is well
   */
  public static List<String> allOff(Path root) {
    List<String> troubles = new ArrayList<>();
    if (!Files.isDirectory(root)) {
      return troubles;
    }
    try (DirectoryStream<Path> chips = Files.newDirectoryStream(root, "pwmchip*")) {
      for (Path chip : chips) {
        channelsOff(chip, troubles);
      }
    } catch (IOException e) {
      troubles.add(root + ": " + e.getMessage());
    }
    return troubles;
  }

  private static void channelsOff(Path chip, List<String> troubles) throws IOException {
    try (DirectoryStream<Path> channels = Files.newDirectoryStream(chip, "pwm[0-9]*")) {
      for (Path folder : channels) {
        if (neverRan(folder)) {
          continue;
        }
        for (String name : new String[] {"duty_cycle", "enable"}) {
          try {
            write(folder.resolve(name), "0");
          } catch (IOException e) {
            troubles.add(
                e instanceof AccessDeniedException
                    ? folder.resolve(name) + " may not be written by this user"
                    : folder.resolve(name) + ": " + e.getMessage());
          }
        }
      }
    }
  }

  /** True for a channel without a period: it cannot run, and the kernel refuses even "off". */
  private static boolean neverRan(Path folder) {
    try {
      return number(folder.resolve("period")) == 0L;
    } catch (IOException | NumberFormatException e) {
      return false;
    }
  }

  /**
   * Sets the frequency; only at rest, because it would cut a running cycle.
   *
   * @throws IOException when the channel runs, or when the driver refuses or changes the period
   */
  synchronized void setPeriod(double hz) throws IOException {
    if (!(hz >= 10.0 && hz <= 100.0)) {
      throw new IOException("PWM frequency " + hz + " Hz is outside 10 to 100 Hz");
    }
    if (enabled) {
      throw new IOException("the PWM frequency can only be changed at rest");
    }
    long wanted = Math.round(1e9 / hz);
    try {
      period.write(wanted);
    } catch (IOException e) {
      throw new IOException(channel + " refuses a period of " + wanted + " ns", e);
    }
    long got = period.read();
    if (!(Math.abs(got - wanted) <= wanted / 100)) {
      throw new IOException(
          channel + " was told a period of " + wanted + " ns and runs " + got + " ns");
    }
    periodNanos = got;
  }

  /**
   * Duty of the coming cycles.
   *
   * @param fraction 0 to 1; anything else is 0
   */
  synchronized void setDuty(double fraction) throws IOException {
    long nanos = fraction >= 0.0 && fraction <= 1.0 ? Math.round(fraction * periodNanos) : 0L;
    if (nanos != dutyNanos) {
      duty.write(nanos);
      dutyNanos = nanos;
    }
  }

  /** Enables the channel with the duty it has. */
  synchronized void enable() throws IOException {
    if (closed) {
      throw new IOException("the PWM channel has been closed");
    }
    if (!enabled) {
      enable.write(1);
      enabled = true;
    }
  }

  /** Duty 0 and disabled, unless they are so already. */
  synchronized void off() throws IOException {
    if (enabled || dutyNanos != 0L) {
      writeOff();
    }
  }

  /** Duty 0 and disabled whatever this object believes; tries both even when one fails. */
  synchronized void writeOff() throws IOException {
    try {
      duty.write(0);
      dutyNanos = 0L;
    } finally {
      enable.write(0);
      enabled = false;
    }
  }

  /** True when the kernel holds what was last written. */
  synchronized boolean verified() throws IOException {
    return duty.read() == dutyNanos && enable.read() == (enabled ? 1L : 0L);
  }

  /** Frequency in use, Hz. */
  double hz() {
    return 1e9 / periodNanos;
  }

  /** Off whatever this object believes, and no way back. */
  @Override
  public synchronized void close() {
    closed = true;
    try {
      writeOff();
    } catch (IOException e) {
      // The heartbeat has stopped; the supply opens by itself.
    }
    duty.close();
    enable.close();
    period.close();
  }
}
