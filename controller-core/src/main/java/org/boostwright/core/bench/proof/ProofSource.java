package org.boostwright.core.bench.proof;

import java.util.Locale;

/** Which bench a proof was made on. */
public enum ProofSource {
  /** The Pi that will drive the car, its own driver and valve. */
  PI(true, ""),
  /** The same hardware, driven over the serial link. */
  LINK(true, ""),
  /** A virtual valve: shows how the bench works, proves nothing about a car. */
  VIRTUAL(false, "it was made on the virtual valve"),
  /** Gauge readings typed at a laptop: proves the valve, not driver and wiring. */
  READINGS(false, "typed readings prove the valve but not the car's driver and wiring");

  private final boolean provesCar;
  private final String why;

  ProofSource(boolean provesCar, String why) {
    this.provesCar = provesCar;
    this.why = why;
  }

  /** As written in proofs. */
  public String id() {
    return name().toLowerCase(Locale.ROOT);
  }

  /** True when such a proof may let the car be driven. */
  public boolean provesCar() {
    return provesCar;
  }

  /** Why it does not prove the car; empty when it does. */
  public String why() {
    return why;
  }
}
