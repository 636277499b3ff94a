package org.boostwright.rig.link;

import static org.assertj.core.api.Assertions.assertThat;

import org.boostwright.core.monitor.FaultCode;
import org.boostwright.rig.link.CaseOutcome.Verdict;
import org.boostwright.rig.link.FaultCase.Reaction;
import org.junit.jupiter.api.Test;

/** What counts as passed, as failed, and as proving nothing. */
class CaseJudgeTest {
  private static final FaultCase OPEN =
      FaultCase.of("s1", "wire open").within(40.0).reports(FaultCode.MAP_SIGNAL_LOW);
  private static final long LOW = FaultCode.MAP_SIGNAL_LOW.bit();
  private static final long STALE = FaultCode.MAP_STALE.bit();

  /** Old after 45 ms; two ticks pass between sampling and reading. */
  private final CaseJudge judge = new CaseJudge(15.0);

  private Verdict verdict(
      FaultCase fault, double millis, long faults, double lineMillis, double rigMillis) {
    boolean reacted = !Double.isNaN(millis);
    return judge
        .judge(
            fault,
            new CaseJudge.Seen(true, reacted, millis, faults, reacted, lineMillis, rigMillis, 180))
        .verdict();
  }

  @Test
  void inTimeAndRightlyReportedPassesWhateverTheLineDid() {
    assertThat(verdict(OPEN, 40.0, LOW, 0.0, 0.0)).isEqualTo(Verdict.PASSED);
    assertThat(verdict(OPEN, 20.0, LOW, 300.0, 90.0)).isEqualTo(Verdict.PASSED);
  }

  @Test
  void tooLateFailsAndALateLineIsNoExcuse() {
    assertThat(verdict(OPEN, 40.1, LOW, 0.0, 0.0)).isEqualTo(Verdict.FAILED);
    assertThat(verdict(OPEN, 60.0, LOW, 300.0, 0.0)).isEqualTo(Verdict.FAILED);
  }

  @Test
  void tooLateProvesNothingOnlyWhereTheMachineStoodStillForLonger() {
    assertThat(verdict(OPEN, 60.0, LOW, 0.0, 25.0)).isEqualTo(Verdict.INVALID);
    assertThat(verdict(OPEN, 60.0, LOW, 0.0, 15.0)).isEqualTo(Verdict.FAILED);
  }

  @Test
  void oldSamplesAreExcusedByALineThatWasThatLateAndBySlightlyLessNot() {
    assertThat(verdict(OPEN, 10.0, STALE, 35.0, 0.0)).isEqualTo(Verdict.INVALID);
    assertThat(verdict(OPEN, 10.0, STALE, 34.9, 0.0)).isEqualTo(Verdict.FAILED);
    assertThat(verdict(OPEN, 10.0, LOW | STALE, 50.0, 0.0)).isEqualTo(Verdict.INVALID);
  }

  @Test
  void noOtherFaultIsEverExcused() {
    long noise = FaultCode.MAP_NOISY.bit();
    assertThat(verdict(OPEN, 10.0, LOW | noise, 300.0, 90.0)).isEqualTo(Verdict.FAILED);
    long late = FaultCode.TICK_LATE.bit();
    assertThat(verdict(OPEN, 10.0, LOW | late, 300.0, 4.0)).isEqualTo(Verdict.FAILED);
    assertThat(verdict(OPEN, 10.0, LOW | late, 0.0, 6.0)).isEqualTo(Verdict.INVALID);
  }

  @Test
  void noReactionFailsOnAQuietMachine() {
    assertThat(verdict(OPEN, Double.NaN, 0L, 5.0, 1.0)).isEqualTo(Verdict.FAILED);
  }

  @Test
  void aTimeThatIsNoNumberFails() {
    CaseJudge.Seen seen = new CaseJudge.Seen(true, true, Double.NaN, LOW, true, 0.0, 0.0, 180.0);
    assertThat(judge.judge(OPEN, seen).verdict()).isEqualTo(Verdict.FAILED);
  }

  @Test
  void withoutItsEffectNothingIsProved() {
    CaseJudge.Seen seen = new CaseJudge.Seen(false, true, 10.0, LOW, true, 0.0, 0.0, 180.0);
    assertThat(judge.judge(OPEN, seen).verdict()).isEqualTo(Verdict.INVALID);
  }

  @Test
  void restWhereASubstituteIsWantedFails() {
    FaultCase air =
        FaultCase.of("s12", "air").must(Reaction.REPORTED).reports(FaultCode.INTAKE_AIR_SIGNAL);
    long bits = FaultCode.INTAKE_AIR_SIGNAL.bit();
    CaseJudge.Seen rested = new CaseJudge.Seen(true, true, 5.0, bits, true, 0.0, 0.0, 180.0);
    CaseJudge.Seen going = new CaseJudge.Seen(true, true, 5.0, bits, false, 0.0, 0.0, 180.0);
    assertThat(judge.judge(air, rested).verdict()).isEqualTo(Verdict.FAILED);
    assertThat(judge.judge(air, going).verdict()).isEqualTo(Verdict.PASSED);
  }
}
