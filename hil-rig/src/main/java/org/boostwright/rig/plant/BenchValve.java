package org.boostwright.rig.plant;

/**
 * A valve on the bench: regulated air on its supply hose, an actuator (or a closed chamber) on the
 * other, nobody behind it but a gauge.
 *
 * <p>Everything may be changed in mid-run, {@link #faults()} included. Regulated air sags with
 * flow: {@code p_supply = p_set - resistance*flow}.
 */
public final class BenchValve {
  /** Sea-level ambient pressure, kPa absolute (ISO 2533:1975). */
  public static final double STANDARD_AMBIENT_KPA = 101.325;

  private static final double REGULATOR_STEP_SECONDS = 0.25e-3;
  private static final double BALANCED_PA = 0.01;

  private final BoostLine line;
  private final double ambientPa;
  private double setPa;
  private double supplyPa;
  private double regulatorPaPerKgPerSecond;

  /** The default valve of assumption A-01 at sea level. */
  public BenchValve() {
    this(ValveParams.DEFAULT, ChamberParams.DEFAULT, ActuatorParams.DEFAULT, STANDARD_AMBIENT_KPA);
  }

  /**
   * @param valve the valve
   * @param chamber hose and actuator chamber
   * @param actuator actuator; its stroke makes the chamber grow
   * @param ambientKpaAbs ambient pressure, kPa absolute
   */
  public BenchValve(
      ValveParams valve, ChamberParams chamber, ActuatorParams actuator, double ambientKpaAbs) {
    ambientPa = ambientKpaAbs * 1000.0;
    setPa = ambientPa;
    supplyPa = ambientPa;
    line = new BoostLine(valve, chamber, actuator, ambientPa);
  }

  /** What is wrong with valve and hoses; may be changed at any moment. */
  public ValveFaults faults() {
    return line.faults();
  }

  /** Air pressure the regulator is set to, kPa gauge. */
  public void setSupplyKpaGauge(double kpaGauge) {
    setPa = ambientPa + kpaGauge * 1000.0;
  }

  /** How far the supply sags, kPa per g/s of flow; 0 is a perfect regulator. */
  public void setRegulatorKpaPerGramPerSecond(double resistance) {
    regulatorPaPerKgPerSecond = resistance * 1e6;
  }

  /** Duty for the PWM periods to come, 0 to 1. */
  public void setDuty(double fraction) {
    line.pwm().setDuty(fraction);
  }

  /** PWM frequency for the periods to come, Hz. */
  public void setFrequencyHz(double hz) {
    line.pwm().setFrequencyHz(hz);
  }

  /** Starts or stops the PWM channel. */
  public void setEnabled(boolean on) {
    line.pwm().setEnabled(on);
  }

  /** Wires the drive the wrong way round. */
  public void setInverted(boolean on) {
    line.pwm().setInverted(on);
  }

  /** Opens or closes the high-side switch of the coil. */
  public void setSupplyClosed(boolean closed) {
    line.setSupplyClosed(closed);
  }

  /** Voltage of the coil's supply, V. */
  public void setBatteryVolts(double volts) {
    line.setBatteryVolts(volts);
  }

  /** Puts the chamber at a pressure, kPa gauge. */
  public void setChamberKpaGauge(double kpaGauge) {
    line.setChamberPa(ambientPa + kpaGauge * 1000.0);
  }

  /** Lets time pass, s. */
  public void advance(double seconds) {
    double done = 0.0;
    while (done < seconds) {
      double h = seconds - done;
      if (regulatorPaPerKgPerSecond > 0.0) {
        h = Math.min(h, REGULATOR_STEP_SECONDS);
        sag();
      } else {
        supplyPa = setPa;
      }
      line.advance(h, supplyPa, supplyPa, ambientPa, 0.0, 0.0);
      done = h == seconds - done ? seconds : done + h;
    }
  }

  /**
   * Flow rises with supply pressure, so the balance has exactly one solution; regula falsi with the
   * Illinois rule (Dowell and Jarratt, BIT 11, 1971, 168-174).
   */
  private void sag() {
    double atSet = excess(setPa);
    supplyPa = setPa;
    if (Math.abs(atSet) <= BALANCED_PA) {
      return;
    }
    double far =
        atSet > 0.0
            ? Math.min(ambientPa, Math.min(setPa, line.chamberPa()))
            : Math.max(setPa, line.chamberPa());
    double near = setPa;
    double atNear = atSet;
    double atFar = excess(far);
    for (int i = 0; i < 60; i++) {
      supplyPa = far + (near - far) * atFar / (atFar - atNear);
      double at = excess(supplyPa);
      if (Math.abs(at) <= BALANCED_PA) {
        return;
      }
      if (at * atNear < 0.0) {
        far = near;
        atFar = atNear;
      } else {
        atFar *= 0.5;
      }
      near = supplyPa;
      atNear = at;
    }
  }

  /** Pressure plus what the flow at it takes from the regulator, over the set pressure, Pa. */
  private double excess(double pa) {
    return pa + regulatorPaPerKgPerSecond * line.supplyKgPerSecondAt(pa, ambientPa) - setPa;
  }

  /** Chamber (actuator) pressure now, kPa gauge. */
  public double chamberKpaGauge() {
    return (line.chamberPa() - ambientPa) / 1000.0;
  }

  /** Supply pressure at the valve now, kPa gauge. */
  public double supplyKpaGauge() {
    return (supplyPa - ambientPa) / 1000.0;
  }

  /** Spool at its energised end; each change is a click. */
  public boolean spoolEnergised() {
    return line.spoolEnergised();
  }

  /** Coil current now, A. */
  public double coilAmps() {
    return line.coilAmps();
  }

  /** Wastegate lift with no exhaust behind it, 0 to 1. */
  public double lift() {
    return line.lift();
  }
}
