package org.boostwright.core.link;

import static org.assertj.core.api.Assertions.assertThat;

import java.lang.management.ManagementFactory;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Random;
import org.boostwright.core.AnalogChannel;
import org.boostwright.core.Outputs;
import org.boostwright.core.TestSettings;
import org.boostwright.core.monitor.FaultCode;
import org.boostwright.core.state.SafetyState;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/** Both ends, the real controller and a wire, in stepped time. */
@Tag("L1")
class LinkEndsTest {
  private final LinkBench bench = new LinkBench(TestSettings.car());

  private void driveToBoost() {
    bench.driveToBoost();
    assertThat(bench.outputs.activeFaults).isZero();
    assertThat(bench.outputs.state).isEqualTo(SafetyState.CONTROLLING);
    assertThat(bench.outputs.dutyFraction).isPositive();
  }

  private static void assertAtRest(Outputs out) {
    assertThat(out.dutyFraction).isZero();
    assertThat(out.pwmEnabled).isFalse();
    assertThat(out.coilSupplyClosed).isFalse();
  }

  /** Ticks until the controller rests, ms. */
  private double millisToRest(int mostTicks) {
    for (int i = 1; i <= mostTicks; i++) {
      bench.tick();
      if (bench.outputs.state.isRest()) {
        assertAtRest(bench.outputs);
        return 5.0 * i;
      }
    }
    throw new AssertionError("never at rest");
  }

  @Test
  void theControllerDrivesTheCarThroughTheLinkAndNothingIsMissed() {
    driveToBoost();
    bench.run(40.0); // sequence and stamps roll over 20 s after start
    assertThat(bench.outputs.activeFaults).isZero();
    assertThat(bench.controllerEnd.peer().sequence().missed()).isZero();
    assertThat(bench.controllerEnd.peer().sequence().notNew()).isZero();
    assertThat(bench.rigEnd.peer().sequence().missed()).isZero();
    assertThat(bench.controllerEnd.peer().sequence().last()).isPositive();
    assertThat(bench.lastRoundTripNanos).isEqualTo(2 * bench.delayNanos);
    assertThat(bench.lastRigDuty).isEqualTo((float) bench.outputs.dutyFraction);
    assertThat(bench.rigEnd.peer().settingsDigest()).isEqualTo(0x1122L);
  }

  @Test
  void valuesAndTimesArriveAsTheyWereSent() {
    driveToBoost();
    int map = AnalogChannel.MAP.ordinal();
    assertThat(bench.seen.volts[map]).isEqualTo((float) bench.car.volts[map]);
    long flight = bench.seen.sampleNanos[map] - bench.car.sampleNanos[map];
    assertThat(flight).isBetween(bench.delayNanos - 1000L, bench.delayNanos + 20_000L);
    assertThat(bench.seen.enginePeriodNanos).isEqualTo((float) bench.car.enginePeriodNanos);
    assertThat(bench.seen.answered[AnalogChannel.SUPPLY.ordinal()]).isFalse();
  }

  @Test
  void aValueThatIsNotANumberTravelsAndRests() {
    driveToBoost();
    bench.mapVolts = Double.NaN;
    assertThat(millisToRest(10)).isLessThanOrEqualTo(40.0);
    bench.run(0.02);
    assertThat(bench.outputs.activeFaults & FaultCode.MAP_NOT_A_NUMBER.bit()).isNotZero();
  }

  @Test
  void silenceRestsWithin100Ms() {
    driveToBoost();
    bench.toController = frame -> List.of();
    assertThat(millisToRest(20)).isLessThanOrEqualTo(100.0);
  }

  @Test
  void everyFrameCorruptedRestsWithin100Ms() {
    driveToBoost();
    Random random = new Random(5);
    bench.toController =
        frame -> {
          frame[1 + random.nextInt(frame.length - 2)] ^= (byte) (1 << random.nextInt(8));
          return List.of(frame);
        };
    assertThat(millisToRest(20)).isLessThanOrEqualTo(100.0);
  }

  @Test
  void theSameFrameOverAndOverRestsWithin100Ms() {
    driveToBoost();
    List<byte[]> first = new ArrayList<>();
    bench.toController =
        frame -> {
          if (first.isEmpty() && frame.length > 40) { // not a handshake
            first.add(frame);
          }
          return first;
        };
    assertThat(millisToRest(20)).isLessThanOrEqualTo(100.0);
    assertThat(bench.controllerEnd.peer().sequence().notNew()).isPositive();
  }

  @Test
  void aDelayThatStartsRestsWithin100Ms() {
    driveToBoost();
    bench.delayNanos = 60 * LinkBench.MILLI;
    assertThat(millisToRest(20)).isLessThanOrEqualTo(100.0);
    bench.run(5.0);
    assertAtRest(bench.outputs);
  }

  @Test
  void aDelayFromTheBeginningNeverBecomesReady() {
    bench.delayNanos = 30 * LinkBench.MILLI;
    bench.mapVolts = TestSettings.mapVolts(40.0);
    bench.throttleVolts = TestSettings.throttleVolts(8.0);
    bench.engineRpm = 900.0;
    for (int i = 0; i < 2000; i++) {
      bench.tick();
      assertAtRest(bench.outputs);
    }
    assertThat(bench.controllerEnd.tooOld()).isPositive();
  }

  @Test
  void aDelayThatCreepsRestsBeforeItReachesTheBound() {
    driveToBoost();
    // 150 us per second is less than two crystals may differ: no clock can tell, the echo can.
    for (int second = 0; second < 400; second++) {
      bench.run(1.0);
      bench.delayNanos += 150_000L;
      if (bench.outputs.state.isRest()) {
        break;
      }
    }
    assertAtRest(bench.outputs);
    assertThat(2 * bench.delayNanos).isLessThan(ControllerEnd.OLDEST_NANOS);
  }

  @Test
  void pairsOutOfOrderPassTheNewerAndDropTheOlder() {
    driveToBoost();
    List<byte[]> held = new ArrayList<>();
    bench.toController =
        frame -> {
          held.add(frame);
          if (held.size() < 2) {
            return List.of();
          }
          List<byte[]> swapped = List.of(held.get(1), held.get(0));
          held.clear();
          return swapped;
        };
    bench.run(1.0);
    assertThat(bench.outputs.activeFaults).isZero();
    assertThat(bench.outputs.state).isEqualTo(SafetyState.CONTROLLING);
    assertThat(bench.controllerEnd.peer().sequence().notNew()).isGreaterThan(90L);
  }

  @Test
  void oneFrameLostInTenIsRiddenThrough() {
    driveToBoost();
    int[] count = {0};
    bench.toController = frame -> count[0]++ % 10 == 0 ? List.of() : List.of(frame);
    bench.run(2.0);
    assertThat(bench.outputs.state).isEqualTo(SafetyState.CONTROLLING);
    assertThat(bench.controllerEnd.peer().sequence().missed()).isBetween(38L, 42L);
  }

  @Test
  void aRigThatStartsAnewIsTakenUpAndAStrangerIsNot() {
    driveToBoost();
    bench.rigEnd = new RigEnd(bench.nowNanos, 99, 0L);
    bench.run(0.5);
    assertThat(bench.controllerEnd.peer().sessions()).isEqualTo(2);
    assertThat(bench.controllerEnd.peer().silenceNanos(bench.nowNanos)).isLessThan(10_000_000L);

    bench.toController =
        frame -> {
          // The protocol number is byte 5 of the body of a handshake; 7 is nobody's.
          byte[] inner = Arrays.copyOfRange(frame, 1, frame.length - 1);
          byte[] body = new byte[Frame.MAX_BODY_BYTES];
          int length = Cobs.decode(inner, inner.length, body);
          if (body[0] != Frame.HELLO) {
            return List.of(frame);
          }
          body[6] = 7;
          int crc = Crc16.of(body, length - 2);
          body[length - 2] = (byte) (crc >> 8);
          body[length - 1] = (byte) crc;
          byte[] wire = new byte[Frame.MAX_WIRE_BYTES];
          int encoded = Cobs.encode(body, length, wire, 1);
          return List.of(Arrays.copyOf(wire, encoded + 2));
        };
    bench.run(1.0);
    assertThat(bench.controllerEnd.peer().state()).isEqualTo(Peer.State.OTHER_PROTOCOL);
    assertThat(bench.controllerEnd.peer().protocol()).isEqualTo(7);
    assertAtRest(bench.outputs);
  }

  @Test
  void twoControllersOnOneLineSayNothingToEachOther() {
    ControllerEnd one = new ControllerEnd(0L, 1, 0L);
    ControllerEnd two = new ControllerEnd(0L, 2, 0L);
    assertThat(one.writeHello(0L)).isTrue();
    two.receive(one.frame().wire(), one.frame().wireLength(), 1L);
    assertThat(two.peer().state()).isEqualTo(Peer.State.SAME_ROLE);
    one.write(5L, new Outputs(), 30.0, false, false);
    two.receive(one.frame().wire(), one.frame().wireLength(), 6L);
    assertThat(two.peer().silenceNanos(10L)).isEqualTo(Long.MAX_VALUE);
  }

  @Test
  void aSilentCableThatComesBackIsTakenUpAgain() {
    driveToBoost();
    LinkBench.Wire whole = bench.toController;
    bench.toController = frame -> List.of();
    bench.run(8.0); // longer than the window of the sequence watch
    bench.toController = whole;
    bench.run(1.0);
    assertThat(bench.controllerEnd.peer().silenceNanos(bench.nowNanos)).isLessThan(10_000_000L);
  }

  @Test
  void oneFrameThatSlipsThroughByChanceDoesNotShutOutTheGoodOnes() {
    SequenceWatch watch = new SequenceWatch();
    assertThat(watch.accept(10)).isTrue();
    assertThat(watch.accept(1_000_000)).isFalse();
    assertThat(watch.accept(11)).isTrue();
    assertThat(watch.accept(11)).isFalse();
    assertThat(watch.accept(10)).isFalse();
    assertThat(watch.accept(14)).isTrue();
    assertThat(watch.missed()).isEqualTo(2);
    watch.restart();
    assertThat(watch.accept(Integer.MAX_VALUE)).isTrue();
    assertThat(watch.accept(Integer.MIN_VALUE)).isTrue();
  }

  @Test
  void theSlowerCrystalIsFollowedAndNeverMistakenForAge() {
    PeerClock clock = new PeerClock();
    Random random = new Random(6);
    long worst = 0L;
    for (int i = 0; i < 200_000; i++) {
      long sent = i * 5_000_000L;
      int stamp = (int) (long) (sent * (1.0 - 150e-6) / 1000.0); // peer runs 150 ppm slow
      long arrived = sent + 200_000L + (long) (random.nextDouble() * 300_000L);
      long placed = clock.arrived(stamp, arrived);
      worst = Math.max(worst, arrived - placed);
    }
    assertThat(worst).isLessThan(400_000L);
  }

  @Test
  void bothEndsAllocateNothingOnceWarm() {
    driveToBoost();
    ControllerEnd end = bench.controllerEnd;
    RigEnd rig = bench.rigEnd;
    bench.run(1.0);
    RigEnd.Listener listener = (frame, arrived, tick, roundTrip) -> {};
    var threads = (com.sun.management.ThreadMXBean) ManagementFactory.getThreadMXBean();
    long counted = Long.MAX_VALUE;
    for (int round = 0; round < 20; round++) {
      long before = threads.getCurrentThreadAllocatedBytes();
      for (int i = 0; i < 20_000; i++) {
        bench.nowNanos += 5_000_000L;
        rig.write(bench.nowNanos, bench.car);
        end.receive(rig.frame().wire(), rig.frame().wireLength(), bench.nowNanos + 100_000L);
        end.read(bench.nowNanos + 200_000L, bench.seen);
        end.write(bench.nowNanos + 200_000L, bench.outputs, 30.0, false, false);
        rig.receive(
            end.frame().wire(), end.frame().wireLength(), bench.nowNanos + 300_000L, listener);
      }
      counted = threads.getCurrentThreadAllocatedBytes() - before;
    }
    assertThat(counted).isZero();
  }
}
