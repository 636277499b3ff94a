package org.boostwright.rig.wiring.block;

/** Names of nets that meet on more than one sheet. */
public final class Nets {
  /** Power ground and reference of everything; node 0. */
  public static final String GND = "GND";

  /** Sensor ground: joined to GND at one place. */
  public static final String SGND = "SGND";

  /** 5 V of the computer. */
  public static final String P5V = "P5V";

  /** 5 V of the sensors. */
  public static final String P5S = "P5S";

  /** 3.3 V from the computer's header. */
  public static final String P3V3 = "P3V3";

  /** Battery behind the key-switched relay. */
  public static final String BAT = "BAT";

  /** Battery behind the main fuse. */
  public static final String VBAT_F = "VBAT_F";

  /** Behind reverse protection and load-dump clamp. */
  public static final String VPROT = "VPROT";

  /** Coil feed behind its fuse. */
  public static final String COIL_FUSED = "COIL_FUSED";

  /** Coil feed behind the spring-only switch. */
  public static final String COIL_FEED = "COIL_FEED";

  /** Coil, supply end. */
  public static final String COIL_P = "COIL_P";

  /** Coil, switched end. */
  public static final String COIL_N = "COIL_N";

  public static final String COIL_PWM = "COIL_PWM";
  public static final String HEARTBEAT = "HEARTBEAT";
  public static final String COIL_ENABLE = "COIL_ENABLE";
  public static final String COIL_CURRENT = "COIL_CURRENT";
  public static final String PERMIT = "PERMIT";
  public static final String CUT_REQUEST = "CUT_REQUEST";
  public static final String MAP_SIG = "MAP_SIG";
  public static final String TPS_SIG = "TPS_SIG";
  public static final String IAT_SIG = "IAT_SIG";
  public static final String MAP_ADC = "MAP_ADC";
  public static final String TPS_ADC = "TPS_ADC";
  public static final String IAT_ADC = "IAT_ADC";
  public static final String SUPPLY_ADC = "SUPPLY_ADC";
  public static final String TACH_PIN = "TACH_PIN";

  private Nets() {}
}
