package org.boostwright.pi.web;

import java.io.IOException;
import java.util.Locale;
import org.boostwright.core.bench.BenchPlan;
import org.boostwright.core.bench.BenchStep;
import org.boostwright.core.record.LogFormat;
import org.boostwright.core.settings.UnitSettings;
import org.boostwright.core.state.Permission;
import org.boostwright.pi.loop.GuestBoost;
import org.boostwright.pi.loop.LatestTick;
import org.jspecify.annotations.Nullable;

/** What the page asks for once and not with every frame, and what it may ask to be done. */
final class PageState {
  private static final int RPM = LogFormat.column("engine_rpm");

  private final PageFacts facts;
  private final LiveFrame frame;
  private final FaultHistory history;
  private final BenchDesk bench;
  private final PageGuest guest;
  private final @Nullable GuestBoost driver;
  private final LatestTick latest;

  PageState(
      PageFacts facts,
      LiveFrame frame,
      FaultHistory history,
      BenchDesk bench,
      PageGuest guest,
      @Nullable GuestBoost driver,
      LatestTick latest) {
    this.facts = facts;
    this.frame = frame;
    this.history = history;
    this.bench = bench;
    this.guest = guest;
    this.driver = driver;
    this.latest = latest;
  }

  /** What does not change. */
  JsonText about(boolean canUnlock, boolean unlocked) {
    UnitSettings units = facts.settings().units();
    Permission permission = facts.permission();
    JsonText json = new JsonText().open();
    json.name("version").value(facts.version());
    json.name("unit").value(units.label());
    json.name("difference").value(units.pressure().label());
    json.name("can_unlock").value(canUnlock);
    json.name("unlocked").value(unlocked);
    json.name("wires").value(facts.io());
    json.name("digest").value(facts.digest());
    json.name("proof").value(facts.proof());
    json.name("allowed").value(allowed(permission));
    json.name("settings").value(facts.settingsText());
    json.name("steps").openList();
    for (BenchStep step : BenchStep.values()) {
      json.open();
      json.name("id").value(step.id());
      json.name("words").value(step.words());
      json.name("usual").value(BenchPlan.standard().steps().contains(step));
      json.close();
    }
    return json.closeList().close();
  }

  private static String allowed(Permission permission) {
    if (!permission.controlAllowed()) {
      return "This run may not move the valve with the engine running.";
    }
    return String.format(
        Locale.ROOT,
        "This run may use up to %.0f %% duty, %s pressure feedback.",
        100.0 * permission.dutyCeilingFraction(),
        permission.feedbackAllowed() ? "with" : "without");
  }

  /** Faults since the start with their freeze frames, newest first. */
  JsonText faults() {
    JsonText json = new JsonText().open();
    double[] now = new double[LogFormat.COLUMN_COUNT];
    double nanos = latest.read(now) ? now[LogFormat.TIME_NS] : Double.NaN;
    json.name("faults").openList();
    for (FaultHistory.Entry entry : history.entries()) {
      json.open();
      json.name("number").value(entry.number());
      double[] row = entry.frame();
      json.name("ago").value((nanos - row[LogFormat.TIME_NS]) * 1e-9, 0);
      json.name("fault");
      LiveFrame.fault(json, entry.code());
      frame.frame(json, row);
      json.close();
    }
    return json.closeList().close();
  }

  /**
   * Says who drives; null when it was taken over, else why not. Only with the engine stopped:
   * nobody is to find more boost under the foot than a moment ago.
   */
  @Nullable String drives(String who) {
    GuestBoost kept = driver;
    if (kept == null) {
      return "There is no guest setting; write limits.guest = true.";
    }
    if (!who.equals("guest") && !who.equals("owner")) {
      return "A guest or the owner.";
    }
    double[] now = new double[LogFormat.COLUMN_COUNT];
    if (!latest.read(now)) {
      return "Nothing ticks.";
    }
    if (now[RPM] != 0.0) {
      return "Only with the engine stopped.";
    }
    try {
      kept.set(who.equals("guest"));
      return null;
    } catch (IOException e) {
      return "It cannot be kept: " + e.getMessage();
    }
  }

  /** Begins a bench session; null when it began, else why not. */
  @Nullable String benchBegin(String steps) {
    double[] now = new double[LogFormat.COLUMN_COUNT];
    return latest.read(now) ? bench.begin(steps, now) : "Nothing ticks.";
  }

  /** Passes an answer on; null when it was, else why not. */
  @Nullable String benchAnswer(String question, String given) {
    return bench.answer(question, given);
  }

  /** Ends the session, coil off first. */
  void benchStop() {
    guest.stop();
  }
}
