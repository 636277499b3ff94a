package org.boostwright.rig.logs.gains;

import java.util.ArrayList;
import java.util.List;
import org.boostwright.core.settings.FeedbackSettings;
import org.boostwright.core.settings.Settings;
import org.boostwright.core.settings.SpoolSettings;
import org.boostwright.core.table.Axis;
import org.boostwright.core.table.Curve;
import org.boostwright.rig.logs.identify.BandResponse;
import org.boostwright.rig.logs.identify.CarTwin;
import org.boostwright.rig.plant.Atmosphere;
import org.boostwright.rig.plant.PlantParams;

/**
 * Gains of the pressure feedback over engine speed.
 *
 * @param pace what the user chose
 * @param bands gains at each engine speed, rising
 * @param trackingSeconds anti-windup time: the longest integral time, s (back-calculation with Tt =
 *     Ti: Astrom and Hagglund, <i>Advanced PID Control</i>, ISA 2006, section 3.5)
 * @param leadSeconds how far ahead the spool strategy should look: as long as boost takes to answer
 *     duty, s
 */
public record GainAdvice(
    Pace pace, List<BandGains> bands, double trackingSeconds, double leadSeconds) {
  private static final double LOWEST_RPM = 3500.0;
  private static final double STEP_RPM = 1250.0;
  private static final int DRAWS = 5;

  /** The integral waits until pressure is this near: it must not wind while boost arrives, kPa. */
  public static final double ACTIVE_WITHIN_KPA = 8.0;


  /** Copies the list. */
  public GainAdvice {
    bands = List.copyOf(bands);
  }

  /** Works the gains out for a fitted car. */
  public static GainAdvice of(CarTwin twin, Atmosphere air, Settings settings, Pace pace, long seed) {
    List<PlantParams> possible = twin.draws(DRAWS, seed);
    List<BandGains> bands = new ArrayList<>();
    double tracking = 0.0;
    double lead = 0.0;
    for (double rpm = LOWEST_RPM; rpm <= settings.car().redlineRpm(); rpm += STEP_RPM) {
      BandResponse answer = BandResponse.of(twin.car(), air, settings, rpm);
      List<BandResponse> others = new ArrayList<>();
      for (PlantParams car : possible) {
        others.add(BandResponse.of(car, air, settings, rpm));
      }
      BandGains band = BandGains.tune(answer, others, pace);
      tracking = Math.max(tracking, band.gains().kp() / band.gains().ki());
      lead = Math.max(lead, band.answerSeconds());
      bands.add(band);
    }
    return new GainAdvice(pace, bands, tracking, lead);
  }

  /** The settings with these gains, feedback switched on. */
  public Settings in(Settings settings) {
    int n = bands.size();
    double[] rpm = new double[n];
    double[] kp = new double[n];
    double[] ki = new double[n];
    double[] kd = new double[n];
    for (int i = 0; i < n; i++) {
      rpm[i] = bands.get(i).rpm();
      kp[i] = bands.get(i).gains().kp();
      ki[i] = bands.get(i).gains().ki();
      kd[i] = bands.get(i).gains().kd();
    }
    Axis axis = new Axis(rpm);
    SpoolSettings spool = settings.spool();
    return settings
        .withFeedback(
            new FeedbackSettings(
                true,
                new Curve(axis, kp),
                new Curve(axis, ki),
                new Curve(axis, kd),
                trackingSeconds,
                BandGains.FILTER_SECONDS,
                ACTIVE_WITHIN_KPA))
        .withSpool(
            new SpoolSettings(
                spool.enabled(), leadSeconds, spool.timeLimitSeconds(), spool.minRiseKpaPerSecond()));
  }
}
