package org.boostwright.rig.demo;

/** Told how far the demonstration has come. */
public interface Steps {
  /** A step begins. */
  void begin(String what);

  /** Share of the step that is done, 0 to 1. */
  void share(double done);
}
