package org.boostwright.rig.logs;
import org.boostwright.rig.logs.gains.*; import org.boostwright.rig.logs.identify.*; import org.boostwright.rig.plant.*; import org.boostwright.rig.scenario.*;
public class LeadTry { public static void main(String[] a) {
  var s = ProjectCarSettings.load(); int n=Integer.parseInt(a[0]);
  CarTwin twin = new CarTwin(PlantParams.PROJECT_CAR, new double[9], new double[9][9], 0.2, 2);
  for (Pace p : Pace.values()) { 
    GainAdvice g0 = GainAdvice.of(twin, Atmosphere.at(0,20), s, p, 1);
    for (BandGains b : g0.bands()) System.out.printf("%s kp %.2f ki %.2f kd %.3f Ms %.2f/%.2f GM %.2f PM %.1f amigo kp %.2f Ms %.2f%n", b.model(), 100*b.gains().kp(), 100*b.gains().ki(), 100*b.gains().kd(), b.margins().maxSensitivity(), b.worst().maxSensitivity(), b.margins().gainMargin(), b.margins().phaseMarginDegrees(),100*b.amigo().gain(), b.amigoMargins().maxSensitivity());
 for (double lead=0.32; lead<0.5; lead+=0.12) { GainAdvice g=new GainAdvice(p,g0.bands(),g0.trackingSeconds(),lead);
    PullMeasures m=PullMeasures.of(VirtualPull.run(g.in(s),PlantParams.PROJECT_CAR,PullPlan.STANDARD,x->{}));
    System.out.printf("%s lead %.2f nominal over %.2f reach %.2f : %s%n", p, lead, m.overshootKpa(), m.reachSeconds(), GainProof.of(g.in(s), PlantParams.PROJECT_CAR, 1.0, n, 1, x->{}));
  }}
}}
