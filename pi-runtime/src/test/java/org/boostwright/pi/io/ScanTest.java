package org.boostwright.pi.io;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import org.boostwright.core.AnalogChannel;
import org.boostwright.core.Inputs;
import org.boostwright.core.settings.ConverterSettings;
import org.boostwright.core.settings.ConverterSettings.Kind;
import org.boostwright.core.settings.ScanPlan;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/** Which channel is converted when, in what time, and what a failure leaves behind. */
@Tag("B1")
class ScanTest {
  private static final int MAP = AnalogChannel.MAP.ordinal();
  private static final int THROTTLE = AnalogChannel.THROTTLE.ordinal();

  private final SteppedClock clock = new SteppedClock(0L);
  private final Ads1115Model chip = new Ads1115Model(clock, 400e3);
  private final Inputs inputs = new Inputs();

  static ConverterSettings settings(Kind kind, AnalogChannel... channels) {
    int[] inputs = new int[AnalogChannel.COUNT];
    Arrays.fill(inputs, ConverterSettings.NOT_WIRED);
    for (int i = 0; i < channels.length; i++) {
      inputs[channels[i].ordinal()] = i;
    }
    return new ConverterSettings(kind, 1, 0x48, 6.144, inputs);
  }

  private static final ConverterSettings FOUR =
      settings(
          Kind.ADS1115,
          AnalogChannel.MAP,
          AnalogChannel.THROTTLE,
          AnalogChannel.INTAKE_AIR,
          AnalogChannel.SUPPLY);

  private AnalogScan scan() {
    return new AnalogScan(new Ads1115(chip, clock, 6.144), ScanPlan.of(FOUR), clock);
  }

  /** 860/s less 10 % is 774; four inputs at 200 Hz would be 800. */
  @Test
  void anAds1115GivesPressureInEveryTickAndTheOthersInTurn() {
    ScanPlan plan = ScanPlan.of(FOUR);
    assertThat(1e9 / (plan.convertNanos())).isLessThan(774.0);
    assertThat(plan.conversionsPerPass()).isEqualTo(2);
    assertThat(plan.passNanos()).isLessThan(ScanPlan.BUDGET_NANOS);
    assertThat(plan.periodMillis(AnalogChannel.MAP)).isEqualTo(5.0);
    assertThat(plan.periodMillis(AnalogChannel.THROTTLE)).isEqualTo(10.0);
    assertThat(plan.periodMillis(AnalogChannel.INTAKE_AIR)).isEqualTo(20.0);
    assertThat(plan.periodMillis(AnalogChannel.SUPPLY)).isEqualTo(20.0);
    assertThat(plan.periodMillis(AnalogChannel.COOLANT)).isInfinite();
  }

  /** By hand: 1/774 s, and 38 and twice 48 clocks of the bus. */
  @Test
  void a100KilohertzBusLeavesNoTimeForTwo() {
    assertThat(ScanPlan.ads1115ConvertNanos(400_000)).isCloseTo(1_627_000L, within(1_000L));
    assertThat(ScanPlan.ads1115ConvertNanos(100_000)).isCloseTo(2_632_000L, within(1_000L));
    assertThat(2 * ScanPlan.ads1115ConvertNanos(100_000)).isGreaterThan(ScanPlan.BUDGET_NANOS);
  }

  @Test
  void anMcp3208GivesEveryChannelInEveryTick() {
    ScanPlan plan =
        ScanPlan.of(
            settings(
                Kind.MCP3208,
                AnalogChannel.MAP,
                AnalogChannel.THROTTLE,
                AnalogChannel.PEDAL,
                AnalogChannel.INTAKE_AIR,
                AnalogChannel.COOLANT,
                AnalogChannel.BAROMETER,
                AnalogChannel.SUPPLY));
    assertThat(plan.conversionsPerPass()).isEqualTo(7);
    for (AnalogChannel channel : AnalogChannel.values()) {
      assertThat(plan.periodMillis(channel)).isEqualTo(5.0);
    }
  }

  @Test
  void whatTheScanDoesIsWhatThePlanSays() {
    AnalogScan scan = scan();
    chip.rateFactor = 0.9;
    long[] last = new long[AnalogChannel.COUNT];
    long[] longest = new long[AnalogChannel.COUNT];
    long longestPass = 0L;
    for (int pass = 0; pass < 400; pass++) {
      long start = pass * ScanPlan.PASS_NANOS;
      clock.sleepUntil(start);
      scan.pass();
      longestPass = Math.max(longestPass, clock.nanoTime() - start);
      scan.read(inputs);
      for (int c = 0; c < AnalogChannel.COUNT; c++) {
        if (inputs.answered[c] && inputs.sampleNanos[c] != last[c]) {
          longest[c] =
              last[c] == 0L ? longest[c] : Math.max(longest[c], inputs.sampleNanos[c] - last[c]);
          last[c] = inputs.sampleNanos[c];
        }
      }
    }
    assertThat(longestPass).isLessThan(ScanPlan.BUDGET_NANOS);
    assertThat(longest[MAP]).isCloseTo(5_000_000L, within(300_000L));
    assertThat(longest[THROTTLE]).isCloseTo(10_000_000L, within(300_000L));
    assertThat(longest[AnalogChannel.SUPPLY.ordinal()]).isCloseTo(20_000_000L, within(300_000L));
    assertThat(scan.failures()).isZero();
  }

  @Test
  void oneMissingAcknowledgeIsTriedAgainInTheSamePass() {
    AnalogScan scan = scan();
    chip.pinVolts[0] = 2.0;
    chip.nacks = 1;
    scan.pass();
    scan.read(inputs);
    assertThat(inputs.answered[MAP]).isTrue();
    assertThat(inputs.volts[MAP]).isEqualTo(2.0, within(187.5e-6));
    assertThat(scan.failures()).isEqualTo(1);
    assertThat(scan.lastFailure()).contains("acknowledge");
    assertThat(clock.nanoTime()).isLessThan(ScanPlan.PASS_NANOS);
  }

  @Test
  void aConverterThatDoesNotAnswerLeavesNoOldValueMarkedValidAndStaysWithinThePass() {
    AnalogScan scan = scan();
    chip.pinVolts[0] = 2.0;
    scan.pass();
    scan.read(inputs);
    long sampled = inputs.sampleNanos[MAP];
    chip.nacks = Integer.MAX_VALUE;
    for (int pass = 1; pass < 20; pass++) {
      clock.sleepUntil(pass * ScanPlan.PASS_NANOS);
      scan.pass();
      assertThat(clock.nanoTime()).isLessThan((pass + 1) * ScanPlan.PASS_NANOS);
      scan.read(inputs);
      assertThat(inputs.answered[MAP]).isFalse();
      assertThat(inputs.sampleNanos[MAP]).isEqualTo(sampled);
    }
    chip.nacks = 0;
    scan.pass();
    scan.read(inputs);
    assertThat(inputs.answered[MAP]).isTrue();
  }

  @Test
  void aFailureLateInThePassIsNotTriedAgainBeyondTheBudget() {
    AnalogScan scan = scan();
    chip.stuckBusy = true;
    clock.advance(1L);
    scan.pass();
    assertThat(scan.failures()).isEqualTo(2);
    assertThat(clock.nanoTime()).isLessThan(ScanPlan.PASS_NANOS);
    scan.read(inputs);
    assertThat(inputs.answered[MAP]).isFalse();
  }

  @Test
  void passesBeginSoThatThePressureIsReadyForTheTick() {
    long lead = 1_900_000L;
    assertThat(ScanThread.nextStart(0L, lead)).isEqualTo(3_100_000L);
    assertThat(ScanThread.nextStart(3_099_999L, lead)).isEqualTo(3_100_000L);
    assertThat(ScanThread.nextStart(3_100_000L, lead)).isEqualTo(8_100_000L);
    assertThat(ScanThread.nextStart(-1L, lead)).isEqualTo(3_100_000L);
  }
}
