package org.boostwright.core.link;

import org.boostwright.core.AnalogChannel;
import org.boostwright.core.Inputs;
import org.jspecify.annotations.Nullable;

/**
 * What the car's wires say in one tick of the rig, raw: volts, pulse periods, switches, each with
 * its time.
 *
 * <p>Volts and periods travel as IEEE 754 singles, so that what a broken source may say (not a
 * number, infinity) travels, too.
 */
public final class InputsFrame {
  static final int PAYLOAD_BYTES = 4 + 4 + 2 + 8 * AnalogChannel.COUNT + 16;

  private static final int ENGINE_SEEN = 1;
  private static final int ROAD_SEEN = 1 << 1;
  private static final int KEY_ON = 1 << 2;
  private static final int PERMIT = 1 << 3;
  private static final int COIL_FEED = 1 << 4;
  private static final int HIGH_BOOST = 1 << 5;
  private static final int COIL_ENERGISED = 1 << 6;
  private static final int ECHO = 1 << 7;
  private static final int FIRST_ANSWERED = 8;

  /** When the values were taken, the rig's stamp, us. */
  public int stampMicros;

  /** Sequence of the newest controller frame the rig had received. */
  public int echo;

  /** True when there was one. */
  public boolean echoValid;

  /** Volts, switches, periods. Its times are those of the clock it was filled or placed on. */
  public final Inputs inputs = new Inputs();

  private final int[] sampleStamps = new int[AnalogChannel.COUNT];
  private int engineStamp;
  private int roadStamp;

  /** Writes the frame from {@link #inputs}, whose times are on the clock behind {@code clock}. */
  void write(FrameWriter to, int sequence, StampClock clock) {
    to.begin(Frame.INPUTS, sequence);
    to.put32(stampMicros);
    to.put32(echo);
    to.put16(flags());
    for (int c = 0; c < AnalogChannel.COUNT; c++) {
      to.putFloat(inputs.volts[c]);
      to.put32(clock.stampMicros(inputs.sampleNanos[c]));
    }
    to.putFloat(inputs.enginePeriodNanos);
    to.put32(clock.stampMicros(inputs.enginePulseNanos));
    to.putFloat(inputs.roadPeriodNanos);
    to.put32(clock.stampMicros(inputs.roadPulseNanos));
    to.end();
  }

  private int flags() {
    int flags =
        bit(inputs.engineSeen, ENGINE_SEEN)
            | bit(inputs.roadSeen, ROAD_SEEN)
            | bit(inputs.keyOn, KEY_ON)
            | bit(inputs.permit, PERMIT)
            | bit(inputs.coilFeed, COIL_FEED)
            | bit(inputs.highBoost, HIGH_BOOST)
            | bit(inputs.coilEnergised, COIL_ENERGISED)
            | bit(echoValid, ECHO);
    for (int c = 0; c < AnalogChannel.COUNT; c++) {
      flags |= bit(inputs.answered[c], 1 << (FIRST_ANSWERED + c));
    }
    return flags;
  }

  private static int bit(boolean on, int bit) {
    return on ? bit : 0;
  }

  /** Reads the frame just completed; times are still stamps until {@link #place}. */
  void read(FrameDecoder from) {
    stampMicros = from.get32();
    echo = from.get32();
    int flags = from.get16();
    inputs.engineSeen = (flags & ENGINE_SEEN) != 0;
    inputs.roadSeen = (flags & ROAD_SEEN) != 0;
    inputs.keyOn = (flags & KEY_ON) != 0;
    inputs.permit = (flags & PERMIT) != 0;
    inputs.coilFeed = (flags & COIL_FEED) != 0;
    inputs.highBoost = (flags & HIGH_BOOST) != 0;
    inputs.coilEnergised = (flags & COIL_ENERGISED) != 0;
    echoValid = (flags & ECHO) != 0;
    for (int c = 0; c < AnalogChannel.COUNT; c++) {
      inputs.answered[c] = (flags & 1 << (FIRST_ANSWERED + c)) != 0;
      inputs.volts[c] = from.getFloat();
      sampleStamps[c] = from.get32();
    }
    inputs.enginePeriodNanos = from.getFloat();
    engineStamp = from.get32();
    inputs.roadPeriodNanos = from.getFloat();
    roadStamp = from.get32();
  }

  /**
   * Places the times of this frame on the receiver's clock. A time whose stamp has not changed
   * since {@code before} keeps its place, so that an old sample never looks fresh because the
   * estimate of the clocks moved.
   *
   * @param before the frame before this one; null for the first
   */
  void place(PeerClock clock, @Nullable InputsFrame before) {
    for (int c = 0; c < AnalogChannel.COUNT; c++) {
      boolean same = before != null && before.sampleStamps[c] == sampleStamps[c];
      inputs.sampleNanos[c] =
          same ? before.inputs.sampleNanos[c] : clock.localNanos(sampleStamps[c]);
    }
    boolean sameEngine = before != null && before.engineStamp == engineStamp;
    inputs.enginePulseNanos =
        sameEngine ? before.inputs.enginePulseNanos : clock.localNanos(engineStamp);
    boolean sameRoad = before != null && before.roadStamp == roadStamp;
    inputs.roadPulseNanos = sameRoad ? before.inputs.roadPulseNanos : clock.localNanos(roadStamp);
  }
}
