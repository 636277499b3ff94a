package org.boostwright.rig.bench;
public class Mis { public static void main(String[] a){ int n=Integer.parseInt(a[0]);
 for (BenchMistake m: BenchMistake.values()){ if(a.length>1 && !m.name().equals(a[1])) continue; int ok=0,passed=0; long t=System.nanoTime(); for(int i=0;i<n;i++){ BenchTrial tr=BenchTrial.run(m,7000+31*i+m.ordinal()); boolean k=tr.names(m); if(k)ok++; if(tr.passed())passed++; if(!k) System.out.println("   "+i+" "+tr.verdicts().stream().map(v->v.code()+": "+v.measured()).toList()+" heard "+tr.record().heard+" clicks "+tr.record().clicksHeard+" ab "+tr.record().aborted+" done "+tr.record().completed);} System.out.printf("%s %d/%d passed %d  %.1fs%n",m,ok,n,passed,(System.nanoTime()-t)*1e-9);}
}}
