package org.boostwright.rig.kernel;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/**
 * Judges what the kernel was told about one PWM channel, apply by apply.
 *
 * <p>On hardware a cycle is cut or stretched when a running channel is given another period or
 * polarity, or is disabled and enabled for an update. So: the first apply after boot has duty 0 and
 * the channel disabled; while it runs only duty changes; it is disabled only with duty 0; it is
 * never inverted; duty is never beyond the period.
 */
final class PwmDiary {
  private final int channel;
  private final List<KernelEvent> applies = new ArrayList<>();
  private final List<String> wrongs = new ArrayList<>();
  private boolean sinceBoot;
  private long updates;

  PwmDiary(int channel) {
    this.channel = channel;
  }

  /** The machine was reset: what comes next is the first apply again. */
  void boot() {
    sinceBoot = false;
  }

  /** Takes an event; those of other channels and lines are not its business. */
  void take(KernelEvent event) {
    if (event.kind() != KernelEvent.Kind.PWM_APPLY || event.number() != channel) {
      return;
    }
    if (event.inverted()) {
      wrong(event, "polarity inverted");
    }
    if (!(event.dutyNanos() >= 0L && event.dutyNanos() <= event.periodNanos())) {
      wrong(event, "duty beyond the period");
    }
    if (sinceBoot) {
      judgeChange(applies.get(applies.size() - 1), event);
    } else if (event.on() || event.dutyNanos() != 0L) {
      wrong(event, "first apply after boot is not duty 0 and disabled");
    }
    sinceBoot = true;
    applies.add(event);
  }

  private void judgeChange(KernelEvent before, KernelEvent now) {
    if (before.on() && now.on()) {
      updates++;
      if (now.periodNanos() != before.periodNanos()) {
        wrong(now, "another period while running");
      }
    }
    if (before.on() && !now.on() && now.dutyNanos() != 0L) {
      wrong(now, "disabled with a duty above 0");
    }
    if (before.on() && !now.on() && before.dutyNanos() != 0L) {
      wrong(now, "disabled before duty was 0");
    }
  }

  private void wrong(KernelEvent event, String what) {
    wrongs.add(
        String.format(
            Locale.ROOT,
            "%s at %.6f s (period %d ns, duty %d ns, %s)",
            what,
            event.nanos() * 1e-9,
            event.periodNanos(),
            event.dutyNanos(),
            event.on() ? "enabled" : "disabled"));
  }

  /** Everything that was wrong so far, in words. */
  List<String> wrongs() {
    return List.copyOf(wrongs);
  }

  /** Applies so far. */
  int applies() {
    return applies.size();
  }

  /** Applies to a running channel that left it running. */
  long updates() {
    return updates;
  }

  /** Duty in force, 0 to 1; 0 while disabled or never told. */
  double dutyFraction() {
    return running() && last().periodNanos() > 0L
        ? (double) last().dutyNanos() / last().periodNanos()
        : 0.0;
  }

  /** The channel runs. */
  boolean running() {
    return sinceBoot && last().on();
  }

  /** Duty 0 and disabled, or not touched since boot. */
  boolean off() {
    return !sinceBoot || (!last().on() && last().dutyNanos() == 0L);
  }

  /** Frequency in force, Hz; 0 when there was none since boot. */
  double hz() {
    return sinceBoot && last().periodNanos() > 0L ? 1e9 / last().periodNanos() : 0.0;
  }

  /** Time of the last apply, ns; 0 before the first. */
  long lastNanos() {
    return applies.isEmpty() ? 0L : last().nanos();
  }

  private KernelEvent last() {
    return applies.get(applies.size() - 1);
  }
}
