package org.boostwright.rig.plant;

/**
 * Everything a virtual car is made of.
 *
 * @param engine engine and turbo
 * @param valve boost valve
 * @param chamber hose and actuator chamber
 * @param actuator actuator and wastegate
 * @param car car around it
 * @param sensors sensors and their electrics
 * @param pwmHz frequency the coil is driven at, Hz
 */
public record PlantParams(
    EngineParams engine,
    ValveParams valve,
    ChamberParams chamber,
    ActuatorParams actuator,
    CarParams car,
    SensorParams sensors,
    double pwmHz) {

  /** The project car: assumptions, valve driven at 30 Hz. */
  public static final PlantParams PROJECT_CAR =
      new PlantParams(
          EngineParams.PROJECT_CAR,
          ValveParams.DEFAULT,
          ChamberParams.DEFAULT,
          ActuatorParams.DEFAULT,
          CarParams.DEFAULT,
          SensorParams.DEFAULT,
          30.0);

  /** The same car with another engine. */
  public PlantParams withEngine(EngineParams other) {
    return new PlantParams(other, valve, chamber, actuator, car, sensors, pwmHz);
  }

  /** The same car with another valve. */
  public PlantParams withValve(ValveParams other) {
    return new PlantParams(engine, other, chamber, actuator, car, sensors, pwmHz);
  }

  /** The same car with another hose and chamber. */
  public PlantParams withChamber(ChamberParams other) {
    return new PlantParams(engine, valve, other, actuator, car, sensors, pwmHz);
  }

  /** The same car with another actuator. */
  public PlantParams withActuator(ActuatorParams other) {
    return new PlantParams(engine, valve, chamber, other, car, sensors, pwmHz);
  }

  /** The same engine in another car. */
  public PlantParams withCar(CarParams other) {
    return new PlantParams(engine, valve, chamber, actuator, other, sensors, pwmHz);
  }

  /** The same car with other sensors. */
  public PlantParams withSensors(SensorParams other) {
    return new PlantParams(engine, valve, chamber, actuator, car, other, pwmHz);
  }

  /** The same car with its valve driven at another frequency, Hz. */
  public PlantParams withPwmHz(double hz) {
    return new PlantParams(engine, valve, chamber, actuator, car, sensors, hz);
  }

  /**
   * One car of a series: every part somewhere within its tolerance, uniformly.
   *
   * <p>Own assumptions for a spread of 1: turbine size 4 %, efficiencies 2 points, rotor 10 %,
   * spring 3 kPa and span 8 %, actuator lag 20 %, valve conductances 10 %, spool delays 15 %, up to
   * 0.5 m of hose, pressure sensor 1.5 kPa and 0.5 %.
   *
   * @param seed which car
   * @param spread 0 = exactly this car, 1 = full tolerances
   */
  public PlantParams spread(long seed, double spread) {
    Noise noise = new Noise(seed);
    TurboParams turbo = engine.turbo();
    TurboParams variedTurbo =
        new TurboParams(
            turbo.turbineK1() * (1.0 + either(noise, 0.04 * spread)),
            turbo.turbineK2(),
            turbo.turbinePeakEfficiency() + either(noise, 0.02 * spread),
            turbo.inertiaKgM2() * (1.0 + either(noise, 0.10 * spread)),
            turbo.compressorPeakEfficiency() + either(noise, 0.02 * spread));
    ActuatorParams variedActuator =
        actuator
            .withSpring(
                actuator.crackKpaGauge() + either(noise, 3.0 * spread),
                actuator.spanKpa() * (1.0 + either(noise, 0.08 * spread)))
            .withLag(actuator.lagSeconds() * (1.0 + either(noise, 0.20 * spread)));
    ValveParams variedValve =
        valve
            .withConductances(
                valve.supplyConductance() * (1.0 + either(noise, 0.10 * spread)),
                valve.ventConductance() * (1.0 + either(noise, 0.10 * spread)))
            .withDelays(
                valve.onDelaySeconds() * (1.0 + either(noise, 0.15 * spread)),
                valve.offDelaySeconds() * (1.0 + either(noise, 0.15 * spread)));
    ChamberParams variedChamber = chamber.withMoreHose(0.5 * spread * noise.uniform());
    SensorParams variedSensors =
        sensors.withMapError(
            sensors.mapOffsetKpa() + either(noise, 1.5 * spread),
            sensors.mapScale() * (1.0 + either(noise, 0.005 * spread)));
    return new PlantParams(
        engine.withTurbo(variedTurbo),
        variedValve,
        variedChamber,
        variedActuator,
        car,
        variedSensors,
        pwmHz);
  }

  private static double either(Noise noise, double most) {
    return most * (2.0 * noise.uniform() - 1.0);
  }
}
