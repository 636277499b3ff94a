package org.boostwright.rig.kernel;

import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.charset.StandardCharsets;

/**
 * What the guest's inputs are until the next exchange; the layout is that of {@code struct
 * bw_orders}. A plain holder: write any field at any moment.
 */
final class GuestOrders {
  /** The converter does not acknowledge. */
  static final int NAK = 0x01;

  /** A transfer does not end until the adapter gives up. */
  static final int HANG = 0x02;

  /** A conversion does not end. */
  static final int STUCK = 0x04;

  /** Another chip answers. */
  static final int WRONG_CHIP = 0x08;

  /** The PWM chip refuses another period. */
  static final int REFUSE_PERIOD = 0x10;

  static final int CONVERTER_INPUTS = 4;

  /** Pulse train of the engine speed. */
  static final int TACH = 0;

  /** Pulse train of the road speed. */
  static final int ROAD = 1;

  /** Pulse train for storms. */
  static final int STORM = 2;

  private static final int PULSES = 3;
  private static final int MAGIC = 0x42774f31;
  private static final int HEAD_BYTES = 16 + 4 * CONVERTER_INPUTS + 8 * PULSES + 8;
  private static final int MOST_TEXT = 4096;

  /** Faults in force, bits of the above. */
  int faults;

  /** Level of the input lines, bit by bit. */
  int levels;

  /** Volts at the converter's inputs, uV. */
  final int[] microVolts = new int[CONVERTER_INPUTS];

  /** Line of each pulse train. */
  final int[] pulseLine = new int[PULSES];

  /** Time between two edges of each pulse train, ns; 0 = stopped. */
  final long[] halfNanos = new long[PULSES];

  /** Guest time until the next exchange, ns; 0 switches the guest off. */
  int stepNanos;

  private final StringBuilder typed = new StringBuilder();

  /** Types for the guest's shell. */
  void type(String text) {
    typed.append(text);
  }

  /** The orders as bytes; takes as much of what was typed as the guest has room for. */
  byte[] take() {
    byte[] text =
        typed.substring(0, Math.min(typed.length(), MOST_TEXT)).getBytes(StandardCharsets.US_ASCII);
    typed.delete(0, text.length);
    ByteBuffer to = ByteBuffer.allocate(HEAD_BYTES + text.length).order(ByteOrder.LITTLE_ENDIAN);
    to.putInt(MAGIC).putInt(text.length).putInt(faults).putInt(levels);
    for (int uv : microVolts) {
      to.putInt(uv);
    }
    for (int i = 0; i < PULSES; i++) {
      to.putInt(pulseLine[i]).putInt((int) halfNanos[i]);
    }
    to.putInt(stepNanos).putInt(0).put(text);
    return to.array();
  }

  /** Sets the level of a line. */
  void level(int line, boolean high) {
    levels = high ? levels | 1 << line : levels & ~(1 << line);
  }
}
