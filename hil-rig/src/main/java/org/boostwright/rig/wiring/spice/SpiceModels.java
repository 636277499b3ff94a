package org.boostwright.rig.wiring.spice;

/**
 * SPICE models of the part classes: generic, with the data-sheet numbers that the part class names
 * and nothing finer. Thresholds are typical values at 27 degC; the simulations spread them. A
 * threshold is where the current is 0.25 mA, as data sheets state it: {@code ksubthres} is set for
 * that.
 */
final class SpiceModels {
  private SpiceModels() {}

  /** Text for every deck. */
  static final String LIBRARY =
      """
      * Generic models of the part classes. No maker's data: only the ratings of parts.csv.
      .model D_RECT D(is=1n n=1.75 rs=0.05 cjo=20p bv=200 tt=1u)
      .model D_SIGNAL D(is=3n n=1.9 rs=0.6 cjo=2p bv=75)
      .model D_LOWLEAK D(is=50f n=1.05 rs=1 cjo=2p bv=75)
      .model D_SCHOTTKY D(is=60n n=1.05 rs=3 cjo=10p bv=30 eg=0.69 xti=2)
      .model D_SCHOTTKY_POWER D(is=20u n=1.05 rs=0.03 cjo=200p bv=60 eg=0.69 xti=2)
      .model D_LED D(is=1e-20 n=1.7 rs=3)
      .model D_ZENER_5V6 D(is=1f n=1 rs=2 bv=5.6 ibv=5m nbv=1 cjo=80p)
      .model D_ZENER_8V2 D(is=1f n=1 rs=2 bv=8.2 ibv=5m nbv=1 cjo=50p)
      .model D_ZENER_12 D(is=1f n=1 rs=1 bv=12 ibv=20m nbv=1 cjo=100p)
      .model D_TVS_24 D(is=1f n=1 rs=0.06 bv=28.1 ibv=5m nbv=1 cjo=5n)
      .model D_TVS_33 D(is=1f n=1 rs=0.5 bv=38.6 ibv=1m nbv=1 cjo=300p)
      .model NMOS_POWER VDMOS(nchan vto=1.15 kp=9 rd=0.07 rs=0.02 rg=5 cgs=250p cgdmax=80p
      + cgdmin=15p cjo=60p is=1p rb=0.05 bv=66 tcvth=2m ksubthres=20m)
      .model NMOS_STANDARD VDMOS(nchan vto=4 kp=9 rd=0.03 rs=0.01 rg=5 cgs=500p cgdmax=150p
      + cgdmin=30p cjo=100p is=1p rb=0.05 bv=66 tcvth=5m)
      .model NMOS_SMALL VDMOS(nchan vto=1.15 kp=0.4 rd=0.6 rs=0.2 rg=20 cgs=25p cgdmax=12p
      + cgdmin=3p cjo=15p is=0.1p rb=0.5 bv=55 tcvth=2m ksubthres=50m)
      .model PMOS_HIGH VDMOS(pchan vto=-2 kp=7 rd=0.06 rs=0.02 rg=5 cgs=500p cgdmax=200p
      + cgdmin=50p cjo=150p is=1p rb=0.05 bv=66 tcvth=3m)
      .model SW_ON_OFF SW(vt=0.5 vh=0.1 ron=50 roff=1g)
      .model SW_CLOSER SW(vt=0.5 vh=0.1 ron=10m roff=1g)
      * rail-to-rail amplifier: gain 100 000, 1 MHz, offset 3 mV, output 50 ohm
      .subckt OPAMP_RAIL p n o vp vn
      Vos pi p 3m
      Rin pi n 10g
      Bx 0 x I=50u*tanh(20*v(pi,n))
      Rx x 0 100meg
      Cx x 0 159p
      Dh x vp DIDEAL
      Dl vn x DIDEAL
      Bo o1 0 V=min(max(v(x),v(vn)),v(vp))
      Ro o1 o 50
      .model DIDEAL D(is=10f n=1 rs=10)
      .ends
      * open-collector comparator, offset 3 mV
      .subckt COMPARATOR p n o vp vn
      S1 o vn n q CMP
      Vos q p 3m
      Rp p vn 100meg
      Rn n vn 100meg
      Rs vp vn 10k
      .model CMP SW(vt=0 vh=1m ron=60 roff=1g)
      .ends
      .subckt SCHMITT_3V3 a y vp vn
      S1 vp y a vn SCH
      Ry y vn 10k
      Ra a vn 10meg
      Ca a vn 5p
      .model SCH SW(vt=1.6 vh=0.4 ron=40 roff=1g)
      .ends
      * transfer ratio 50 % at small currents, slow as a transistor is
      .subckt OPTO a k c e
      D1 a s DOPT
      Vs s k 0
      F1 e b Vs 2.5m
      Cb b e 30p
      Q1 c b e QOPT
      .model DOPT D(is=1e-16 n=1.6 rs=4)
      .model QOPT NPN(bf=200 is=1f cjc=8p)
      .ends
      * 160 ohm, 0.35 H; pulls in at 7.5 V, drops out at 1.5 V
      .subckt RELAY_12V a1 a2 c no
      L1 a1 m 0.35
      V1 m m2 0
      R1 m2 a2 160
      H1 s 0 V1 1
      S1 c no s 0 REL
      .model REL SW(vt=28m vh=19m ron=50m roff=1g)
      .ends
      * 5.1 V from 7 V up, follows below; short-circuit proof
      .subckt BUCK_5V vin com vout
      Bo com vout I=max(0,5*tanh((min(5.1,max(0,v(vin,com)-1.5))-v(vout,com))*20))
      Rq vin com 2k
      .ends
      * 5.0 V, 70 mA, takes no current from its output
      .subckt TRACKER_5V vin com vout
      Bo com vout I=max(0,0.07*tanh((min(5,max(0,v(vin,com)-0.5))-v(vout,com))*200))
      Rq vin com 10k
      .ends
      """;
}
