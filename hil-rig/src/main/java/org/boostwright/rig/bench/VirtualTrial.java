package org.boostwright.rig.bench;

import java.util.List;
import java.util.Optional;
import java.util.Random;
import java.util.function.Consumer;
import org.boostwright.core.bench.BenchPlan;
import org.boostwright.core.bench.BenchRecord;
import org.boostwright.core.bench.BenchStep;
import org.boostwright.core.bench.BenchVerdict;
import org.boostwright.core.bench.Verdicts;

/**
 * One seeded session on a virtual bench, sound or with a mistake.
 *
 * @param setup the bench
 * @param plan what was asked
 * @param record what was measured
 * @param verdicts what was concluded
 */
public record VirtualTrial(
    BenchSetup setup, BenchPlan plan, BenchRecord record, List<BenchVerdict> verdicts) {
  /** Frequency a person asks for who has not measured yet, Hz (common practice, no source). */
  private static final double USUAL_HZ = 30.0;

  /** Runs one on a bench drawn by the seed; the same seed gives the same trial. */
  public static VirtualTrial drawn(Optional<BenchMistake> mistake, long seed) {
    Random random = new Random(seed);
    BenchSetup setup = BenchSetup.draw(random);
    return run(
        setup,
        BenchPlan.standard().withFrequencyHz(USUAL_HZ),
        mistake,
        random.nextLong(),
        step -> {});
  }

  /**
   * Runs one on a given bench.
   *
   * @param steps told of each step as it begins
   */
  public static VirtualTrial run(
      BenchSetup sound,
      BenchPlan wanted,
      Optional<BenchMistake> mistake,
      long seed,
      Consumer<BenchStep> steps) {
    Random random = new Random(seed);
    BenchSetup setup = sound;
    BenchPlan plan = wanted;
    if (mistake.isPresent()) {
      setup = mistake.get().setup(setup, random);
      plan = mistake.get().plan(plan, setup, random);
    }
    VirtualBench bench = new VirtualBench(setup, random.nextLong());
    Person person = new Person(bench);
    if (mistake.isPresent()) {
      mistake.get().apply(bench, person, random);
    }
    VirtualSession session = new VirtualSession(bench, person, plan);
    BenchStep before = null;
    while (session.step()) {
      BenchStep now = session.session().step();
      if (now != null && now != before) {
        steps.accept(now);
        before = now;
      }
    }
    BenchRecord record = session.session().record();
    return new VirtualTrial(setup, plan, record, Verdicts.of(record, plan));
  }

  /** True when the first, most severe verdict is a right one for the mistake. */
  public boolean names(BenchMistake mistake) {
    return !verdicts.isEmpty() && mistake.right().contains(verdicts.get(0).code());
  }

  /** True when nothing stands in the way of a proof. */
  public boolean passed() {
    return Verdicts.sound(verdicts);
  }
}
