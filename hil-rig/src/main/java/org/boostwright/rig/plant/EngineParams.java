package org.boostwright.rig.plant;

/**
 * The engine and what hangs on it.
 *
 * @param turbo turbocharger
 * @param displacementM3 swept volume, m3
 * @param recirculation recirculation valve
 */
public record EngineParams(
    TurboParams turbo, double displacementM3, RecirculationParams recirculation) {

  /** The published research engine, recirculation valve shut as in the reference files. */
  public static final EngineParams PUBLISHED =
      new EngineParams(TurboParams.PUBLISHED, 1.953e-3, RecirculationParams.ABSENT);

  /** The project car's engine with its recirculation valve. */
  public static final EngineParams PROJECT_CAR =
      new EngineParams(TurboParams.PROJECT_CAR, 1.953e-3, RecirculationParams.DEFAULT);

  /** The same engine with another turbo. */
  public EngineParams withTurbo(TurboParams other) {
    return new EngineParams(other, displacementM3, recirculation);
  }

  /** The same engine with another recirculation valve. */
  public EngineParams withRecirculation(RecirculationParams other) {
    return new EngineParams(turbo, displacementM3, other);
  }

  /** The same engine with another swept volume, m3. */
  public EngineParams withDisplacement(double m3) {
    return new EngineParams(turbo, m3, recirculation);
  }
}
