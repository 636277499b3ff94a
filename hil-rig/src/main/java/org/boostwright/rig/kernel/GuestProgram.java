package org.boostwright.rig.kernel;

import java.io.IOException;
import java.util.Locale;

/** The controller's program in the guest, started as on a Pi without systemd. */
final class GuestProgram {
  /** Who starts it. */
  enum User {
    /** Member of the groups gpio and i2c. */
    DRIVER,
    /** Of neither. */
    VISITOR
  }

  private static final double START_SECONDS = 20.0;
  private static final double SHORT_SECONDS = 5.0;
  private static final String SAID = "/data/said.txt";

  private final KernelRig rig;
  private int pid;

  GuestProgram(KernelRig rig) {
    this.rig = rig;
  }

  private static String words(User user, String arguments) {
    return "/data/start " + user.name().toLowerCase(Locale.ROOT) + " " + arguments;
  }

  /** Starts it and does not wait for anything. */
  void start(String arguments) throws IOException {
    GuestShell.Answer answer =
        rig.shell()
            .run(words(User.DRIVER, arguments) + " >" + SAID + " 2>&1 & echo $!", SHORT_SECONDS);
    pid = Integer.parseInt(answer.text().strip());
  }

  /** Runs it to its end, interpreted: compiling costs the emulator more than it saves here. */
  GuestShell.Answer run(User user, String arguments) throws IOException {
    return rig.shell()
        .run("JAVA_TOOL_OPTIONS=-Xint " + words(user, arguments) + " 2>&1", START_SECONDS);
  }

  /**
   * Waits until its heartbeat line is an output, which is when its outputs are in its hands.
   *
   * @return false when that never came
   */
  boolean awaitOutputs() throws IOException {
    int heartbeat = rig.pins().heartbeat();
    return rig.runUntil(() -> rig.lines().output(heartbeat), START_SECONDS);
  }

  /** Loads the kernel's watchdog, which the program's user may open. */
  void loadWatchdog(int seconds) throws IOException {
    rig.shell()
        .run(
            "insmod /modules/softdog.ko soft_margin="
                + seconds
                + " && chgrp gpio /dev/watchdog && chmod 660 /dev/watchdog",
            START_SECONDS);
  }

  /** Sends it a signal; takes effect within the next few exchanges. */
  void signal(String name) {
    rig.shell().type("kill -" + name + " " + pid);
  }

  boolean alive() throws IOException {
    return rig.shell().run("kill -0 " + pid + " 2>/dev/null", SHORT_SECONDS).exitCode() == 0;
  }

  /** Waits for its end. */
  int await() throws IOException {
    return rig.shell().run("wait " + pid, START_SECONDS).exitCode();
  }

  /** What it said since it was started. */
  String said() throws IOException {
    return rig.shell().run("cat " + SAID, SHORT_SECONDS).text();
  }
}
