package org.boostwright.rig.bench;

import java.util.*;
import org.boostwright.core.bench.*;
import org.boostwright.core.bench.model.*;

public class Scratch {
  public static void main(String[] a) {
    int n = Integer.parseInt(a[0]);
    long seed0 = Long.parseLong(a[1]);
    int onOk = 0,
        offOk = 0,
        onCov = 0,
        offCov = 0,
        alarms = 0,
        ratioCov = 0,
        tauCov = 0,
        leakCov = 0,
        noFit = 0;
    int win = 0, winOk = 0;
    long t0 = System.nanoTime();
    double sim = 0;
    for (int i = 0; i < n; i++) {
      Random r = new Random(seed0 + i);
      BenchSetup s = i == 0 ? BenchSetup.standard() : BenchSetup.draw(r);
      VirtualBench b = new VirtualBench(s, seed0 + 1000 + i);
      VirtualSession v =
          new VirtualSession(b, new Person(b), BenchPlan.standard().withFrequencyHz(30));
      BenchRecord rec = v.run().record();
      sim += b.nanos() * 1e-9;
      List<BenchVerdict> ver = Verdicts.of(rec, v.session().plan());
      boolean alarm = !Verdicts.sound(ver);
      if (alarm) alarms++;
      ValveFitResult f = rec.fit;
      if (f == null) {
        noFit++;
        System.out.println(i + " nofit " + rec.completed + " " + rec.aborted + " " + ver);
        continue;
      }
      double on = s.valve().onDelaySeconds() * 1e3, off = s.valve().offDelaySeconds() * 1e3;
      double eon = f.onDelaySeconds().value() * 1e3 - on,
          eoff = f.offDelaySeconds().value() * 1e3 - off;
      if (Math.abs(eon) < .3) onOk++;
      if (Math.abs(eoff) < .3) offOk++;
      if (f.onDelaySeconds().covers(on / 1e3)) onCov++;
      if (f.offDelaySeconds().covers(off / 1e3)) offCov++;
      double rat = s.valve().ventConductance() / s.valve().supplyConductance();
      double fr =
          s.valve().supplyConductance()
              * 99716
              * s.chamber().polytropicExponent()
              / s.chamber().volumeM3();
      double lk =
          s.leakConductance() * 99716 * s.chamber().polytropicExponent() / s.chamber().volumeM3();
      if (f.ventOverFill().covers(rat)) ratioCov++;
      if (f.timeConstantSeconds().covers(1 / fr)) tauCov++;
      if (f.leakRatePerSecond().covers(lk)) leakCov++;
      boolean bad = Math.abs(eon) > .3 || Math.abs(eoff) > .3 || alarm;
      if (bad || i < Integer.parseInt(a[2]))
        System.out.printf(
            "%d on %.2f%+.3f [%.3f %.3f] off %.2f%+.3f [%.3f %.3f] ratio %.2f fit %.2f [%.2f %.2f] rate %.1f fit %.1f leak %.3f/%.3f rms %.2f pts %d t=%.0fs hot %.0f R=%.1f %s%n",
            i,
            on,
            eon,
            f.onDelaySeconds().low() * 1e3,
            f.onDelaySeconds().high() * 1e3,
            off,
            eoff,
            f.offDelaySeconds().low() * 1e3,
            f.offDelaySeconds().high() * 1e3,
            rat,
            f.ventOverFill().value(),
            f.ventOverFill().low(),
            f.ventOverFill().high(),
            fr,
            1 / f.timeConstantSeconds().value(),
            lk,
            f.leakRatePerSecond().value(),
            f.rmsKpa(),
            f.points(),
            b.nanos() * 1e-9,
            rec.hottestCoilC,
            s.regulatorKpaPerGramPerSecond(),
            ver);
    }
    System.out.printf(
        "n=%d onOk %d offOk %d onCov %d offCov %d ratioCov %d tauCov %d leakCov %d alarms %d nofit %d cpu %.1f s sim %.0f s%n",
        n,
        onOk,
        offOk,
        onCov,
        offCov,
        ratioCov,
        tauCov,
        leakCov,
        alarms,
        noFit,
        (System.nanoTime() - t0) * 1e-9,
        sim);
  }
}
