package org.boostwright.rig.kernel;

import java.io.BufferedInputStream;
import java.io.FileInputStream;
import java.io.FileOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.nio.channels.FileChannel;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.locks.LockSupport;

/**
 * The emulated machine: QEMU, and the two pipes to the bench's kernel module in it.
 *
 * <p>QEMU counts instructions for its clock and skips idle time, and stands still while it waits on
 * the pipes: time in the guest is what its kernel counts and does not depend on this machine.
 */
final class GuestMachine implements AutoCloseable {
  private static final int PIPE_BUFFER_BYTES = 1 << 17;
  private static final long OFF_SECONDS = 5;
  private static final long LOOK_NANOS = 1_000_000_000L;
  private static final long PATIENCE_NANOS = 180_000_000_000L;
  private static final String WATCHDOG = "softdog: Initiating system reboot";
  private static final String TO_RIG = "to-rig";
  private static final String FROM_RIG = "from-rig";

  private final Path console;
  private final Process qemu;
  private final InputStream in;
  private final OutputStream out;
  private volatile long heardNanos = System.nanoTime();

  private GuestMachine(Path console, Process qemu, InputStream in, OutputStream out) {
    this.console = console;
    this.qemu = qemu;
    this.in = in;
    this.out = out;
    Thread patience = new Thread(this::losePatience, "guest's patience");
    patience.setDaemon(true);
    patience.start();
  }

  /** A guest that hangs hears no orders any more; without this the rig would wait for ever. */
  private void losePatience() {
    while (qemu.isAlive()) {
      LockSupport.parkNanos(LOOK_NANOS);
      if (System.nanoTime() - heardNanos > PATIENCE_NANOS) {
        qemu.destroyForcibly();
      }
    }
  }

  /**
   * Switches a machine on.
   *
   * @param image folder made by {@code build.sh}
   * @param disk its disk, kept over resets
   * @param folder where pipes and the kernel's console go
   * @param boot number of the boot, from 1: each has a console file of its own
   */
  static GuestMachine on(Path image, Path disk, Path folder, int boot) throws IOException {
    Path console = folder.resolve("console-" + boot + ".txt");
    // Pipes of its own for each boot: the last one's may still be let go of.
    Path pipes = Files.createDirectories(folder.resolve("pipes-" + boot));
    for (String pipe : List.of(TO_RIG, FROM_RIG)) {
      Files.deleteIfExists(pipes.resolve(pipe));
      run(List.of("mkfifo", pipes.resolve(pipe).toString()));
    }
    List<String> words = new ArrayList<>(List.of("qemu-system-aarch64"));
    words.addAll(Files.readAllLines(image.resolve("machine")));
    words.addAll(
        List.of(
            "-accel",
            "tcg",
            "-icount",
            "shift=0,sleep=off",
            "-rtc",
            "clock=vm",
            "-no-reboot",
            "-nic",
            "none",
            "-display",
            "none",
            "-monitor",
            "none",
            "-serial",
            "file:" + console,
            "-semihosting-config",
            "enable=on,target=native",
            "-kernel",
            image.resolve("vmlinuz").toString(),
            "-initrd",
            image.resolve("initrd").toString(),
            "-dtb",
            image.resolve("board.dtb").toString(),
            "-drive",
            "if=none,id=disk,format=raw,file=" + disk,
            "-device",
            "virtio-blk-device,drive=disk",
            "-append",
            "console=ttyAMA0 quiet panic=-1 nokaslr"));
    Process qemu =
        new ProcessBuilder(words)
            .directory(pipes.toFile())
            .redirectErrorStream(true)
            .redirectOutput(folder.resolve("qemu.txt").toFile())
            .start();
    Runtime.getRuntime().addShutdownHook(new Thread(qemu::destroyForcibly, "guest's end"));
    // A pipe opens when both ends do; a machine that ended must not leave this end waiting.
    qemu.onExit().thenRun(() -> release(pipes));
    InputStream in = new FileInputStream(pipes.resolve(TO_RIG).toFile());
    OutputStream out = new FileOutputStream(pipes.resolve(FROM_RIG).toFile());
    return new GuestMachine(console, qemu, new BufferedInputStream(in, PIPE_BUFFER_BYTES), out);
  }

  private static void release(Path pipes) {
    for (String pipe : List.of(TO_RIG, FROM_RIG)) {
      try {
        // Both ways, which waits for nobody; never made where it is gone.
        FileChannel.open(pipes.resolve(pipe), StandardOpenOption.READ, StandardOpenOption.WRITE)
            .close();
      } catch (IOException e) {
        // The folder is gone: nobody waits on it.
      }
    }
  }

  private static void run(List<String> words) throws IOException {
    Process process = new ProcessBuilder(words).inheritIO().start();
    try {
      if (process.waitFor() != 0) {
        throw new IOException(String.join(" ", words) + " failed");
      }
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
      throw new IOException("interrupted", e);
    }
  }

  /** The next report; the guest then stands still until {@link #order}. */
  GuestReport report() throws IOException {
    GuestReport report = GuestReport.read(in);
    heardNanos = System.nanoTime();
    return report;
  }

  /** Lets the guest go on. */
  void order(GuestOrders orders) throws IOException {
    out.write(orders.take());
    out.flush();
  }

  /** True when the kernel's watchdog has ended the machine. */
  boolean endedByWatchdog() throws IOException {
    return Files.exists(console) && Files.readString(console).contains(WATCHDOG);
  }

  @Override
  public void close() throws IOException {
    try {
      if (!qemu.waitFor(OFF_SECONDS, TimeUnit.SECONDS)) {
        qemu.destroyForcibly();
      }
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
      qemu.destroyForcibly();
    } finally {
      in.close();
      out.close();
    }
  }
}
