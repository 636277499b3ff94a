package org.boostwright.pi.loop;

import org.boostwright.core.Inputs;
import org.boostwright.core.Outputs;
import org.boostwright.pi.io.CarIo;

/** Wires that do what a test tells them and remember what they were told. */
final class FakeIo implements CarIo {
  Runnable onRead = () -> {};
  boolean asCommanded = true;
  int rests;
  int beats;
  boolean lamp;
  boolean closed;
  final Outputs last = new Outputs();

  @Override
  public void read(long nowNanos, Inputs inputs) {
    onRead.run();
  }

  @Override
  public boolean apply(long nowNanos, Outputs outputs) {
    return asCommanded;
  }

  @Override
  public void endTick(long nowNanos, Outputs outputs, boolean beat, boolean lampOn) {
    beats += beat ? 1 : 0;
    lamp = lampOn;
    last.dutyFraction = outputs.dutyFraction;
    last.pwmEnabled = outputs.pwmEnabled;
    last.coilSupplyClosed = outputs.coilSupplyClosed;
  }

  @Override
  public boolean setPwmHz(double hz) {
    return true;
  }

  @Override
  public void rest() {
    rests++;
  }

  @Override
  public String health() {
    return "fake";
  }

  @Override
  public void close() {
    closed = true;
  }
}
