package org.boostwright.rig.kernel;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.function.Consumer;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import org.boostwright.core.bench.Heard;
import org.boostwright.core.bench.Question;
import org.boostwright.core.bench.proof.Proof;
import org.boostwright.core.settings.file.ProofFile;
import org.boostwright.rig.bench.BenchSetup;
import org.boostwright.rig.link.BenchSide;
import org.boostwright.rig.link.CaseOutcome;

/** The valve on its bench behind the guest's kernel, proven by the program that asks a person. */
final class ValveBenchCases extends BenchCases {
  private static final double LONGEST_SECONDS = 1200.0;

  /** Those a proof needs; the others would take the emulator as long again. */
  private static final String STEPS =
      Proof.REQUIRED.stream()
          .map(step -> step.name().toLowerCase(Locale.ROOT))
          .collect(Collectors.joining(","));

  private static final Pattern ASKED = Pattern.compile("\\[([A-Z_]+)\\]");
  private static final Pattern ENDED = Pattern.compile("bench-code (\\d+)");

  private final KernelRig rig;
  private final BenchSide side;

  private ValveBenchCases(KernelRig rig, BenchSide side, Consumer<CaseOutcome> each) {
    super(each);
    this.rig = rig;
    this.side = side;
  }

  static List<CaseOutcome> run(KernelBench bench, Path archive) throws IOException {
    if (!bench.runs(KernelBench.Guest.VALVE_BENCH)) {
      return List.of();
    }
    Path folder = Files.createDirectories(bench.plan().folder().resolve("valve_bench"));
    GuestDisk disk = bench.disk(folder, archive, false);
    BenchSide side = new BenchSide(BenchSetup.standard(), bench.plan().seed());
    ValveBenchCases cases;
    try (KernelRig rig = bench.rig(disk, side)) {
      cases = new ValveBenchCases(rig, side, bench.each());
      try {
        cases.run("valve_bench", "bench --valve pi, asked and answered", Double.NaN, cases::bench);
        rig.cutPower();
      } finally {
        Files.writeString(
            folder.resolve("shell.txt"), rig.shell().everything(), StandardCharsets.UTF_8);
      }
    }
    disk.take("/proven");
    cases.run(
        "valve_proof",
        "the proof it wrote lets these settings control the valve",
        Double.NaN,
        notes -> {
          var state =
              ProofFile.state(folder.resolve("disk/proven/car.bench-proof.txt"), bench.settings());
          notes.must(state.allowsControl(), state.words());
        });
    return cases.outcomes();
  }

  @Override
  double takePeak() {
    return Double.NaN;
  }

  private void bench(BenchCases.Notes notes) throws IOException {
    rig.shell()
        .run(
            "mkdir /data/proven; cp /data/car.toml /data/proven; chown -R driver /data/proven;"
                + " mkfifo /tmp/answers",
            2.0);
    rig.shell()
        .type(
            "(/data/start driver bench --valve pi --settings proven/car.toml --data benched"
                + " --steps "
                + STEPS
                + " </tmp/answers 2>&1; echo bench-code $?) & exec 3>/tmp/answers");
    long begun = rig.nowNanos();
    int answered = 0;
    Matcher ended = ENDED.matcher("");
    long steps = Math.round(LONGEST_SECONDS / (KernelRig.STEP_NANOS * 1e-9));
    for (long i = 0; i < steps && !ended.find(); i++) {
      rig.step();
      String heard = rig.shell().heard();
      Matcher asked = ASKED.matcher(heard);
      int questions = 0;
      Question last = Question.AIR_OFF;
      while (asked.find()) {
        questions++;
        last = Question.valueOf(asked.group(1));
      }
      if (questions > answered && heard.endsWith("stop: ")) {
        answered = questions;
        rig.shell().type("echo '" + words(last, side.asked(last)) + "' >&3");
      }
      ended = ENDED.matcher(heard);
    }
    String heard = rig.shell().heard();
    ended = ENDED.matcher(heard);
    notes.must(ended.find(), "it did not end");
    notes.must(heard.contains("bench-code 0"), "the bench has something against the valve");
    notes.must(rig.outputsOff(), "outputs are not off at its end");
    notes.must(rig.pwm().wrongs().isEmpty(), String.join(", ", rig.pwm().wrongs()));
    notes.must(rig.pwm().updates() > 0L, "the valve was never driven");
    notes.seen.add(
        String.format(
            Locale.ROOT,
            "%d questions, %.0f s in the guest, %d states of the PWM",
            answered,
            (rig.nowNanos() - begun) * 1e-9,
            rig.pwm().applies()));
    rig.shell().run("sync", 10.0);
  }

  private static String words(Question question, double answer) {
    return switch (question) {
      case AIR_OFF, PLUG_COIL, SUPPLY_SHUT, SUPPLY_OPEN -> "";
      case BATTERY_CLICK -> answer > 0.0 ? "yes" : "no";
      case LISTEN_AT_VENT -> heard(answer);
      case CLICK_COUNT -> Long.toString(Math.round(answer));
      case COIL_OHMS -> Double.isInfinite(answer) ? "open" : Double.toString(answer);
      case ROD_PRELOAD -> Double.toString(answer);
      case AIR_ON, UNPLUG_COIL, REGULATOR_WORKING, ROD_CRACK, ROD_FULL, ROD_HELD ->
          String.format(Locale.ROOT, "%.1f kpa", answer);
    };
  }

  private static String heard(double answer) {
    if (answer == Heard.PUFF.asAnswer()) {
      return "puff";
    }
    if (answer == Heard.STEADY_WHILE_ON.asAnswer()) {
      return "on";
    }
    return answer == Heard.STEADY_WHILE_OFF.asAnswer() ? "off" : "nothing";
  }
}
