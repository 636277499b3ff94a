package org.boostwright.rig.kernel;

import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.function.Consumer;
import org.boostwright.rig.link.CaseOutcome;

/** The cases of one guest, run one after the other. */
abstract class BenchCases {
  private final List<CaseOutcome> outcomes = new ArrayList<>();
  private final Consumer<CaseOutcome> each;

  BenchCases(Consumer<CaseOutcome> each) {
    this.each = each;
  }

  /** Collects what was wrong in a case, and how long its reaction took. */
  static final class Notes {
    final List<String> wrong = new ArrayList<>();
    final List<String> seen = new ArrayList<>();
    double reactionMillis = Double.NaN;
    boolean effect = true;

    /** Must be so. */
    void must(boolean so, String orElse) {
      if (!so) {
        wrong.add(orElse);
      }
    }
  }

  /** One case. */
  interface Work {
    void run(Notes notes) throws IOException;
  }

  /**
   * Runs a case.
   *
   * @param withinMillis longest reaction, in guest time, ms; NaN where none is laid down
   */
  void run(String id, String text, double withinMillis, Work work) throws IOException {
    Notes notes = new Notes();
    work.run(notes);
    if (!Double.isNaN(withinMillis) && !(notes.reactionMillis <= withinMillis)) {
      notes.wrong.add("too late");
    }
    CaseOutcome.Verdict verdict =
        !notes.effect
            ? CaseOutcome.Verdict.INVALID
            : notes.wrong.isEmpty() ? CaseOutcome.Verdict.PASSED : CaseOutcome.Verdict.FAILED;
    List<String> words =
        new ArrayList<>(notes.wrong.isEmpty() ? List.of("as it must be") : notes.wrong);
    words.addAll(notes.seen);
    add(
        new CaseOutcome(
            id,
            text,
            verdict,
            notes.reactionMillis,
            withinMillis,
            takePeak(),
            0.0, // nothing can be late: the guest waits for the rig
            String.join("; ", words)));
  }

  void add(CaseOutcome outcome) {
    outcomes.add(outcome);
    each.accept(outcome);
  }

  /** Highest true pressure of the case, kPa absolute; NaN where nothing turns. */
  abstract double takePeak();

  List<CaseOutcome> outcomes() {
    return List.copyOf(outcomes);
  }
}
