package org.boostwright.core.link;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.ByteBuffer;
import java.util.Arrays;
import org.boostwright.core.AnalogChannel;
import org.boostwright.core.Inputs;
import org.boostwright.core.Outputs;
import org.boostwright.core.monitor.FaultCode;
import org.boostwright.core.state.SafetyState;
import org.boostwright.core.state.Waiting;
import org.junit.jupiter.api.Test;

/** The bytes of every frame, built a second time by hand from docs/link.md. */
class FrameLayoutTest {
  private static byte[] body(FrameWriter frame) {
    assertThat(frame.wire()[0]).isZero();
    assertThat(frame.wire()[frame.wireLength() - 1]).isZero();
    byte[] inner = Arrays.copyOfRange(frame.wire(), 1, frame.wireLength() - 1);
    byte[] body = new byte[200];
    return Arrays.copyOf(body, Cobs.decode(inner, inner.length, body));
  }

  private static byte[] withCrc(ByteBuffer payload) {
    byte[] bytes = payload.array();
    int crc = Crc16.of(bytes, bytes.length - 2);
    payload.putShort((short) crc);
    assertThat(payload.remaining()).isZero();
    return bytes;
  }

  @Test
  void helloIs25BytesOnTheWire() {
    ControllerEnd end = new ControllerEnd(0L, 0xCAFE0001, 0x0123456789ABCDEFL);
    assertThat(end.writeHello(0L)).isTrue();
    ByteBuffer want = ByteBuffer.allocate(22);
    want.put((byte) 1).putInt(-4000).putShort((short) 1).put((byte) 1).putInt(0xCAFE0001);
    want.putLong(0x0123456789ABCDEFL);
    assertThat(body(end.frame())).isEqualTo(withCrc(want));
    assertThat(end.frame().wireLength()).isEqualTo(25);
    assertThat(end.writeHello(499_999_999L)).isFalse();
    assertThat(end.writeHello(500_000_000L)).isTrue();
  }

  @Test
  void inputsIs92BytesOnTheWire() {
    RigEnd end = new RigEnd(1_000_000L, 5, 0L);
    Inputs in = new Inputs();
    in.sample(AnalogChannel.MAP, 2.5, 6_000_000L);
    in.sample(AnalogChannel.SUPPLY, Double.NaN, 6_010_000L);
    in.enginePeriodNanos = 7.5e6;
    in.enginePulseNanos = 5_000_000L;
    in.engineSeen = true;
    in.keyOn = true;
    in.coilEnergised = true;
    end.write(6_020_000L, in);
    ByteBuffer want = ByteBuffer.allocate(89);
    want.put((byte) 2).putInt(-3999).putInt(-20_000_000 + 5020).putInt(0);
    want.putShort((short) (1 | 1 << 2 | 1 << 6 | 1 << 8 | 1 << 14));
    want.putFloat(2.5f).putInt(-20_000_000 + 5000);
    for (int c = 1; c < 6; c++) {
      want.putFloat(0f).putInt(-20_000_000 - 1000);
    }
    want.putFloat(Float.NaN).putInt(-20_000_000 + 5010);
    want.putFloat(7.5e6f).putInt(-20_000_000 + 4000).putFloat(0f).putInt(-20_000_000 - 1000);
    assertThat(body(end.frame())).isEqualTo(withCrc(want));
    assertThat(end.frame().wireLength()).isEqualTo(92);
  }

  @Test
  void outputsIs68BytesOnTheWire() {
    ControllerEnd end = new ControllerEnd(0L, 5, 0L);
    Outputs out = new Outputs();
    out.dutyFraction = 0.375;
    out.pwmEnabled = true;
    out.heartbeatPermitted = true;
    out.state = SafetyState.HELD_AT_SPRING;
    out.waiting = Waiting.PROOF;
    out.gear = 3;
    out.activeFaults = FaultCode.OVERBOOST.bit();
    out.findings = FaultCode.TARGET_LIMITED.bit();
    out.mapKpaAbs = 180.5;
    out.targetKpaAbs = Double.NaN;
    out.ambientKpaAbs = 101.25;
    out.lateTicks = 258;
    end.write(7_000_000L, out, 31.5, true, true);
    ByteBuffer want = ByteBuffer.allocate(65);
    want.put((byte) 3).putInt(-3999).putInt(-20_000_000 + 7000).putInt(0).putInt(0);
    want.putShort((short) (1 | 1 << 3 | 1 << 4 | 1 << 5));
    want.putFloat(0.375f).putFloat(31.5f).put((byte) 3).put((byte) 5).put((byte) 3).put((byte) 0);
    want.putLong(1L << FaultCode.OVERBOOST.ordinal());
    want.putLong(1L << FaultCode.TARGET_LIMITED.ordinal());
    want.putFloat(180.5f).putFloat(Float.NaN).putFloat(101.25f).putInt(258);
    assertThat(body(end.frame())).isEqualTo(withCrc(want));
    assertThat(end.frame().wireLength()).isEqualTo(68);
  }

  /** The order of both lists stands in the document and in every recorded link. */
  @Test
  void statesAndWaitingsKeepTheirNumbers() {
    assertThat(SafetyState.values())
        .extracting(SafetyState::words)
        .containsExactly(
            "resting", "ready", "controlling", "held at spring", "locked until restart", "bench");
    assertThat(Waiting.values())
        .containsExactly(
            Waiting.NOTHING,
            Waiting.FAULT,
            Waiting.KEY,
            Waiting.PERMIT,
            Waiting.SPRING_ONLY_SWITCH,
            Waiting.PROOF,
            Waiting.AMBIENT,
            Waiting.ENGINE,
            Waiting.SENSOR_LIFE,
            Waiting.DEMAND);
  }
}
