package org.boostwright.rig.scenario;

import org.boostwright.core.settings.*;
import org.boostwright.core.settings.file.*;
import org.boostwright.core.table.*;
import org.boostwright.core.state.*;
import org.boostwright.core.monitor.*;
import org.boostwright.core.record.LogFormat;
import org.boostwright.rig.plant.*;
import java.nio.file.*;
import java.util.*;

public class Tune {
  static final double[] RPM = {2000, 2500, 3000, 3500, 4000, 4500, 5000, 5500, 6000, 6500};

  static double settled(VirtualCar car, double rpm, double duty, double pct) {
    car.coil(duty, duty > 0, duty > 0);
    car.settleAt(rpm, pct);
    double sum = 0;
    for (int i = 0; i < 200; i++) car.advance(5_000_000L);
    for (int i = 0; i < 100; i++) { car.advance(5_000_000L); sum += car.mapKpaAbs(); }
    return sum / 100;
  }

  static double dutyFor(double rpm, double target, Atmosphere atm) {
    VirtualCar car = new VirtualCar(PlantParams.PROJECT_CAR, atm, 1);
    double lo = 0.1, hi = 0.78;
    for (int i = 0; i < 12; i++) { double m = (lo + hi) / 2; if (settled(car, rpm, m, 100) < target) lo = m; else hi = m; }
    return (lo + hi) / 2;
  }

  static double gateShut(double rpm, Atmosphere atm) {
    return settled(new VirtualCar(PlantParams.PROJECT_CAR, atm, 1), rpm, 1.0, 100);
  }

  record Case(String name, Atmosphere atm, double factor) {}
  record Score(double tref, double t, double over, double worst, String note) {}

  static Settings make(Settings s, double[] target, double[] base, FeedbackSettings fb, SpoolSettings sp, double cutoff) {
    Axis rows = new Axis(0.0, 100.0); Axis cols = new Axis(RPM);
    double[] t = new double[RPM.length * 2], b = new double[RPM.length * 2];
    for (int i = 0; i < RPM.length; i++) { t[i] = t[i + RPM.length] = target[i]; b[i] = b[i + RPM.length] = base[i]; }
    LimitSettings l = s.limits();
    return new Settings(s.car(), s.units(), s.sensors(), s.valve(), new Table2d(rows, cols, t), new Table2d(rows, cols, b),
        new LimitSettings(cutoff, l.pressureRatioMax(), Curve.constant(1.0), 0.10, Curve.constant(1.0), 75, new double[0], 250, 1500, 30, false),
        fb, sp, s.optional(), s.demand(), s.actuator(), s.pins());
  }

  static double gateShutTime(Case c, double targetAt) {
    VirtualCar car = new VirtualCar(PlantParams.PROJECT_CAR, c.atm(), 1);
    return 0;
  }

  static Score run(Settings s, Case c, boolean shut, boolean print) {
    VirtualCar car = new VirtualCar(PlantParams.PROJECT_CAR, c.atm(), 1);
    CarRun run = new CarRun(s, car);
    run.startEngine();
    run.settleHeld(2500, 15, 2.0);
    car.driveInGearAtRpm(3, 2500);
    car.setThrottlePct(100);
    double t0 = run.nowNanos() * 1e-9;
    double reach = Double.NaN, over = -99, worst = 0; double worstAt = 0;
    double[] err = new double[20]; int n = 0; double gapAt = 0;
    while (car.engineRpm() < 6000 && run.nowNanos() * 1e-9 - t0 < 15) {
      if (shut) { car.advance(5_000_000L); car.coil(1, true, true); run.log(); nowAdd(run); }
      else run.tick();
      double t = shut ? (n + 1) * 0.005 : run.nowNanos() * 1e-9 - t0;
      double map = car.mapKpaAbs();
      double target = s.target().at(100, car.engineRpm());
      double e = map - target;
      if (Double.isNaN(reach) && e >= -2) reach = t;
      if (shut && !Double.isNaN(reach)) break;
      over = Math.max(over, e);
      err[n % 20] = e; n++;
      if (!Double.isNaN(reach) && t > reach + 1.0 + 0.1) { double m = 0; for (double x : err) m += x; m /= 20; if (Math.abs(m) > Math.abs(worst)) { worst = m; worstAt = car.engineRpm(); } }
      if (print && n % 20 == 0) System.out.printf("t %.2f rpm %.0f map %.1f tgt %.1f duty %.3f base %.3f trim %.3f spool %b lift %.2f st %s find %x flt %x%n", t, car.engineRpm(), map, target, run.outputs().dutyFraction, run.outputs().baseDutyFraction, run.outputs().trimDutyFraction, run.outputs().spooling, car.wastegateLift(), run.outputs().state, run.outputs().findings, run.outputs().activeFaults);
      if (shut && n > 3000) break;
    }
    return new Score(0, reach, over, worst, String.format("worst at %.0f, faults %x findings %x", worstAt, run.controller().faults().active(), 0));
  }
  static void nowAdd(CarRun r) {}

  static double[] cached(String name, java.util.function.IntToDoubleFunction f) throws Exception {
    Path p = Path.of("/tmp/c-" + name + ".txt"); double[] r = new double[RPM.length];
    if (Files.exists(p)) { String[] q = Files.readString(p).trim().split(" "); for (int i = 0; i < r.length; i++) r[i] = Double.parseDouble(q[i]); return r; }
    StringBuilder sb = new StringBuilder(); for (int i = 0; i < r.length; i++) { r[i] = f.applyAsDouble(i); sb.append(r[i]).append(' '); } Files.writeString(p, sb.toString()); return r;
  }
  public static void main(String[] a) throws Exception {
    Settings s = SettingsFile.load(Path.of("/work/wt/lead/docs/project-car.toml")).orThrow();
    Atmosphere ref = Atmosphere.at(0, 20);
    Atmosphere[] atms = {Atmosphere.at(0, 0), Atmosphere.at(0, 40), Atmosphere.at(2000, 0)};
    String[] names = {"sea 0C", "sea 40C", "2000m 0C"};
    double[][] targets = new double[3][], bases = new double[3][]; double[] shut = new double[3];
    for (int k = 0; k < 3; k++) { final int kk = k; double[] shutHere = cached("shut" + k, i -> gateShut(RPM[i], atms[kk]));
      targets[k] = shutHere.clone(); for (int i = 0; i < RPM.length; i++) targets[k][i] = Math.min(180, shutHere[i] - 8);
      bases[k] = cached("base" + k, i -> dutyFor(RPM[i], targets[kk][i], ref));
      System.out.println(names[k] + " " + Arrays.toString(targets[k]) + " base " + Arrays.toString(bases[k])); }
    Random rnd = new Random(5); double best = 1e9;
    int N = a.length > 6 ? 1 : 1000; long end = System.currentTimeMillis() + (a.length > 5 ? Long.parseLong(a[5]) : 100) * 1000;
    for (int it = 0; it < N && System.currentTimeMillis() < end; it++) {
      double kp, ki, kd, lead, near, track = 0.5;
      if (it == 0) { kp = Double.parseDouble(a[0]); ki = Double.parseDouble(a[1]); kd = Double.parseDouble(a[2]); lead = Double.parseDouble(a[3]); near = Double.parseDouble(a[4]); }
      else { kp = 0.005 + 0.006 * rnd.nextDouble(); ki = 0.02 + 0.025 * rnd.nextDouble(); kd = kp * (0.15 + 0.2 * rnd.nextDouble()); lead = 0.25 + 0.25 * rnd.nextDouble(); near = 5 + 8 * rnd.nextDouble(); }
      FeedbackSettings fb = new FeedbackSettings(true, Curve.constant(kp), Curve.constant(ki), Curve.constant(kd), track, 0.03, near);
      SpoolSettings sp = new SpoolSettings(true, lead, 4.0, 10);
      double bad = 0; StringBuilder out = new StringBuilder();
      for (int k = 0; k < 3; k++) for (double f : new double[] {0.85, 1.0, 1.15}) {
        double[] b = bases[k].clone(); for (int i = 0; i < b.length; i++) b[i] *= f;
        Settings set = make(s, targets[k], b, fb, sp, 205);
        Case c = new Case(names[k], atms[k], f);
        if (shut[k] == 0) shut[k] = run(set, c, true, false).t();
        Score r = run(set, c, false, a.length > 6);
        double late = (r.t() - shut[k]) / 0.5, over = r.over() / 5, worst = Math.abs(r.worst()) / 2;
        bad = Math.max(bad, Math.max(late, Math.max(over, worst)));
        out.append(String.format("%-9s x%.2f  shut %.3f reach %.3f (+%.3f) over %5.2f worst %6.2f %s%n", names[k], f, shut[k], r.t(), r.t() - shut[k], r.over(), r.worst(), r.note()));
      }
      if (bad < best || it == 0) { best = Math.min(best, bad); System.out.printf("### %.3f kp %.4f ki %.4f kd %.5f lead %.3f near %.1f%n%s", bad, kp, ki, kd, lead, near, out); }
    }
  }
}
