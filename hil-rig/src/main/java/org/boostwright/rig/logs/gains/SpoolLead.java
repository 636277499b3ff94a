package org.boostwright.rig.logs.gains;

import org.boostwright.core.settings.Settings;
import org.boostwright.core.settings.SpoolSettings;
import org.boostwright.rig.plant.Atmosphere;
import org.boostwright.rig.plant.PlantParams;
import org.boostwright.rig.scenario.PullMeasures;
import org.boostwright.rig.scenario.PullPlan;
import org.boostwright.rig.scenario.VirtualPull;

/** How far ahead the spool strategy has to look, tried on the fitted car from long to short. */
final class SpoolLead {
  private static final double LONGEST_SECONDS = 0.68;
  private static final double SHORTEST_SECONDS = 0.20;
  private static final double STEP_SECONDS = 0.04;
  private static final double OVERSHOOT_KPA = 2.5;
  private static final double TO_RPM = 5200.0;

  private SpoolLead() {}

  /** The shortest lead that keeps overshoot within 2.5 kPa; the longest tried when none does. */
  static double find(PlantParams car, Atmosphere air, Settings settings) {
    if (!settings.spool().enabled()) {
      return settings.spool().leadSeconds();
    }
    double best = LONGEST_SECONDS;
    for (double lead = LONGEST_SECONDS; lead >= SHORTEST_SECONDS; lead -= STEP_SECONDS) {
      SpoolSettings spool = settings.spool();
      Settings tried =
          settings.withSpool(
              new SpoolSettings(
                  true, lead, spool.timeLimitSeconds(), spool.minRiseKpaPerSecond()));
      PullPlan plan = PullPlan.STANDARD.to(TO_RPM).inAir(0.0, air.kelvin() - 273.15);
      PullMeasures pull = PullMeasures.of(VirtualPull.run(tried, car, plan, share -> {}));
      if (!(pull.overshootKpa() <= OVERSHOOT_KPA)) {
        break;
      }
      best = lead;
    }
    return Math.rint(best * 100.0) / 100.0;
  }
}
