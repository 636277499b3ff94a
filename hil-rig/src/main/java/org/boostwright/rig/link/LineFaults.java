package org.boostwright.rig.link;

import java.util.Random;

/**
 * What goes wrong on the serial line from rig to controller, by kind and from now on.
 *
 * <p>Frames go in, bytes come out, at once or later; nothing is allocated while nothing is wrong.
 */
public final class LineFaults {
  /** Kinds of trouble. */
  public enum Kind {
    NONE,
    /** Nothing gets through. */
    SILENT,
    /** Every frame has some bits wrong. */
    CORRUPT,
    /** The frame before the fault comes again and again. */
    REPEAT,
    /** Sixteen frames at a time come in reverse order. */
    REORDER,
    /** Every frame comes later, see {@link #delayNanos}. */
    DELAY,
    /** Random bytes instead of frames. */
    NOISE
  }

  /** Takes bytes that leave the rig. */
  public interface Out {
    void send(byte[] bytes, int length);
  }

  private static final int LONGEST = 256;
  private static final int SLOTS = 128;
  private static final int BLOCK = 16;

  private final Random random;
  private final Out out;
  private final byte[] last = new byte[LONGEST];
  private int lastLength;
  private final byte[] noise = new byte[LONGEST];
  private final byte[][] held = new byte[BLOCK][LONGEST];
  private final int[] heldLength = new int[BLOCK];
  private int heldCount;
  private final byte[][] delayed = new byte[SLOTS][LONGEST];
  private final int[] delayedLength = new int[SLOTS];
  private final long[] delayedDue = new long[SLOTS];
  private int delayedPuts;
  private int delayedTakes;
  private Kind kind = Kind.NONE;
  private long affected;

  /** How much later frames come with {@link Kind#DELAY}, ns. */
  public long delayNanos = 150_000_000L;

  /** A sound line. */
  public LineFaults(long seed, Out out) {
    this.random = new Random(seed);
    this.out = out;
  }

  /** Changes what is wrong. */
  public void set(Kind newKind) {
    if (newKind != Kind.NONE) {
      affected = 0L;
    }
    kind = newKind;
    heldCount = 0;
  }

  /** What is wrong. */
  public Kind kind() {
    return kind;
  }

  /** Frames spoiled, held back or replaced by the last fault: proof that it took effect. */
  public long affected() {
    return affected;
  }

  /** One frame on its way. */
  public void send(byte[] bytes, int length, long nowNanos) {
    flushDelayed(nowNanos);
    if (kind == Kind.NONE) {
      System.arraycopy(bytes, 0, last, 0, length);
      lastLength = length;
      out.send(bytes, length);
      return;
    }
    affected++;
    switch (kind) {
      case CORRUPT -> {
        for (int i = 0; i < 3; i++) {
          bytes[1 + random.nextInt(length - 2)] ^= (byte) (1 << random.nextInt(8));
        }
        out.send(bytes, length);
      }
      case REPEAT -> out.send(last, lastLength);
      case REORDER -> reorder(bytes, length);
      case DELAY -> delay(bytes, length, nowNanos);
      case NOISE -> {
        random.nextBytes(noise);
        out.send(noise, length);
      }
      default -> {
        // Silence.
      }
    }
  }

  private void reorder(byte[] bytes, int length) {
    System.arraycopy(bytes, 0, held[heldCount], 0, length);
    heldLength[heldCount++] = length;
    if (heldCount == BLOCK) {
      while (heldCount > 0) {
        heldCount--;
        out.send(held[heldCount], heldLength[heldCount]);
      }
    }
  }

  private void delay(byte[] bytes, int length, long nowNanos) {
    if (delayedPuts - delayedTakes == SLOTS) {
      return;
    }
    int slot = delayedPuts++ & (SLOTS - 1);
    System.arraycopy(bytes, 0, delayed[slot], 0, length);
    delayedLength[slot] = length;
    delayedDue[slot] = nowNanos + delayNanos;
  }

  private void flushDelayed(long nowNanos) {
    while (delayedTakes != delayedPuts) {
      int slot = delayedTakes & (SLOTS - 1);
      if (kind == Kind.DELAY && nowNanos - delayedDue[slot] < 0L) {
        return;
      }
      delayedTakes++;
      if (kind == Kind.DELAY) {
        out.send(delayed[slot], delayedLength[slot]);
      }
    }
  }
}
