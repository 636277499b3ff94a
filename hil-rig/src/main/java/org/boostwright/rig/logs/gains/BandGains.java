package org.boostwright.rig.logs.gains;

import java.util.List;
import org.boostwright.rig.logs.LoopMargins;
import org.boostwright.rig.logs.ParallelPid;
import org.boostwright.rig.logs.Simc;
import org.boostwright.rig.logs.identify.BandResponse;
import org.boostwright.rig.logs.identify.Fopdt;
import org.boostwright.rig.logs.identify.Sopdt;

/**
 * Gains for one engine speed.
 *
 * <p>SIMC for the second-order answer, every small lag of the loop counted as dead time. Then the
 * derivative is raised as far as the pace's Ms allows: boost arrives at its target moving fast, which
 * a tuning rule for a loop at rest does not reckon with, and the derivative is what brakes it.
 *
 * @param rpm engine speed, 1/min
 * @param model identified answer, kPa per unit of duty
 * @param simc SIMC's own gains, series form
 * @param gains the gains proposed
 * @param margins margins with that answer
 * @param worst worst margins over the answers the logs leave possible
 * @param amigo AMIGO's PID gains for the first-order answer, for comparison
 * @param amigoMargins their margins
 */
public record BandGains(
    double rpm,
    Sopdt model,
    Simc simc,
    ParallelPid gains,
    LoopMargins margins,
    LoopMargins worst,
    Amigo amigo,
    LoopMargins amigoMargins) {

  /** What measuring adds to the dead time: 10 ms and 3.3 ms filters, half a tick, s. */
  public static final double LOOP_LAG_SECONDS = 0.016;

  /** Filter of the derivative: the measurement is filtered as slowly already, s. */
  public static final double FILTER_SECONDS = 0.010;

  private static final int KD_STEPS = 40;

  /** Tunes for an answer and judges by others. */
  static BandGains tune(BandResponse answer, List<BandResponse> possible, Pace pace) {
    Sopdt model = answer.second();
    double effective = dead(model) + FILTER_SECONDS;
    Simc simc =
        Simc.tune(
            model.gain(),
            model.tau1Seconds(),
            model.tau2Seconds(),
            effective,
            pace.deadTimes() * effective);
    ParallelPid gains = withDerivative(ParallelPid.of(simc, FILTER_SECONDS), model, possible, pace);
    LoopMargins nominal = margins(gains, model);
    LoopMargins worst = nominal;
    for (BandResponse other : possible) {
      worst = worse(worst, margins(gains, other.second()));
    }
    Fopdt first = answer.model();
    Amigo amigo =
        Amigo.pid(
            new Fopdt(
                first.gain(), first.tauSeconds(), first.deadSeconds() + LOOP_LAG_SECONDS));
    return new BandGains(
        answer.rpm(),
        model,
        simc,
        gains,
        nominal,
        worst,
        amigo,
        margins(amigo.parallel(FILTER_SECONDS), model));
  }

  /** The largest derivative, up to a third of the law's time, with which Ms stays in bounds. */
  private static ParallelPid withDerivative(
      ParallelPid start, Sopdt model, List<BandResponse> possible, Pace pace) {
    ParallelPid best = start;
    double most = start.kp() * (model.tau1Seconds() + model.tau2Seconds());
    for (int i = 1; i <= KD_STEPS; i++) {
      ParallelPid tried = start.withKd(start.kd() + (most - start.kd()) * i / KD_STEPS);
      boolean fits = margins(tried, model).maxSensitivity() <= pace.maxSensitivity();
      for (BandResponse other : possible) {
        fits &= margins(tried, other.second()).maxSensitivity() <= Pace.WORST_SENSITIVITY;
      }
      if (!fits) {
        break;
      }
      best = tried;
    }
    return best;
  }

  /** How long boost takes to answer duty: every lag and dead time, s. */
  public double answerSeconds() {
    return model.tau1Seconds() + model.tau2Seconds() + dead(model);
  }

  private static double dead(Sopdt model) {
    return Math.max(0.0, model.deadSeconds()) + LOOP_LAG_SECONDS;
  }

  private static LoopMargins margins(ParallelPid law, Sopdt model) {
    return LoopMargins.of(
        law, model.gain(), model.tau1Seconds(), model.tau2Seconds(), dead(model));
  }

  private static LoopMargins worse(LoopMargins a, LoopMargins b) {
    return new LoopMargins(
        Math.max(a.maxSensitivity(), b.maxSensitivity()),
        Math.min(a.gainMargin(), b.gainMargin()),
        Math.min(a.phaseMarginDegrees(), b.phaseMarginDegrees()),
        Math.min(a.delayMarginSeconds(), b.delayMarginSeconds()));
  }
}
