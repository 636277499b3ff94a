package org.boostwright.rig.plant;

/**
 * Coil current and spool position of the valve.
 *
 * <p>An edge of the drive changes the current; when the current passes pull-in or release, the
 * spool's delay begins to run; when the delay has run out the spool is over. A drive that turns
 * back before that moves nothing.
 */
final class Spool {
  private static final double DUE = 1e-12;
  private static final double NEVER = Double.POSITIVE_INFINITY;

  private final ValveParams valve;
  private final ValveFaults faults;
  private final double timeConstant;

  private boolean driven;
  private boolean shorted;
  private double volts = 14.0;
  private double ampsAtEdge;
  private double sinceEdgeSeconds;
  private boolean pulling;
  private double untilPullingChanges = NEVER;
  private boolean over;
  private double untilOverChanges = NEVER;

  Spool(ValveParams valve, ValveFaults faults) {
    this.valve = valve;
    this.faults = faults;
    this.timeConstant = valve.coil().timeConstantSeconds();
  }

  /** Spool at its energised end. */
  boolean energised() {
    return switch (faults.stuck) {
      case FREE -> over;
      case AT_REST -> false;
      case ENERGISED -> true;
    };
  }

  /** Coil current, A. */
  double amps() {
    if (faults.coilOpen) {
      return 0.0;
    }
    double end =
        driven ? volts / valve.coil().ohms() : -valve.coil().clampVolts() / valve.coil().ohms();
    double amps = end + (ampsAtEdge - end) * Math.exp(-sinceEdgeSeconds / timeConstant);
    return amps > 0.0 ? amps : 0.0;
  }

  /** Takes over the level of the drive and the voltage it switches. */
  void drive(boolean on, double coilVolts) {
    boolean effective = on && !faults.coilOpen;
    if (effective == driven && coilVolts == volts && shorted == faults.coilShort) {
      return;
    }
    ampsAtEdge = amps();
    sinceEdgeSeconds = 0.0;
    driven = effective;
    volts = coilVolts;
    shorted = faults.coilShort;
    boolean wantsPull = driven && !shorted;
    if (pulling) {
      untilPullingChanges = wantsPull ? secondsToSag() : secondsToRelease();
    } else {
      untilPullingChanges = wantsPull ? secondsToPullIn() : NEVER;
    }
    settleDue();
  }

  /** Time to the next change of the spool or of what it is heading for, s. */
  double untilChangeSeconds() {
    return Math.min(untilPullingChanges, untilOverChanges);
  }

  /** Lets time pass, at most {@link #untilChangeSeconds()}. */
  void elapse(double seconds) {
    sinceEdgeSeconds += seconds;
    untilPullingChanges -= seconds;
    untilOverChanges -= seconds;
    settleDue();
  }

  private void settleDue() {
    if (untilPullingChanges <= DUE) {
      untilPullingChanges = NEVER;
      pulling = !pulling;
      double delay = pulling ? valve.onDelaySeconds() : valve.offDelaySeconds();
      untilOverChanges = pulling == over ? NEVER : delay * faults.slowFactor;
    }
    if (untilOverChanges <= DUE) {
      untilOverChanges = NEVER;
      over = !over;
    }
  }

  private double secondsToPullIn() {
    CoilParams coil = valve.coil();
    if (ampsAtEdge >= coil.pullInAmps()) {
      return 0.0;
    }
    double end = volts / coil.ohms();
    return end > coil.pullInAmps()
        ? timeConstant * Math.log((end - ampsAtEdge) / (end - coil.pullInAmps()))
        : NEVER;
  }

  /** A supply too low to hold the spool lets it go while still driven. */
  private double secondsToSag() {
    double release = valve.coil().releaseAmps();
    double end = volts / valve.coil().ohms();
    if (Double.isInfinite(release) || end >= release) {
      return NEVER;
    }
    return ampsAtEdge <= release
        ? 0.0
        : timeConstant * Math.log((ampsAtEdge - end) / (release - end));
  }

  private double secondsToRelease() {
    CoilParams coil = valve.coil();
    if (shorted || faults.coilOpen || ampsAtEdge <= coil.releaseAmps()) {
      return 0.0;
    }
    double clamp = coil.clampVolts() / coil.ohms();
    return timeConstant * Math.log((ampsAtEdge + clamp) / (coil.releaseAmps() + clamp));
  }
}
