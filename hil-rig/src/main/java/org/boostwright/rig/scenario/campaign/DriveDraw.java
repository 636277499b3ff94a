package org.boostwright.rig.scenario.campaign;

import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;
import org.boostwright.rig.scenario.fault.Drive;

/**
 * A drive as drawn.
 *
 * @param drive the drive
 * @param words its kind, in a word
 */
record DriveDraw(Drive drive, String words) {

  static DriveDraw of(SplittableRandom random) {
    return switch (random.nextInt(5)) {
      case 0 -> held(random);
      case 1 -> pull(random);
      case 2 -> partThrottle(random);
      case 3 -> liftOff(random);
      default -> tipIns(random);
    };
  }

  private static double between(SplittableRandom random, double low, double high) {
    return low + (high - low) * random.nextDouble();
  }

  private static Drive.Step throttle(double at, double pct) {
    return new Drive.Step(at, Drive.Act.THROTTLE_PCT, pct);
  }

  /** Full throttle at a held engine speed. */
  private static DriveDraw held(SplittableRandom random) {
    double rpm = between(random, 2500, 6400);
    return new DriveDraw(new Drive(rpm, 15.0, 0, 6.0, List.of(throttle(0.2, 100.0))), "held");
  }

  /** Full throttle in gear, changing up on the way. */
  private static DriveDraw pull(SplittableRandom random) {
    int gear = 2 + random.nextInt(3);
    double rpm = between(random, 2500, 4500);
    return new DriveDraw(new Drive(rpm, 15.0, gear, 8.0, List.of(throttle(0.2, 100.0))), "pull");
  }

  private static DriveDraw partThrottle(SplittableRandom random) {
    int gear = 2 + random.nextInt(4);
    double rpm = between(random, 2000, 5000);
    List<Drive.Step> steps = new ArrayList<>();
    for (double at = 0.2; at < 6.0; at += between(random, 0.8, 2.0)) {
      steps.add(throttle(at, between(random, 25.0, 90.0)));
    }
    return new DriveDraw(new Drive(rpm, 15.0, gear, 7.0, steps), "part throttle");
  }

  /** Boost, lift, boost again. */
  private static DriveDraw liftOff(SplittableRandom random) {
    int gear = 2 + random.nextInt(3);
    double rpm = between(random, 3000, 5000);
    double lift = between(random, 2.0, 4.0);
    double again = lift + between(random, 0.2, 2.5);
    return new DriveDraw(
        new Drive(
            rpm,
            15.0,
            gear,
            8.0,
            List.of(throttle(0.2, 100.0), throttle(lift, 0.0), throttle(again, 100.0))),
        "lift-off");
  }

  /** Short stabs of throttle at a held engine speed. */
  private static DriveDraw tipIns(SplittableRandom random) {
    double rpm = between(random, 2500, 6000);
    List<Drive.Step> steps = new ArrayList<>();
    boolean open = true;
    for (double at = 0.2; at < 6.5; at += between(random, 0.3, 1.8)) {
      steps.add(throttle(at, open ? between(random, 60.0, 100.0) : between(random, 0.0, 20.0)));
      open = !open;
    }
    return new DriveDraw(new Drive(rpm, 10.0, 0, 7.0, steps), "tip-ins");
  }
}
