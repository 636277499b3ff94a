package org.boostwright.rig.replay;

/** Faults that can be spliced into a recorded channel. */
public enum SpliceKind {
  /** Wire open: the pulled-down input reads 0 V. */
  OPEN(true),
  /** Short to ground: 0 V. */
  SHORT_TO_GROUND(true),
  /** Short to the sensor supply: 5 V. */
  SHORT_TO_SUPPLY(true),
  /** The last reading comes again and again, to the bit, in fresh samples. */
  FROZEN(true),
  /** Reads {@code amount}, in the channel's unit, whatever happens. */
  STUCK(true),
  /** Reads {@code amount} too much, in the channel's unit, in samples as recorded. */
  OFFSET(false),
  /** Every second sample is {@code amount} off, in the channel's unit. */
  JUMP(true),
  /** A share {@code amount} (0 to 1) of the samples reads as an open wire; seeded by the tick. */
  INTERMITTENT(true),
  /** The converter's reading is not a number. */
  NOT_A_NUMBER(true),
  /** No new sample comes. */
  STALE(false);

  private final boolean everyTick;

  SpliceKind(boolean everyTick) {
    this.everyTick = everyTick;
  }

  /**
   * True when the channel is sampled in every tick while the fault lasts, as the car's converter
   * samples a wire, and not only as often as the logger had read the signal.
   */
  public boolean everyTick() {
    return everyTick;
  }
}
