package org.boostwright.core.link;

import org.boostwright.core.Outputs;
import org.boostwright.core.state.SafetyState;
import org.boostwright.core.state.Waiting;

/** What the controller commands and believes in one tick. */
public final class OutputsFrame {
  static final int PAYLOAD_BYTES = 4 + 4 + 4 + 2 + 8 + 4 + 16 + 12 + 4;

  private static final int PWM_ENABLED = 1;
  private static final int COIL_SUPPLY = 1 << 1;
  private static final int ENGINE_CUT = 1 << 2;
  private static final int HEARTBEAT_LEVEL = 1 << 3;
  private static final int HEARTBEAT_PERMITTED = 1 << 4;
  private static final int LAMP = 1 << 5;
  private static final int SPOOLING = 1 << 6;
  private static final int ECHO = 1 << 7;

  private static final SafetyState[] STATES = SafetyState.values();
  private static final Waiting[] WAITINGS = Waiting.values();

  /** When the tick was, the controller's stamp, us. */
  public int stampMicros;

  /** Sequence of the newest rig frame this tick has seen. */
  public int echo;

  /** True when there was one. */
  public boolean echoValid;

  /** How long the controller had held the echoed frame when this one was made, us. */
  public int heldMicros;

  /** PWM frequency, Hz. */
  public double pwmHz;

  /** Level of the heartbeat wire: every change is one edge. */
  public boolean heartbeatLevel;

  /** Warning lamp on. */
  public boolean lamp;

  /** Commands and beliefs; fields that do not travel stay as they are. */
  public final Outputs outputs = new Outputs();

  /** Writes the frame from {@code out} and the fields of this one. */
  void write(FrameWriter to, int sequence, Outputs out) {
    to.begin(Frame.OUTPUTS, sequence);
    to.put32(stampMicros);
    to.put32(echo);
    to.put32(heldMicros);
    to.put16(flags(out));
    to.putFloat(out.dutyFraction);
    to.putFloat(pwmHz);
    to.put8(out.state.ordinal());
    to.put8(out.waiting.ordinal());
    to.put8(out.gear);
    to.put8(0);
    to.put64(out.activeFaults);
    to.put64(out.findings);
    to.putFloat(out.mapKpaAbs);
    to.putFloat(out.targetKpaAbs);
    to.putFloat(out.ambientKpaAbs);
    to.put32((int) out.lateTicks);
    to.end();
  }

  private int flags(Outputs out) {
    return (out.pwmEnabled ? PWM_ENABLED : 0)
        | (out.coilSupplyClosed ? COIL_SUPPLY : 0)
        | (out.engineCutRequest ? ENGINE_CUT : 0)
        | (heartbeatLevel ? HEARTBEAT_LEVEL : 0)
        | (out.heartbeatPermitted ? HEARTBEAT_PERMITTED : 0)
        | (lamp ? LAMP : 0)
        | (out.spooling ? SPOOLING : 0)
        | (echoValid ? ECHO : 0);
  }

  /** Reads the frame just completed. A state that does not exist reads as the locked one. */
  void read(FrameDecoder from) {
    stampMicros = from.get32();
    echo = from.get32();
    heldMicros = from.get32();
    int flags = from.get16();
    heartbeatLevel = (flags & HEARTBEAT_LEVEL) != 0;
    lamp = (flags & LAMP) != 0;
    echoValid = (flags & ECHO) != 0;
    outputs.pwmEnabled = (flags & PWM_ENABLED) != 0;
    outputs.coilSupplyClosed = (flags & COIL_SUPPLY) != 0;
    outputs.engineCutRequest = (flags & ENGINE_CUT) != 0;
    outputs.heartbeatPermitted = (flags & HEARTBEAT_PERMITTED) != 0;
    outputs.spooling = (flags & SPOOLING) != 0;
    outputs.dutyFraction = from.getFloat();
    pwmHz = from.getFloat();
    int state = from.get8();
    outputs.state = state < STATES.length ? STATES[state] : SafetyState.LOCKED_UNTIL_RESTART;
    int waiting = from.get8();
    outputs.waiting = waiting < WAITINGS.length ? WAITINGS[waiting] : Waiting.FAULT;
    outputs.gear = from.get8();
    from.get8();
    outputs.activeFaults = from.get64();
    outputs.findings = from.get64();
    outputs.mapKpaAbs = from.getFloat();
    outputs.targetKpaAbs = from.getFloat();
    outputs.ambientKpaAbs = from.getFloat();
    outputs.lateTicks = from.get32() & 0xFFFFFFFFL;
  }
}
