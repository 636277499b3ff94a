package org.boostwright.rig.scenario.file;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Function;
import java.util.stream.Stream;
import org.boostwright.core.monitor.FaultCode;
import org.boostwright.core.state.SafetyState;
import org.boostwright.rig.inject.FaultKind;
import org.boostwright.rig.inject.FaultKinds;
import org.boostwright.rig.scenario.fault.Drive;
import org.boostwright.rig.scenario.fault.Injection;
import org.jspecify.annotations.Nullable;
import org.tomlj.Toml;
import org.tomlj.TomlParseError;
import org.tomlj.TomlParseResult;
import org.tomlj.TomlPosition;

/** Reads scenario files (TOML); the format is described in {@code docs/scenarios.md}. */
public final class ScenarioFile {
  /** Version of the format. */
  public static final int SCHEMA = 1;

  private static final double EARLIEST_SECONDS = -10.0;
  private static final double LONGEST_SECONDS = 1800.0;

  private final String file;

  private ScenarioFile(String file) {
    this.file = file;
  }

  /** Reads one file, or every {@code .toml} file of a folder in the order of their names. */
  public static List<Scenario> readAll(Path path) throws IOException, ScenarioRefusedException {
    if (!Files.isDirectory(path)) {
      return List.of(parse(path.toString(), Files.readString(path)));
    }
    List<Path> files;
    try (Stream<Path> all = Files.walk(path)) {
      files = all.filter(f -> f.toString().endsWith(".toml")).sorted().toList();
    }
    if (files.isEmpty()) {
      throw new ScenarioRefusedException(path + " holds no scenario file (*.toml)");
    }
    List<Scenario> scenarios = new ArrayList<>();
    for (Path each : files) {
      scenarios.add(parse(each.toString(), Files.readString(each)));
    }
    return scenarios;
  }

  /**
   * Reads the text of one file.
   *
   * @param file name shown in messages
   */
  public static Scenario parse(String file, String text) throws ScenarioRefusedException {
    TomlParseResult toml = Toml.parse(text);
    if (toml.hasErrors()) {
      TomlParseError error = toml.errors().get(0);
      throw new ScenarioRefusedException(
          file
              + ":"
              + error.position().line()
              + ":"
              + error.position().column()
              + ": "
              + error.getMessage());
    }
    return new ScenarioFile(file).scenario(new Keys(file, "", toml, TomlPosition.positionAt(1, 1)));
  }

  private Scenario scenario(Keys top) throws ScenarioRefusedException {
    double schema = top.required("schema", 1, 99);
    if (schema != SCHEMA) {
      throw top.refuse("schema", "is " + schema + "; this version reads schema " + SCHEMA);
    }
    String id = top.text("id");
    String row = top.text("row");
    String text = top.text("text");
    Scenario.Car car = car(top.table("car"));
    Drive drive = drive(top.table("drive"));
    List<Injection> faults = new ArrayList<>();
    for (Keys fault : top.tables("fault")) {
      faults.add(fault(fault, null));
    }
    Scenario.Expect expect = expect(top.table("expect"));
    List<Scenario.Twin> twins = new ArrayList<>();
    for (Keys twin : top.tables("twin")) {
      if (faults.isEmpty()) {
        throw top.refuse("twin", "needs a [[fault]] that it varies");
      }
      twins.add(twin(twin, faults.get(0)));
    }
    top.done();
    return new Scenario(
        file, id, row, text, car, drive, List.copyOf(faults), expect, List.copyOf(twins));
  }

  private static Scenario.Car car(Keys car) throws ScenarioRefusedException {
    List<Long> seeds = car.wholes("seeds");
    Scenario.Car read =
        new Scenario.Car(
            seeds.isEmpty() ? List.of(1L) : List.copyOf(seeds),
            car.number("altitude_m", 0.0, -300.0, 4000.0),
            car.number("air_c", 20.0, -30.0, 50.0),
            car.number("tolerance", 0.0, 0.0, 1.0),
            car.number("recirculation_stuck", Double.NaN, 0.0, 1.0),
            List.copyOf(car.texts("settings")),
            car.flag("proven", true),
            car.flag("link", false),
            car.flag("clock_rolls_over", false));
    car.done();
    return read;
  }

  private static Drive drive(Keys drive) throws ScenarioRefusedException {
    double length = drive.required("length_s", 0.1, LONGEST_SECONDS);
    List<Drive.Step> steps = new ArrayList<>();
    double last = 0.0;
    for (Keys step : drive.tables("steps")) {
      double at = step.required("at_s", 0.0, length);
      if (!(at >= last)) {
        throw step.refuse("at_s", "is before the step above it; write the steps in order of time");
      }
      last = at;
      int before = steps.size();
      for (Drive.Act act : Drive.Act.values()) {
        if (step.has(act.key())) {
          steps.add(
              new Drive.Step(
                  at, act, step.number(act.key(), Double.NaN, act.low(), act.high())));
        }
      }
      step.done();
      if (steps.size() == before) {
        throw step.refuse("at_s", "says when but not what; add throttle_pct or another step");
      }
    }
    Drive read =
        new Drive(
            drive.number("start_rpm", 4500.0, 850.0, 6500.0),
            drive.number("start_throttle_pct", 15.0, 0.0, 100.0),
            (int) drive.number("gear", 0.0, 0.0, 5.0),
            length,
            steps);
    drive.done();
    return read;
  }

  /** One fault; what is not said is as in {@code like}. */
  private static Injection fault(Keys fault, @Nullable Injection like)
      throws ScenarioRefusedException {
    Map<String, FaultKind> kinds = named(FaultKinds.all(), FaultKind::id);
    if (like == null && !fault.has("kind")) {
      throw fault.refuse("kind", "is missing; 'boostwright faults --list' shows every kind");
    }
    FaultKind kind = fault.choice("kind", like == null ? null : like.kind(), kinds);
    if (kind == null) {
      throw fault.refuse("kind", "is missing");
    }
    boolean same = like != null && like.kind() == kind;
    double usual = same ? like.amount() : kind.amount().usual();
    double amount =
        fault.number("amount", usual, -1e6, 1e6);
    if (kind.amount().isNone() && fault.has("amount")) {
      throw fault.refuse("amount", "means nothing for " + kind.id() + "; remove it");
    }
    double from =
        like == null
            ? fault.required("at_s", EARLIEST_SECONDS, LONGEST_SECONDS)
            : fault.number("at_s", like.fromSeconds(), EARLIEST_SECONDS, LONGEST_SECONDS);
    double until =
        fault.number(
            "until_s",
            like == null ? Double.POSITIVE_INFINITY : like.untilSeconds(),
            from,
            LONGEST_SECONDS);
    if (like == null) {
      fault.done();
    }
    return new Injection(kind, amount, from, until);
  }

  private static Scenario.Twin twin(Keys twin, Injection like) throws ScenarioRefusedException {
    String text = twin.text("text");
    Injection fault = fault(twin, like);
    long allowed = bits(twin.choices("allowed", codes()));
    twin.done();
    return new Scenario.Twin(text, fault, allowed);
  }

  private static Scenario.Expect expect(Keys expect) throws ScenarioRefusedException {
    Map<String, Scenario.Invariant> invariants =
        named(List.of(Scenario.Invariant.values()), Scenario.Invariant::key);
    List<Scenario.Invariant> chosen = expect.choices("invariants", invariants);
    Scenario.Expect read =
        new Scenario.Expect(
            bits(expect.choices("faults", codes())),
            bits(expect.choices("any_of", codes())),
            bits(expect.choices("allowed", codes())),
            bits(expect.choices("findings", codes())),
            expect.number("rest_within_ms", Double.NaN, 0.0, 60_000.0) * 1e-3,
            expect.choice("state_at_end", null, states()),
            expect.number("peak_over_limit_kpa", Double.NaN, -300.0, 300.0),
            expect.number("peak_over_limit_at_least_kpa", Double.NaN, -300.0, 300.0),
            expect.number("duty_apart_at_most", Double.NaN, 0.0, 1.0),
            expect.flag("never_driven", false),
            expect.has("invariants") ? chosen : List.of(Scenario.Invariant.values()));
    expect.done();
    return read;
  }

  private static Map<String, @Nullable SafetyState> states() {
    Map<String, @Nullable SafetyState> states = new LinkedHashMap<>();
    for (SafetyState state : SafetyState.values()) {
      states.put(state.words(), state);
    }
    return states;
  }

  private static Map<String, FaultCode> codes() {
    return named(List.of(FaultCode.values()), FaultCode::id);
  }

  private static <E> Map<String, E> named(List<E> all, Function<E, String> name) {
    Map<String, E> map = new LinkedHashMap<>();
    for (E each : all) {
      map.put(name.apply(each), each);
    }
    return map;
  }

  private static long bits(List<FaultCode> codes) {
    long bits = 0L;
    for (FaultCode code : codes) {
      bits |= code.bit();
    }
    return bits;
  }
}
