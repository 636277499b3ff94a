package org.boostwright.rig.scenario.fault;

import org.boostwright.core.AnalogChannel;
import org.boostwright.core.Inputs;
import org.boostwright.rig.inject.FaultyRun;
import org.boostwright.rig.inject.Site;
import org.boostwright.rig.plant.VirtualCar;

/**
 * The proof that a fault took effect: something at its place differs, to the bit, from the same
 * drive without it.
 */
final class Difference {
  private Difference() {}

  /** True when the two runs differ at a site in this tick. */
  static boolean at(Site site, FaultyRun with, FaultyRun without) {
    Inputs a = with.run().inputs();
    Inputs b = without.run().inputs();
    return switch (site) {
      case MAP_INPUT -> channel(AnalogChannel.MAP.ordinal(), a, b);
      case OTHER_INPUT -> others(a, b);
      case PULSES ->
          a.engineSeen != b.engineSeen
              || a.enginePulseNanos != b.enginePulseNanos
              || differ(a.enginePeriodNanos, b.enginePeriodNanos);
      case SWITCHES ->
          a.keyOn != b.keyOn
              || a.permit != b.permit
              || a.coilFeed != b.coilFeed
              || a.outputsWrong != b.outputsWrong;
      case COIL ->
          differ(with.car().coilAmps(), without.car().coilAmps())
              || with.car().spoolEnergised() != without.car().spoolEnergised();
      case SPOOL -> with.car().spoolEnergised() != without.car().spoolEnergised();
      case CAR -> car(with.car(), without.car());
      case TIME ->
          with.run().nowNanos() != without.run().nowNanos()
              || with.programStands() != without.programStands();
    };
  }

  private static boolean channel(int i, Inputs a, Inputs b) {
    return a.answered[i] != b.answered[i]
        || a.sampleNanos[i] != b.sampleNanos[i]
        || differ(a.volts[i], b.volts[i]);
  }

  private static boolean others(Inputs a, Inputs b) {
    for (int i = 0; i < AnalogChannel.COUNT; i++) {
      if (i != AnalogChannel.MAP.ordinal() && channel(i, a, b)) {
        return true;
      }
    }
    return false;
  }

  private static boolean car(VirtualCar a, VirtualCar b) {
    return differ(a.mapKpaAbs(), b.mapKpaAbs())
        || differ(a.actuatorKpaGauge(), b.actuatorKpaGauge())
        || differ(a.wastegateLift(), b.wastegateLift())
        || differ(a.recirculationOpen(), b.recirculationOpen())
        || differ(a.throttlePct(), b.throttlePct())
        || differ(a.ambientKpaAbs(), b.ambientKpaAbs());
  }

  private static boolean differ(double a, double b) {
    return Double.doubleToLongBits(a) != Double.doubleToLongBits(b);
  }
}
