package org.boostwright.rig.link;

import java.util.Locale;
import java.util.Queue;
import java.util.concurrent.ConcurrentLinkedQueue;
import java.util.function.Consumer;
import org.boostwright.core.bench.Question;
import org.boostwright.rig.bench.BenchSetup;

/**
 * The valve bench at a serial port, in real time, for a controller that runs {@code bench --valve
 * link:PORT}. The person says here, by the word in brackets, what the controller asked for there.
 */
public final class RigBench {
  private static final double CONNECT_SECONDS = 60.0;
  private static final long GONE_NANOS = 3_000_000_000L;

  private final BenchSide side;
  private final Queue<String> typed = new ConcurrentLinkedQueue<>();
  private volatile boolean ended;

  /**
   * What a run at the bench saw.
   *
   * @param connected a controller came
   * @param health words about the wires
   * @param frames its frames
   * @param broken frames with an impossible duty, or duty while at rest
   * @param highestDuty highest duty, 0 to 1
   */
  public record Report(
      boolean connected, String health, long frames, long broken, double highestDuty) {}

  /** A bench with its air off. */
  public RigBench(BenchSetup setup, long seed) {
    side = new BenchSide(setup, seed);
  }

  /** Takes a line that somebody typed; from any thread. */
  public void type(String line) {
    typed.add(line);
  }

  /** Nobody will type any more. */
  public void end() {
    ended = true;
  }

  /**
   * Runs until the controller has gone, or nobody types any more.
   *
   * @param settingsDigest first eight bytes of the digest of the settings
   * @param says told what the person at the bench would answer
   */
  public Report run(String port, int baud, long settingsDigest, long seed, Consumer<String> says) {
    try (SerialWires wires = SerialWires.open(port, baud, settingsDigest, seed)) {
      return run(wires, says);
    }
  }

  /** The same on other wires, until nobody types any more. */
  public Report run(ControllerWires wires, Consumer<String> says) {
    RealTimeThread.liftMachine();
    RealTimeThread.lift();
    RigLoop loop = new RigLoop(wires, side, new WireObserver(), RigClock.SYSTEM);
    WireObserver observer = loop.observer();
    boolean connected = loop.runUntil(() -> observer.frames() > 0L || ended, CONNECT_SECONDS);
    while (connected && !ended && loop.nanoTime() - observer.lastArrivedNanos() < GONE_NANOS) {
      loop.tick();
      for (String line = typed.poll(); line != null; line = typed.poll()) {
        says.accept(reply(line));
      }
    }
    return new Report(
        observer.frames() > 0L,
        wires.health(),
        observer.frames(),
        observer.broken(),
        observer.highestDuty());
  }

  private String reply(String line) {
    String word = line.strip().toUpperCase(Locale.ROOT);
    for (Question question : Question.values()) {
      if (question.name().equals(word)) {
        return word + " " + side.asked(question);
      }
    }
    return "there is no question '" + line.strip() + "'; type the word in brackets, as AIR_ON";
  }
}
