package org.boostwright.pi.io;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The PWM channel on a folder that stands in for sysfs. */
@Tag("E2")
@Tag("E3")
class SysfsPwmTest {
  @TempDir Path root;
  private SysfsFolder sysfs;
  private final SteppedClock clock = new SteppedClock(0L);

  @BeforeEach
  void make() throws IOException {
    sysfs = new SysfsFolder(root);
  }

  private SysfsPwm open() throws IOException {
    return SysfsPwm.open(sysfs.places().pwm(), 0, 0, 30.0, clock, sysfs::open);
  }

  @Test
  void aChannelLeftRunningIsOffBeforeAnythingElseIsDone() throws IOException {
    open();
    assertThat(sysfs.diary).containsExactly("duty_cycle=0", "enable=0", "period=33333333");
    assertThat(sysfs.value("duty_cycle")).isEqualTo("0");
    assertThat(sysfs.value("enable")).isEqualTo("0");
  }

  @Test
  void aChannelThatNeverRanGetsAPeriodBeforeAnythingElse() throws IOException {
    sysfs.neverRan();
    SysfsPwm pwm = open();
    assertThat(sysfs.diary).containsExactly("period=33333333");
    assertThat(pwm.verified()).isTrue();
    pwm.setDuty(0.4);
    pwm.enable();
    assertThat(pwm.verified()).isTrue();
  }

  @Test
  void switchingEverythingOffLeavesAChannelThatNeverRanAlone() throws IOException {
    sysfs.neverRan();
    Files.delete(sysfs.channel().resolve("duty_cycle")); // a write to it would be a trouble
    Files.createDirectory(sysfs.channel().resolve("duty_cycle"));
    assertThat(SysfsPwm.allOff(sysfs.places().pwm())).isEmpty();
    sysfs.intrude("period", "33333333");
    assertThat(SysfsPwm.allOff(sysfs.places().pwm())).hasSize(1);
  }

  @Test
  void aDutyUpdateIsOneWriteToDutyCycleAndThePeriodIsNeverRewritten() throws IOException {
    SysfsPwm pwm = open();
    pwm.setDuty(0.5);
    pwm.enable();
    sysfs.diary.clear();
    for (int i = 1; i <= 100; i++) {
      pwm.setDuty(i / 200.0);
      pwm.enable();
      assertThat(sysfs.diary).containsExactly("duty_cycle=" + Math.round(i / 200.0 * 33_333_333));
      assertThat(sysfs.value("duty_cycle")).isEqualTo(sysfs.diary.get(0).substring(11));
      assertThat(pwm.verified()).isTrue();
      sysfs.diary.clear();
    }
    pwm.setDuty(0.5);
    assertThat(sysfs.diary).as("the same duty again is no write").isEmpty();
  }

  @Test
  void aShorterNumberAfterALongerOneIsReadBackRight() throws IOException {
    SysfsPwm pwm = open();
    pwm.setDuty(1.0);
    assertThat(pwm.verified()).isTrue();
    pwm.setDuty(3e-8);
    assertThat(sysfs.value("duty_cycle")).isEqualTo("1");
    assertThat(pwm.verified()).isTrue();
  }

  @Test
  void offIsDutyZeroAndDisabled() throws IOException {
    SysfsPwm pwm = open();
    pwm.setDuty(0.4);
    pwm.enable();
    sysfs.diary.clear();
    pwm.off();
    assertThat(sysfs.diary).containsExactly("duty_cycle=0", "enable=0");
    assertThat(sysfs.value("duty_cycle")).isEqualTo("0");
    assertThat(sysfs.value("enable")).isEqualTo("0");
    assertThat(pwm.verified()).isTrue();
  }

  @Test
  void offStillDisablesWhenTheDutyCannotBeWritten() throws IOException {
    SysfsPwm pwm = open();
    pwm.setDuty(0.4);
    pwm.enable();
    sysfs.failing = "duty_cycle";
    assertThatThrownBy(pwm::off).isInstanceOf(IOException.class);
    assertThat(sysfs.value("enable")).isEqualTo("0");
  }

  @Test
  void aDutyThatIsNoShareIsZero() throws IOException {
    SysfsPwm pwm = open();
    for (double bad : new double[] {Double.NaN, -0.1, 1.1, Double.POSITIVE_INFINITY}) {
      pwm.setDuty(0.3);
      pwm.setDuty(bad);
      assertThat(sysfs.value("duty_cycle")).isEqualTo("0");
    }
  }

  @Test
  void anIntruderIsNoticed() throws IOException {
    SysfsPwm pwm = open();
    sysfs.intrude("enable", "1");
    assertThat(pwm.verified()).isFalse();
    pwm.writeOff();
    assertThat(sysfs.value("enable")).isEqualTo("0");
    sysfs.intrude("duty_cycle", "500");
    assertThat(pwm.verified()).isFalse();
  }

  @Test
  void afterCloseThereIsNoWayBack() throws IOException {
    SysfsPwm pwm = open();
    pwm.setDuty(0.4);
    pwm.enable();
    pwm.close();
    assertThat(sysfs.value("enable")).isEqualTo("0");
    assertThat(sysfs.value("duty_cycle")).isEqualTo("0");
    assertThatThrownBy(pwm::enable).isInstanceOf(IOException.class);
    assertThatThrownBy(() -> pwm.setDuty(0.3)).isInstanceOf(IOException.class);
    assertThat(sysfs.value("enable")).isEqualTo("0");
  }

  @Test
  void theFrequencyChangesOnlyAtRest() throws IOException {
    SysfsPwm pwm = open();
    pwm.setDuty(0.4);
    pwm.enable();
    assertThatThrownBy(() -> pwm.setPeriod(39.0)).hasMessageContaining("at rest");
    pwm.off();
    sysfs.diary.clear();
    pwm.setPeriod(39.0);
    assertThat(sysfs.diary).containsExactly("period=25641026");
    assertThatThrownBy(() -> pwm.setPeriod(5.0)).hasMessageContaining("10 to 100");
    assertThatThrownBy(() -> pwm.setPeriod(Double.NaN)).isInstanceOf(IOException.class);
  }

  @Test
  void aDriverThatRefusesOrChangesThePeriodIsRefused() throws IOException {
    sysfs.failing = "period";
    assertThatThrownBy(this::open).hasMessageContaining("refuses a period of 33333333 ns");
    sysfs.failing = "";
    assertThatThrownBy(
            () ->
                SysfsPwm.open(
                    sysfs.places().pwm(),
                    0,
                    0,
                    30.0,
                    clock,
                    path ->
                        String.valueOf(path.getFileName()).equals("period")
                            ? otherPeriod(path)
                            : sysfs.open(path)))
        .hasMessageContaining("runs 20000000 ns");
  }

  private NumberFile otherPeriod(Path path) throws IOException {
    NumberFile file = sysfs.open(path);
    return new NumberFile() {
      @Override
      public void write(long number) throws IOException {
        file.write(20_000_000L);
      }

      @Override
      public long read() throws IOException {
        return file.read();
      }

      @Override
      public void close() {
        file.close();
      }
    };
  }

  @Test
  void aWrongChipOrChannelSaysWhatThereIs() {
    assertThatThrownBy(() -> SysfsPwm.open(sysfs.places().pwm(), 2, 0, 30.0, clock))
        .hasMessageContaining("no PWM chip 2")
        .hasMessageContaining("pwmchip0")
        .hasMessageContaining("pins.pwm_chip");
    assertThatThrownBy(() -> SysfsPwm.open(sysfs.places().pwm(), 0, 2, 30.0, clock))
        .hasMessageContaining("2 channels");
    assertThatThrownBy(() -> SysfsPwm.open(root.resolve("nothing"), 0, 0, 30.0, clock))
        .hasMessageContaining("no PWM driver is loaded");
  }

  @Test
  void aChannelThatIsNotExportedIsAskedForAndWaitedFor() throws IOException {
    assertThatThrownBy(() -> SysfsPwm.open(sysfs.places().pwm(), 0, 1, 30.0, clock))
        .hasMessageContaining("pwm1")
        .hasMessageContaining("group gpio");
    assertThat(Files.readString(root.resolve("pwm/pwmchip0/export"))).isEqualTo("1\n");
    assertThat(clock.nanoTime()).isGreaterThanOrEqualTo(2_000_000_000L);
  }

  @Test
  void invertedPolarityIsRefused() throws IOException {
    sysfs.intrude("polarity", "inversed");
    assertThatThrownBy(this::open).hasMessageContaining("inversed");
  }

  @Test
  void everythingIsSwitchedOffWithoutKnowingAnySettings() throws IOException {
    assertThat(SysfsPwm.allOff(sysfs.places().pwm())).isEmpty();
    assertThat(sysfs.value("enable")).isEqualTo("0");
    assertThat(sysfs.value("duty_cycle")).isEqualTo("0");
    assertThat(SysfsPwm.allOff(root.resolve("nothing"))).isEmpty();
  }
}
