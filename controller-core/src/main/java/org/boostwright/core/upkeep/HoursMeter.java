package org.boostwright.core.upkeep;

import org.boostwright.core.Outputs;

/**
 * Counts hours and valve cycles tick by tick. One thread counts, any thread may look: what it sees
 * is at most a tick old.
 */
@SuppressWarnings("NonAtomicVolatileUpdate") // only the tick thread counts
public final class HoursMeter {
  /** A longer gap between two ticks is not counted: nobody knows what happened in it, ns. */
  private static final long LONGEST_NANOS = 100_000_000L;

  private boolean begun;
  private boolean ran;
  private long lastNanos;
  private volatile long starts;
  private volatile double engineSeconds;
  private volatile double drivenSeconds;
  private volatile double valveCycles;

  /** Has counted nothing. */
  public HoursMeter() {}

  /**
   * Counts the time since the last tick to what this tick does.
   *
   * @param engineRunning engine runs
   * @param pwmHz frequency the valve is driven at, Hz
   */
  public void update(long nowNanos, boolean engineRunning, Outputs outputs, double pwmHz) {
    long gone = begun ? nowNanos - lastNanos : 0L;
    begun = true;
    lastNanos = nowNanos;
    if (engineRunning && !ran) {
      starts++;
    }
    ran = engineRunning;
    if (!(gone > 0L && gone <= LONGEST_NANOS)) {
      return;
    }
    double seconds = gone * 1e-9;
    if (engineRunning) {
      engineSeconds += seconds;
    }
    if (outputs.pwmEnabled && outputs.dutyFraction > 0.0) {
      drivenSeconds += seconds;
      if (outputs.dutyFraction < 1.0 && pwmHz > 0.0 && pwmHz < Double.POSITIVE_INFINITY) {
        valveCycles += seconds * pwmHz;
      }
    }
  }

  /** What was counted so far; {@code since} is passed on. */
  public OperatingHours counted(String since) {
    return new OperatingHours(since, starts, engineSeconds, drivenSeconds, valveCycles);
  }
}
