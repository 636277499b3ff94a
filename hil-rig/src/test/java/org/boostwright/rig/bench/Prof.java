package org.boostwright.rig.bench;
import org.boostwright.core.bench.*;
public class Prof { public static void main(String[] a){
 for (double R: new double[]{0,1,0,1}) { long t=System.nanoTime(); VirtualBench b=new VirtualBench(BenchSetup.standard().withRegulator(R),1); VirtualSession v=new VirtualSession(b,new Person(b),BenchPlan.standard()); v.run(); System.out.println(R+" "+(System.nanoTime()-t)*1e-9);
  t=System.nanoTime(); VirtualBench c=new VirtualBench(BenchSetup.standard().withRegulator(R),1); c.air(true); BenchInputs in=new BenchInputs(); for(int i=0;i<125000;i++) c.sample(in); System.out.println("  plant only "+(System.nanoTime()-t)*1e-9);}
}}
