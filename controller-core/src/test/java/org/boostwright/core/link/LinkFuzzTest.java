package org.boostwright.core.link;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Random;
import java.util.Set;
import org.boostwright.core.AnalogChannel;
import org.boostwright.core.Outputs;
import org.boostwright.core.TestSettings;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/**
 * The whole controller behind a line on which everything goes wrong at random: lost, corrupted,
 * repeated, reordered, delayed frames and invented bytes, a million frames of it, with moments of
 * silence in between.
 */
@Tag("L1")
class LinkFuzzTest {
  /** All of them with {@code -Dboostwright.link.full=true}. */
  private static final int FRAMES = Boolean.getBoolean("boostwright.link.full") ? 1_000_000 : 150_000;

  private static final int WILD_TICKS = 400;

  /** 100 ms. */
  private static final int SILENT_TICKS = 20;

  private static final int MAP = AnalogChannel.MAP.ordinal();

  private enum Line {
    SOUND,
    WILD,
    SILENT
  }

  private final Random random = new Random(12);
  private final Set<Float> sentVolts = new HashSet<>();
  private final List<byte[]> held = new ArrayList<>();
  private final List<byte[]> old = new ArrayList<>();
  private LinkBench bench = new LinkBench(TestSettings.car());
  private Line line = Line.SOUND;
  private long arrived;
  private long spoiled;
  private long wrong;

  private List<byte[]> carry(byte[] frame) {
    sentVolts.add((float) bench.car.volts[MAP]);
    List<byte[]> out = new ArrayList<>();
    if (line == Line.SOUND) {
      out.add(frame);
    } else if (line == Line.WILD) {
      for (int i = 0; i < 6; i++) {
        spoil(frame, out);
      }
    }
    old.add(frame);
    if (old.size() > 64) {
      old.remove(0);
    }
    arrived += out.size();
    return out;
  }

  private void spoil(byte[] frame, List<byte[]> out) {
    switch (random.nextInt(12)) {
      case 0: // lost
        return;
      case 1, 2: // bits turned
        byte[] bad = frame.clone();
        for (int i = 0; i <= random.nextInt(6); i++) {
          bad[random.nextInt(bad.length)] ^= (byte) (1 << random.nextInt(8));
        }
        out.add(bad);
        spoiled++;
        return;
      case 3: // an old one again, and this one
        if (!old.isEmpty()) {
          out.add(old.get(random.nextInt(old.size())));
        }
        out.add(frame);
        return;
      case 4: // kept back
        held.add(frame);
        return;
      case 5: // what was kept back, in reverse order
        for (int i = held.size() - 1; i >= 0; i--) {
          out.add(held.get(i));
        }
        held.clear();
        out.add(frame);
        return;
      case 6: // invented bytes before it
        byte[] noise = new byte[random.nextInt(120)];
        random.nextBytes(noise);
        out.add(noise);
        out.add(frame);
        spoiled++;
        return;
      case 7: // right length and stuffing, content invented
        byte[] invented = frame.clone();
        for (int i = 2; i < invented.length - 1; i++) {
          invented[i] = (byte) (1 + random.nextInt(255));
        }
        invented[1] = (byte) (invented.length - 2);
        out.add(invented);
        spoiled++;
        return;
      default:
        out.add(frame);
    }
  }

  private static void assertAllowed(Outputs out) {
    boolean off = out.dutyFraction == 0.0 && !out.pwmEnabled && !out.coilSupplyClosed;
    boolean possible = out.dutyFraction >= 0.0 && out.dutyFraction <= 1.0;
    if (!possible || (out.state.isRest() && !off)) {
      throw new AssertionError(out.state + " with duty " + out.dutyFraction);
    }
  }

  @Test
  void framesOfEverythingThatCanGoWrongDoNoHarm() {
    long controlled = 0;
    int rounds = 0;
    for (; arrived < FRAMES; rounds++) {
      bench = new LinkBench(TestSettings.car());
      bench.toController = this::carry;
      held.clear();
      line = Line.SOUND;
      bench.driveToBoost();
      assertThat(bench.outputs.dutyFraction).isPositive();
      line = Line.WILD;
      for (int i = 0; i < WILD_TICKS; i++) {
        bench.delayNanos = random.nextInt(40) == 0 ? 30_000_000L : 300_000L;
        tick();
        controlled += bench.outputs.dutyFraction > 0.0 ? 1 : 0;
      }
      line = Line.SILENT;
      for (int i = 0; i < SILENT_TICKS; i++) {
        tick();
      }
      assertThat(bench.outputs.state.isRest()).isTrue();
    }
    System.out.printf(
        "link fuzz: %d frames arrived in %d rounds, %d spoiled, %d wrong ones used, %d wild ticks"
            + " with duty%n",
        arrived, rounds, spoiled, wrong, controlled);
    assertThat(controlled).isPositive();
    // Of spoiled frames 1 in 65536 passes the checksum at most, and few of those the window.
    assertThat(wrong).isLessThanOrEqualTo(10 + spoiled / 32_768);
  }

  private void tick() {
    int before = bench.controllerEnd.peer().sequence().last();
    bench.tick();
    assertAllowed(bench.outputs);
    int sequence = bench.controllerEnd.peer().sequence().last();
    if (sequence != before) {
      boolean sent = bench.rigEnd.nextSequence() - sequence > 0;
      wrong += sent && sentVolts.contains((float) bench.seen.volts[MAP]) ? 0 : 1;
    }
  }
}
