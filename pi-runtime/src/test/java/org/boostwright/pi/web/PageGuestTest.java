package org.boostwright.pi.web;

import static org.assertj.core.api.Assertions.assertThat;

import com.sun.management.ThreadMXBean;
import java.lang.management.ManagementFactory;
import java.util.Locale;
import java.util.Random;
import java.util.Set;
import org.boostwright.core.AnalogChannel;
import org.boostwright.core.Controller;
import org.boostwright.core.Inputs;
import org.boostwright.core.Outputs;
import org.boostwright.core.bench.BenchInputs;
import org.boostwright.core.bench.BenchOutputs;
import org.boostwright.core.bench.BenchPlan;
import org.boostwright.core.bench.BenchStep;
import org.boostwright.core.bench.BenchVerdict;
import org.boostwright.core.bench.Heard;
import org.boostwright.core.bench.Question;
import org.boostwright.core.bench.TickedBench;
import org.boostwright.core.bench.Verdicts;
import org.boostwright.core.monitor.FaultCode;
import org.boostwright.core.record.LogFormat;
import org.boostwright.core.settings.Settings;
import org.boostwright.core.state.Permission;
import org.boostwright.core.state.SafetyState;
import org.boostwright.rig.bench.BenchSetup;
import org.boostwright.rig.bench.Person;
import org.boostwright.rig.bench.VirtualBench;
import org.boostwright.rig.plant.ProjectCar;
import org.boostwright.rig.scenario.ProjectCarSettings;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/** The page's end inside the tick, stepped, with the virtual bench at the wires. */
@Tag("W1")
class PageGuestTest {
  private static final int SAMPLES_PER_TICK = 5;

  private final Settings settings = ProjectCarSettings.load();
  private final PageGuest guest = new PageGuest(settings.valve().frequencyHz());
  private final BenchDesk desk = new BenchDesk(settings, guest);
  private final Controller controller = new Controller(settings, Permission.NONE);
  private final Inputs inputs = new Inputs();
  private final Outputs outputs = new Outputs();
  private final VirtualBench bench = new VirtualBench(BenchSetup.standard(), 3L);
  private final Person person = new Person(bench);
  private final BenchInputs line = new BenchInputs();
  private final BenchOutputs commanded = new BenchOutputs();
  private final Random noise = new Random(9);
  private final double[] row = new double[LogFormat.COLUMN_COUNT];
  private long now = 1_000_000_000L;
  private double hz = settings.valve().frequencyHz();
  private double engineRpm;

  PageGuestTest() {
    inputs.keyOn = true;
    inputs.permit = true;
    inputs.coilFeed = true;
  }

  private void tick() {
    now += Controller.TICK_NANOS;
    for (int i = 0; i < SAMPLES_PER_TICK; i++) {
      bench.sample(line);
    }
    sample(AnalogChannel.MAP, ProjectCar.mapVolts(line.lineKpaAbs));
    sample(AnalogChannel.THROTTLE, ProjectCar.throttleVolts(0.0));
    sample(AnalogChannel.INTAKE_AIR, ProjectCar.temperatureVolts(20.0));
    sample(AnalogChannel.SUPPLY, ProjectCar.supplyVolts(12.5));
    inputs.coilEnergised = bench.valve().coilAmps() > 0.05;
    if (engineRpm > 0.0) {
      inputs.engineSeen = true;
      inputs.enginePulseNanos = now - 1_000_000L;
      inputs.enginePeriodNanos = 60e9 / (engineRpm * ProjectCar.TACH_PULSES_PER_REV);
    }
    guest.before(now, inputs);
    controller.step(now, inputs, outputs);
    double wanted = guest.after(now, inputs, outputs);
    if (!outputs.pwmEnabled) {
      hz = wanted;
    }
    commanded.frequencyHz = hz;
    commanded.dutyFraction = outputs.dutyFraction;
    commanded.pwmEnabled = outputs.pwmEnabled;
    commanded.coilSupplyClosed = outputs.coilSupplyClosed;
    bench.command(commanded);
    LogFormat.fill(row, now, inputs, outputs);
  }

  private void sample(AnalogChannel channel, double volts) {
    inputs.sample(channel, volts + 1e-3 * noise.nextGaussian(), now);
  }

  private void ticks(int count) {
    for (int i = 0; i < count; i++) {
      tick();
    }
  }

  /** What the person says, as typed at the page. */
  private String said(Question question) {
    double answer = person.answer(question);
    return switch (BenchAnswer.form(question)) {
      case DONE -> "done";
      case YES_NO -> answer == 1.0 ? "yes" : "no";
      case HEARD -> {
        Heard heard = Heard.values()[(int) answer];
        yield switch (heard) {
          case NOTHING -> "nothing";
          case PUFF -> "puff";
          case STEADY_WHILE_ON -> "on";
          case STEADY_WHILE_OFF -> "off";
          case UNKNOWN -> "unknown";
        };
      }
      case NUMBER, OHMS -> String.format(Locale.ROOT, "%.0f", answer);
      case GAUGE -> String.format(Locale.ROOT, "%.1f kPa", answer);
    };
  }

  @Test
  void wholeBenchCompletesAtThePageAndFindsNothingOnASoundValve() {
    ticks(700);
    assertThat(desk.begin("", row)).isNull();
    int longest = 200 * 900;
    for (int i = 0; i < longest && guest.busy(); i++) {
      tick();
      Question question = guest.question();
      if (question != null && i % 200 == 0) {
        assertThat(desk.answer(question.name().toLowerCase(Locale.ROOT), said(question))).isNull();
      }
      assertThat(outputs.activeFaults).isZero();
    }
    TickedBench ended = guest.ended();
    assertThat(ended).isNotNull();
    assertThat(ended.session().record().aborted).isNull();
    assertThat(Verdicts.of(ended.session().record(), ended.session().plan()))
        .extracting(BenchVerdict::code)
        .isEmpty();
    JsonText json = new JsonText();
    desk.write(json);
    assertThat(json.toString()).contains("Nothing stands against this valve").contains("Usable duty");
    tick();
    assertThat(outputs.coilSupplyClosed).isFalse();
  }

  @Test
  void runningEngineRefusesTheBenchAndEndsOneInTheSameTick() {
    ticks(700);
    assertThat(desk.begin("click", row)).isNull();
    // Held on for the first time after the air-off question is not part of these steps.
    for (int i = 0; i < 400 && !outputs.coilSupplyClosed; i++) {
      tick();
    }
    assertThat(outputs.state).isEqualTo(SafetyState.BENCH);
    engineRpm = 900.0;
    tick();
    for (int i = 0; i < 2_000; i++) {
      assertThat(outputs.coilSupplyClosed || outputs.pwmEnabled).isFalse();
      assertThat(outputs.dutyFraction).isZero();
      tick();
    }
    assertThat(guest.busy()).isFalse();
    assertThat(guest.ended().session().record().aborted).isNotNull();
    assertThat(desk.begin("click", row)).contains("engine");
    assertThat(guest.busy()).isFalse();
  }

  /** Whoever gets past the desk still cannot: the core alone decides. */
  @Test
  void sessionForcedIntoTheTickOfARunningEngineMovesNothing() {
    engineRpm = 2500.0;
    ticks(700);
    guest.begin(
        new TickedBench(
            BenchPlan.standard().withSteps(Set.of(BenchStep.CLICK)), settings));
    for (int i = 0; i < 2_000; i++) {
      tick();
      assertThat(outputs.coilSupplyClosed || outputs.pwmEnabled).isFalse();
    }
    assertThat(guest.busy()).isFalse();
  }

  @Test
  void stopEndsTheSessionInTheNextTickWithTheCoilOff() {
    ticks(700);
    assertThat(desk.begin("click", row)).isNull();
    for (int i = 0; i < 400 && !outputs.coilSupplyClosed; i++) {
      tick();
    }
    guest.stop();
    tick();
    assertThat(outputs.coilSupplyClosed).isFalse();
    assertThat(guest.busy()).isFalse();
  }

  @Test
  void everyFaultReachesTheHistoryWithItsFrame() {
    FaultHistory history = new FaultHistory();
    ticks(700);
    sensorOut(80);
    history.take(guest.changes());
    assertThat(history.entries()).isNotEmpty();
    FaultHistory.Entry first = history.entries().get(history.entries().size() - 1);
    assertThat(first.code()).isEqualTo(FaultCode.MAP_SIGNAL_LOW);
    assertThat((long) first.frame()[LogFormat.FAULTS] & FaultCode.MAP_SIGNAL_LOW.bit()).isNotZero();
    assertThat(first.frame()[LogFormat.column("map_raw_v")]).isLessThan(0.05);
  }

  private void sensorOut(int count) {
    for (int i = 0; i < count; i++) {
      now += Controller.TICK_NANOS;
      for (AnalogChannel channel : AnalogChannel.values()) {
        inputs.sample(channel, inputs.volts[channel.ordinal()], now);
      }
      inputs.sample(AnalogChannel.MAP, 0.0, now);
      guest.before(now, inputs);
      controller.step(now, inputs, outputs);
      guest.after(now, inputs, outputs);
    }
  }

  @Test
  void nobodyReadingCostsTheTickNothing() {
    ticks(700);
    ThreadMXBean threads = (ThreadMXBean) ManagementFactory.getThreadMXBean();
    for (int i = 0; i < 20_000; i++) {
      guest.before(now, inputs);
      guest.after(now, inputs, outputs);
    }
    long before = threads.getCurrentThreadAllocatedBytes();
    for (int i = 0; i < 20_000; i++) {
      outputs.activeFaults = i & 1; // far more changes than the queue holds
      guest.before(now, inputs);
      guest.after(now, inputs, outputs);
    }
    assertThat(threads.getCurrentThreadAllocatedBytes() - before).isLessThan(1_000L);
    assertThat(guest.changes().dropped()).isPositive();
    assertThat(inputs.benchRequest).isFalse();
    assertThat(inputs.benchDutyFraction).isZero();
  }
}
