package org.boostwright.rig.bench;

import java.util.List;
import java.util.Random;
import org.boostwright.core.bench.BenchPlan;
import org.boostwright.core.bench.BenchRecord;
import org.boostwright.core.bench.BenchVerdict;
import org.boostwright.core.bench.Verdicts;
import org.jspecify.annotations.Nullable;

/**
 * One seeded session on a drawn bench, sound or with a mistake.
 *
 * @param setup the bench
 * @param plan what was asked
 * @param record what was measured
 * @param verdicts what was concluded
 */
public record BenchTrial(
    BenchSetup setup, BenchPlan plan, BenchRecord record, List<BenchVerdict> verdicts) {
  /** Frequency a person asks for who has not measured yet, Hz (common practice, no source). */
  private static final double USUAL_HZ = 30.0;

  /** Runs one; the same seed gives the same trial. */
  public static BenchTrial run(@Nullable BenchMistake mistake, long seed) {
    Random random = new Random(seed);
    BenchSetup setup = BenchSetup.draw(random);
    BenchPlan plan = BenchPlan.standard().withFrequencyHz(USUAL_HZ);
    if (mistake != null) {
      setup = mistake.setup(setup, random);
      plan = mistake.plan(plan, setup, random);
    }
    VirtualBench bench = new VirtualBench(setup, random.nextLong());
    Person person = new Person(bench);
    if (mistake != null) {
      mistake.apply(bench, person, random);
    }
    BenchRecord record = new VirtualSession(bench, person, plan).run().record();
    return new BenchTrial(setup, plan, record, Verdicts.of(record, plan));
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
