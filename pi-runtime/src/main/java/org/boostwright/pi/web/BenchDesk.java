package org.boostwright.pi.web;

import java.util.EnumSet;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import org.boostwright.core.bench.AbortReason;
import org.boostwright.core.bench.BenchPlan;
import org.boostwright.core.bench.BenchRecord;
import org.boostwright.core.bench.BenchStep;
import org.boostwright.core.bench.BenchVerdict;
import org.boostwright.core.bench.Question;
import org.boostwright.core.bench.TickedBench;
import org.boostwright.core.bench.Verdicts;
import org.boostwright.core.bench.model.Coil;
import org.boostwright.core.bench.model.ValveFitResult;
import org.boostwright.core.record.LogFormat;
import org.boostwright.core.settings.Settings;
import org.boostwright.core.state.SafetyState;
import org.jspecify.annotations.Nullable;

/** The bench at the page: begins a session, passes answers on, says what came of it. */
final class BenchDesk {
  /** Inductance and voltage a plan assumes where the settings name none. */
  private static final double COIL_HENRIES = 0.1;

  private static final double COIL_VOLTS = 14.0;
  private static final int RPM = LogFormat.column("engine_rpm");

  private final Settings settings;
  private final PageGuest guest;

  BenchDesk(Settings settings, PageGuest guest) {
    this.settings = settings;
    this.guest = guest;
  }

  /**
   * Begins a session.
   *
   * @param steps names of the steps separated by commas; empty for the usual ones
   * @param row the newest tick
   * @return why not, for people; null when it began
   */
  @Nullable String begin(String steps, double[] row) {
    if (row[RPM] != 0.0) {
      return "The engine turns. The bench needs it stopped.";
    }
    SafetyState state = SafetyState.values()[(int) row[LogFormat.STATE]];
    if (row[LogFormat.FAULTS] != 0.0 && state.isRest()) {
      return "A fault is confirmed. Put it right first.";
    }
    Set<BenchStep> chosen = EnumSet.noneOf(BenchStep.class);
    for (String name : steps.split(",")) {
      if (!name.isBlank()) {
        BenchStep step = step(name);
        if (step == null) {
          return "There is no such step.";
        }
        chosen.add(step);
      }
    }
    BenchPlan plan =
        BenchPlan.standard()
            .withFrequencyHz(settings.valve().frequencyHz())
            .withCoil(new Coil(settings.valve().coilOhms(), COIL_HENRIES, COIL_VOLTS))
            .withSettingsWindow(
                settings.valve().windowLowDuty(), settings.valve().windowHighDuty());
    if (!chosen.isEmpty()) {
      plan = plan.withSteps(chosen);
    }
    return guest.begin(new TickedBench(plan, settings)) ? null : "A session runs already.";
  }

  private static @Nullable BenchStep step(String name) {
    for (BenchStep step : BenchStep.values()) {
      if (step.id().equals(name.strip())) {
        return step;
      }
    }
    return null;
  }

  /**
   * Passes an answer on.
   *
   * @return why not, for people; null when it was passed on
   */
  @Nullable String answer(String questionId, String given) {
    Question open = guest.question();
    if (open == null || !id(open).equals(questionId)) {
      return "That question is not open any more.";
    }
    BenchAnswer answer = BenchAnswer.read(open, given, settings.units().pressure());
    if (answer.complaint() == null) {
      guest.tell(new PageGuest.Answer(open, answer.value()));
    }
    return answer.complaint();
  }

  private static String id(Question question) {
    return question.name().toLowerCase(Locale.ROOT);
  }

  /** Where the session is and what came of the last one. */
  void write(JsonText json) {
    json.open();
    json.name("busy").value(guest.busy());
    BenchStep step = guest.step();
    json.name("step").value(guest.busy() && step != null ? step.words() : "");
    Question question = guest.question();
    if (guest.busy() && question != null) {
      json.name("question").open();
      json.name("id").value(id(question));
      json.name("words").value(question.words());
      json.name("answer").value(question.answer());
      json.name("form").value(BenchAnswer.form(question).name().toLowerCase(Locale.ROOT));
      json.close();
    }
    TickedBench ended = guest.ended();
    if (!guest.busy() && ended != null) {
      json.name("ended").open();
      ended(json, ended);
      json.close();
    }
    json.close();
  }

  private static void ended(JsonText json, TickedBench bench) {
    BenchRecord record = bench.session().record();
    AbortReason aborted = record.aborted;
    List<BenchVerdict> verdicts = Verdicts.of(record, bench.session().plan());
    json.name("good").value(aborted == null && Verdicts.sound(verdicts));
    json.name("words")
        .value(
            aborted != null
                ? "Stopped: " + aborted.words() + ". Next: " + aborted.next() + "."
                : verdicts.isEmpty()
                    ? "Done. Nothing stands against this valve."
                    : "Done. Read what was found.");
    json.name("found").openList();
    for (BenchVerdict verdict : verdicts) {
      json.open();
      json.name("text").value(verdict.text());
      json.name("next").value(verdict.code().next());
      json.close();
    }
    json.closeList();
    ValveFitResult fit = record.fit;
    if (fit != null) {
      double hz = bench.session().plan().frequencyHz();
      json.name("window")
          .value(
              String.format(
                  Locale.ROOT,
                  "Usable duty at %.0f Hz: %.1f to %.1f %%",
                  hz,
                  100.0 * fit.windowLowDuty(hz).value(),
                  100.0 * fit.windowHighDuty(hz).value()));
    }
  }
}
