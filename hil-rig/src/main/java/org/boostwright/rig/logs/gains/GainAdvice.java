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
 * @param trackingSeconds anti-windup time: the longest integral time, s
 * @param leadSeconds how far ahead the spool strategy should look, s
 */
public record GainAdvice(
    Pace pace, List<BandGains> bands, double trackingSeconds, double leadSeconds) {
  private static final double LOWEST_RPM = 3500.0;
  private static final double STEP_RPM = 1250.0;
  private static final int DRAWS = 5;

  /** Copies the list. */
  public GainAdvice {
    bands = List.copyOf(bands);
  }

  /** Works the gains out for a fitted car. */
  public static GainAdvice of(CarTwin twin, Atmosphere air, Settings settings, Pace pace, long seed) {
    List<PlantParams> possible = twin.draws(DRAWS, seed);
    List<BandGains> bands = new ArrayList<>();
    double tracking = 0.0;
    for (double rpm = LOWEST_RPM; rpm <= settings.car().redlineRpm(); rpm += STEP_RPM) {
      BandResponse answer = BandResponse.of(twin.car(), air, settings, rpm);
      List<BandResponse> others = new ArrayList<>();
      for (PlantParams car : possible) {
        others.add(BandResponse.of(car, air, settings, rpm));
      }
      BandGains band = BandGains.tune(answer, others, pace);
      tracking = Math.max(tracking, band.gains().kp() / band.gains().ki());
      bands.add(band);
    }
    GainAdvice gains = new GainAdvice(pace, bands, tracking, settings.spool().leadSeconds());
    return new GainAdvice(pace, bands, tracking, SpoolLead.find(twin.car(), air, gains.in(settings)));
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
    FeedbackSettings old = settings.feedback();
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
                old.activeWithinKpa()))
        .withSpool(
            new SpoolSettings(
                spool.enabled(), leadSeconds, spool.timeLimitSeconds(), spool.minRiseKpaPerSecond()));
  }
}
