package org.boostwright.rig.bench;

import org.boostwright.core.bench.BenchInputs;
import org.boostwright.core.bench.BenchOutputs;
import org.boostwright.core.bench.BenchPlan;
import org.boostwright.core.bench.BenchSession;
import org.boostwright.core.bench.Question;

/** Runs the core's session on a virtual bench, sample by sample, in stepped time. */
public final class VirtualSession {
  private static final double LONGEST_SECONDS = 3600.0;

  private final VirtualBench bench;
  private final Person person;
  private final BenchSession session;
  private final BenchInputs inputs = new BenchInputs();
  private final BenchOutputs outputs = new BenchOutputs();

  /** A session that has not begun. */
  public VirtualSession(VirtualBench bench, Person person, BenchPlan plan) {
    this.bench = bench;
    this.person = person;
    session = new BenchSession(plan);
  }

  /** The core's session. */
  public BenchSession session() {
    return session;
  }

  /** What the session last commanded. */
  public BenchOutputs outputs() {
    return outputs;
  }

  /** What the session is told. */
  public BenchInputs inputs() {
    return inputs;
  }

  /** One sample; false once the session has finished. */
  public boolean step() {
    bench.sample(inputs);
    session.step(bench.nanos(), inputs, outputs);
    inputs.answered = false;
    bench.command(outputs);
    Question question = outputs.question;
    if (question != null) {
      inputs.answer = person.answer(question);
      inputs.answered = true;
    }
    return !session.finished();
  }

  /** Runs to the end. */
  public BenchSession run() {
    long limit = (long) (LONGEST_SECONDS / VirtualBench.SAMPLE_SECONDS);
    for (long i = 0; i < limit && step(); i++) {
      // Stepping is the work.
    }
    return session;
  }
}
