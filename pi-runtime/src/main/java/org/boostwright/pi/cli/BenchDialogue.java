package org.boostwright.pi.cli;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.PrintStream;
import java.util.Locale;
import java.util.concurrent.locks.LockSupport;
import org.boostwright.core.bench.BenchStep;
import org.boostwright.core.bench.Question;
import org.boostwright.core.settings.PressureUnit;
import org.boostwright.pi.bench.BenchGuest;
import org.boostwright.pi.bench.TypedAnswer;
import org.jspecify.annotations.Nullable;

/** Puts a session's questions to the person at the bench, and tells which step runs. */
final class BenchDialogue {
  private static final long LOOK_NANOS = 20_000_000L;

  private final BenchGuest guest;
  private final BufferedReader in;
  private final PrintStream out;
  private final PressureUnit unit;
  private final boolean quiet;
  private @Nullable BenchStep told;

  BenchDialogue(
      BenchGuest guest, BufferedReader in, PrintStream out, PressureUnit unit, boolean quiet) {
    this.guest = guest;
    this.in = in;
    this.out = out;
    this.unit = unit;
    this.quiet = quiet;
  }

  /** Until the session has finished. Whatever goes wrong ends it, coil off. */
  void run() {
    try {
      while (!guest.finished()) {
        tellStep();
        Question question = guest.question();
        if (question == null) {
          LockSupport.parkNanos(LOOK_NANOS);
        } else {
          ask(question);
        }
      }
    } catch (IOException e) {
      out.println("nothing more can be read: " + e.getMessage());
      guest.abort();
    }
  }

  private void tellStep() {
    BenchStep now = guest.step();
    if (now != null && now != told && !quiet) {
      out.println(now.id() + ": " + now.words());
    }
    told = now;
  }

  private void ask(Question question) throws IOException {
    out.println();
    out.println("[" + question.name() + "] " + question.words());
    while (!guest.finished()) {
      out.print("  " + question.answer() + "; ? unknown; stop: ");
      out.flush();
      String line = in.readLine();
      if (line == null || line.strip().toLowerCase(Locale.ROOT).equals("stop")) {
        guest.abort();
        return;
      }
      TypedAnswer answer = TypedAnswer.parse(question, line, unit);
      if (answer.complaint() == null) {
        guest.answer(answer.number());
        return;
      }
      out.println(answer.complaint());
    }
  }
}
