package org.boostwright.rig.logs.diagnosis;

import java.util.Arrays;
import java.util.function.DoubleFunction;
import org.boostwright.core.monitor.FaultCode;
import org.boostwright.core.settings.Settings;
import org.boostwright.core.state.SafetyState;
import org.boostwright.rig.logs.identify.RecordedDrive;
import org.boostwright.rig.logs.pulls.DriveLog;
import org.boostwright.rig.logs.pulls.Pull;
import org.boostwright.rig.logs.pulls.Swing;
import org.boostwright.rig.plant.ActuatorParams;
import org.boostwright.rig.plant.PlantParams;
import org.boostwright.rig.plant.ValveParams;

/**
 * What a pull shows, measured against a car that is sound: the reference car led through the same
 * engine speeds and throttle with the recorded duty, on its spring alone, and with its gate shut.
 *
 * @param ambientErrorKpa recorded less true ambient pressure, kPa; NaN when the true one is unknown
 * @param overboost overboost was confirmed
 * @param overAtTripKpa pressure over target when it was, kPa; NaN
 * @param afterHandoverKpa highest over target within 0.8 s of the end of spooling, kPa; NaN
 * @param laterKpa mean over target from 1.2 to 2.2 s after it, kPa; NaN
 * @param swing swinging of the pressure once settled
 * @param trimSwing swinging of the trim then
 * @param riseShare pressure gained while spooling, before any gate opens, over what the reference
 *     gained; NaN
 * @param midKpa recorded less explained pressure once settled, below 4800 1/min, kPa; NaN
 * @param highKpa the same above 5400 1/min, kPa; NaN
 * @param errorMidKpa recorded pressure less target, below 4800 1/min, kPa; NaN
 * @param errorHighKpa the same in the last 400 1/min, kPa; NaN
 * @param overSpringKpa recorded pressure over the reference's on its spring, duty above 25 %, kPa
 * @param explainedOverSpringKpa explained pressure over the same, kPa
 * @param belowShutKpa the reference's pressure with its gate shut less the recorded, last third,
 *     kPa
 * @param springBelowShutKpa the same for the reference on its spring, kPa
 * @param atRestKpa recorded less explained pressure after half a second of rest at full throttle,
 *     kPa; NaN
 * @param sagOffKpa root mean square off the settled pressures, of the reference once its lever lets
 *     the exhaust push the gate as far as they ask for, kPa; NaN where nothing is missing
 * @param windowOffKpa the same of the reference once its valve switches on as late as they ask for
 * @param dutyAtTop share of the last 400 1/min with duty or trim at its top, 0 to 1
 * @param ceilingShare share of the settled points with duty at its ceiling, 0 to 1; NaN
 * @param ceilingShortKpa target less recorded pressure at these, kPa; NaN
 * @param trimHigh share of the last 400 1/min with trim within its cap, as duty; NaN
 * @param localDuty largest deviation of the duty needed from a straight line over engine speed, as
 *     duty; NaN
 * @param evenDuty mean deviation of the duty needed from base duty, as duty; NaN
 */
record Symptoms(
    double ambientErrorKpa,
    boolean overboost,
    double overAtTripKpa,
    double afterHandoverKpa,
    double laterKpa,
    Swing swing,
    Swing trimSwing,
    double riseShare,
    double midKpa,
    double highKpa,
    double errorMidKpa,
    double errorHighKpa,
    double overSpringKpa,
    double explainedOverSpringKpa,
    double belowShutKpa,
    double springBelowShutKpa,
    double atRestKpa,
    double sagOffKpa,
    double windowOffKpa,
    double dutyAtTop,
    double ceilingShare,
    double ceilingShortKpa,
    double trimHigh,
    double localDuty,
    double evenDuty) {

  private static final double KPA_PER_DUTY = 150.0;

  /** A softer spring than this would hold no boost worth having, kPa gauge. */
  private static final double GATE_SHUT_KPA = 45.0;

  private static final int HALF_SECOND_ROWS = 100;

  /** Less missing than this is not asked where it went, kPa. */
  private static final double MISSING_KPA = 5.0;

  private static final int HALVINGS = 7;

  static Symptoms of(Pull pull, Settings settings, PlantParams reference, double trueAmbientKpa) {
    return new Reading(pull, settings, reference).symptoms(trueAmbientKpa);
  }

  /** One pull being read. */
  private static final class Reading {
    private final Pull pull;
    private final DriveLog log;
    private final Settings settings;
    private final PlantParams car;
    private final double[] recorded;
    private final double[] explained;
    private final double[] spring;
    private final double[] shut;

    Reading(Pull pull, Settings settings, PlantParams reference) {
      this.pull = pull;
      this.settings = settings;
      log = pull.log();
      car = reference.withPwmHz(settings.valve().frequencyHz());
      recorded = RecordedDrive.recorded(pull);
      explained = RecordedDrive.driven(car, pull);
      spring = RecordedDrive.driven(car, pull, 0.0);
      shut = RecordedDrive.driven(car, pull, 1.0);
    }

    private interface Rows {
      boolean holds(int point, int row);
    }

    private interface Value {
      double at(int point, int row);
    }

    private double mean(Rows rows, Value value) {
      double sum = 0.0;
      int n = 0;
      for (int i = 0; i < recorded.length; i++) {
        int row = RecordedDrive.row(pull, i);
        if (rows.holds(i, row)) {
          sum += value.at(i, row);
          n++;
        }
      }
      return n == 0 ? Double.NaN : sum / n;
    }

    private int spoolEnd() {
      int end = -1;
      for (int r = pull.from(); r < pull.to(); r++) {
        end = log.spooling(r) ? r : end;
      }
      return end;
    }

    private boolean controlled(int row) {
      return log.state(row) == SafetyState.CONTROLLING && !log.spooling(row);
    }

    Symptoms symptoms(double trueAmbientKpa) {
      int handover = spoolEnd();
      double handoverSeconds = handover < 0 ? Double.NaN : log.seconds(handover);
      Rows settled =
          (i, r) ->
              controlled(r)
                  && Math.abs(log.rateKpaPerSecond(r)) < 15.0
                  && !(log.seconds(r) - handoverSeconds < 0.7);
      double lastRpm = pull.toRpm() - 400.0;
      Rows mid = (i, r) -> settled.holds(i, r) && log.rpm(r) > 3700 && log.rpm(r) < 4800;
      Rows high = (i, r) -> settled.holds(i, r) && log.rpm(r) > 5400;
      Rows last = (i, r) -> controlled(r) && log.rpm(r) > lastRpm;
      Value over = (i, r) -> recorded[i] - log.targetKpaAbs(r);
      Value unexplained = (i, r) -> recorded[i] - explained[i];
      double third = pull.from() + 2.0 * (pull.to() - pull.from()) / 3.0;
      int trip = trip();
      double[] duty = dutyNeeded(settled);
      int[] swinging = swingingRows(handover);
      boolean missing = mean(settled, unexplained) < -MISSING_KPA;
      return new Symptoms(
          pull.ambientKpaAbs() - trueAmbientKpa,
          trip >= 0,
          trip < 0 ? Double.NaN : log.meanKpaAbs(trip) - log.targetKpaAbs(trip),
          highest(handover, 0.0, 0.8),
          mean((i, r) -> within(r, handoverSeconds, 1.2, 2.2) && controlled(r), over),
          Swing.ofPressure(log, swinging[0], swinging[1]),
          Swing.ofTrim(log, swinging[0], swinging[1]),
          riseShare(),
          mean(mid, unexplained),
          mean(high, unexplained),
          mean(mid, over),
          mean(last, over),
          mean(
              (i, r) -> settled.holds(i, r) && log.dutyFraction(r) > 0.25,
              (i, r) -> recorded[i] - spring[i]),
          mean(
              (i, r) -> settled.holds(i, r) && log.dutyFraction(r) > 0.25,
              (i, r) -> explained[i] - spring[i]),
          mean((i, r) -> r > third, (i, r) -> shut[i] - recorded[i]),
          mean((i, r) -> r > third, (i, r) -> shut[i] - spring[i]),
          mean((i, r) -> log.state(r).isRest() && rested(r), unexplained),
          missing ? rival(settled, this::lever, 1.5) : Double.NaN,
          missing ? rival(settled, this::late, 10e-3) : Double.NaN,
          mean(last, (i, r) -> atTop(r) ? 1.0 : 0.0),
          mean(settled, (i, r) -> atCeiling(r) ? 1.0 : 0.0),
          -mean((i, r) -> settled.holds(i, r) && atCeiling(r), over),
          mean(last, (i, r) -> log.trimFraction(r)),
          duty[0],
          duty[1]);
    }

    private PlantParams lever(double more) {
      ActuatorParams a = car.actuator();
      return car.withActuator(a.withLeverRatio(a.leverRatio() + more));
    }

    private PlantParams late(double seconds) {
      ValveParams v = car.valve();
      return car.withValve(v.withDelays(v.onDelaySeconds() + seconds, v.offDelaySeconds()));
    }

    /** How far off settled pressures a rival explanation stays once it meets their mean, kPa. */
    private double rival(Rows settled, DoubleFunction<PlantParams> changed, double most) {
      double low = 0.0;
      double high = most;
      double[] other = explained;
      for (int i = 0; i < HALVINGS; i++) {
        double middle = 0.5 * (low + high);
        double[] now = RecordedDrive.driven(changed.apply(middle), pull);
        if (mean(settled, (p, r) -> now[p] - recorded[p]) > 0.0) {
          low = middle;
        } else {
          high = middle;
        }
        other = now;
      }
      double[] met = other;
      double off = mean(settled, (p, r) -> met[p] - recorded[p]);
      return Math.sqrt(mean(settled, (p, r) -> Math.pow(met[p] - recorded[p] - off, 2)));
    }

    private boolean rested(int row) {
      return row - HALF_SECOND_ROWS > pull.from() && log.state(row - HALF_SECOND_ROWS).isRest();
    }

    private boolean within(int row, double start, double from, double to) {
      double since = log.seconds(row) - start;
      return since >= from && since <= to;
    }

    private int trip() {
      for (int r = pull.from(); r < pull.to(); r++) {
        if ((log.faults(r) & FaultCode.OVERBOOST.bit()) != 0L) {
          return r;
        }
      }
      return -1;
    }

    private double highest(int handover, double from, double to) {
      double most = Double.NaN;
      for (int r = Math.max(pull.from(), handover); handover >= 0 && r < pull.to(); r++) {
        if (within(r, log.seconds(handover), from, to)) {
          double over = log.meanKpaAbs(r) - log.targetKpaAbs(r);
          most = Double.isNaN(most) ? over : Math.max(most, over);
        }
      }
      return most;
    }

    private int[] swingingRows(int handover) {
      int from = handover < 0 ? pull.from() + (pull.to() - pull.from()) / 3 : handover;
      int to = from;
      while (to < pull.to() && (to - from < 100 || controlled(to))) {
        to++;
      }
      return new int[] {Math.min(from + 100, to), to};
    }

    private boolean atCeiling(int row) {
      return log.dutyFraction(row) >= settings.limits().dutyCeiling().at(log.rpm(row)) - 0.006;
    }

    private boolean atTop(int row) {
      return atCeiling(row)
          || log.dutyFraction(row) >= settings.valve().windowHighDuty() - 0.006
          || log.trimFraction(row) >= settings.limits().trimCapDuty() - 0.006;
    }

    /** Pressure gained in the spooling phase over what the reference gained in the same time. */
    private double riseShare() {
      int first = -1;
      int end = -1;
      for (int i = 0; i < recorded.length; i++) {
        int row = RecordedDrive.row(pull, i);
        if (log.spooling(row) && recorded[i] < pull.ambientKpaAbs() + GATE_SHUT_KPA) {
          first = first < 0 ? i : first;
          end = i;
        }
      }
      return end - first < 3
          ? Double.NaN
          : (recorded[end] - recorded[first]) / (explained[end] - explained[first]);
    }

    /** Deviation of the duty needed from base duty: largest off a straight line, and mean. */
    private double[] dutyNeeded(Rows settled) {
      double[] x = new double[recorded.length];
      double[] y = new double[recorded.length];
      int n = 0;
      for (int i = 0; i < recorded.length; i++) {
        int row = RecordedDrive.row(pull, i);
        if (settled.holds(i, row)) {
          x[n] = log.rpm(row);
          y[n] =
              log.dutyFraction(row)
                  - log.baseFraction(row)
                  + (log.targetKpaAbs(row) - recorded[i]) / KPA_PER_DUTY;
          n++;
        }
      }
      if (n < 8) {
        return new double[] {Double.NaN, Double.NaN};
      }
      double[] xs = Arrays.copyOf(x, n);
      double[] ys = Arrays.copyOf(y, n);
      double mx = Arrays.stream(xs).average().orElse(0.0);
      double my = Arrays.stream(ys).average().orElse(0.0);
      double sxy = 0.0;
      double sxx = 0.0;
      for (int i = 0; i < n; i++) {
        sxy += (xs[i] - mx) * (ys[i] - my);
        sxx += (xs[i] - mx) * (xs[i] - mx);
      }
      double most = 0.0;
      for (int i = 0; i < n; i++) {
        double off = ys[i] - my - sxy / sxx * (xs[i] - mx);
        most = Math.abs(off) > Math.abs(most) ? off : most;
      }
      return new double[] {most, my};
    }
  }
}
