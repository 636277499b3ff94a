package org.boostwright.rig.kernel;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.EnumSet;
import java.util.List;
import java.util.Set;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.function.Consumer;
import java.util.stream.Stream;
import org.boostwright.core.bench.BenchStep;
import org.boostwright.core.bench.proof.Proof;
import org.boostwright.core.bench.proof.ProofSource;
import org.boostwright.core.ladder.Facts;
import org.boostwright.core.ladder.Ladder;
import org.boostwright.core.ladder.LadderRefusedException;
import org.boostwright.core.ladder.Rung;
import org.boostwright.core.settings.Settings;
import org.boostwright.core.settings.file.LadderFile;
import org.boostwright.core.settings.file.ProofFile;
import org.boostwright.core.settings.file.SettingsDigest;
import org.boostwright.rig.link.CarSide;
import org.boostwright.rig.link.CaseOutcome;
import org.boostwright.rig.plant.Atmosphere;
import org.boostwright.rig.plant.PlantParams;
import org.boostwright.rig.plant.VirtualCar;
import org.boostwright.rig.scenario.ProjectCarSettings;

/** Runs the kernel bench: its guests side by side, two at a time. */
public final class KernelBench {
  /**
   * What a run needs.
   *
   * @param image folder made by {@code hil-rig/kernel-bench/build.sh}
   * @param scripts {@code hil-rig/kernel-bench}
   * @param packaged {@code pi-runtime}, packaged: its start script, jar and libraries
   * @param folder where disks, pipes and what was said go; emptied first
   * @param guests which guests run
   * @param seed of the car's noise
   */
  public record Plan(
      Path image, Path scripts, Path packaged, Path folder, Set<Guest> guests, long seed) {
    /** Copies the guests. */
    public Plan {
      guests = Set.copyOf(guests);
    }
  }

  /** The guests there are. */
  public enum Guest {
    /** Drives the virtual car, over faults to the watchdog's reset. */
    DRIVE,
    /** Is installed wrongly in every way. */
    INSTALL,
    /** Proves the valve on its bench; takes minutes of processor time. */
    VALVE_BENCH
  }

  private static final String GIVEN = "given by the kernel bench";
  private static final String GIVEN_ON = "2026-01-01T00:00:00Z";

  private final Plan plan;
  private final Settings settings = ProjectCarSettings.load();
  private final Consumer<String> progress;

  private KernelBench(Plan plan, Consumer<String> progress) {
    this.plan = plan;
    this.progress = progress;
  }

  /**
   * Runs everything.
   *
   * @param progress told what has come of each case
   */
  public static KernelBenchReport run(Plan plan, Consumer<String> progress) throws IOException {
    return new KernelBench(plan, progress).run();
  }

  private KernelBenchReport run() throws IOException {
    empty(plan.folder());
    Path archive = ClassArchive.of(plan, this);
    List<CaseOutcome> outcomes = new ArrayList<>();
    DriveRun drive = DriveRun.NONE;
    ExecutorService two = Executors.newFixedThreadPool(2);
    try {
      Future<DriveRun> driving = two.submit(() -> DriveRun.run(this, archive));
      Future<List<CaseOutcome>> installing = two.submit(() -> InstallCases.run(this, archive));
      Future<List<CaseOutcome>> proving = two.submit(() -> ValveBenchCases.run(this, archive));
      drive = get(driving);
      outcomes.addAll(drive.outcomes());
      outcomes.addAll(get(installing));
      outcomes.addAll(get(proving));
    } finally {
      two.shutdownNow();
    }
    return new KernelBenchReport(
        outcomes, drive.pwmApplies(), drive.pwmUpdates(), drive.pwmWrongs(), drive.recordings());
  }

  boolean runs(Guest guest) {
    return plan.guests().contains(guest);
  }

  private static <T> T get(Future<T> future) throws IOException {
    try {
      return future.get();
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
      throw new IOException("interrupted", e);
    } catch (ExecutionException e) {
      if (e.getCause() instanceof IOException io) {
        throw io;
      }
      throw new IllegalStateException(e.getCause());
    }
  }

  Settings settings() {
    return settings;
  }

  Plan plan() {
    return plan;
  }

  Consumer<CaseOutcome> each() {
    return outcome ->
        progress.accept(
            outcome.verdict().name().toLowerCase(java.util.Locale.ROOT)
                + "  "
                + outcome.id()
                + ": "
                + outcome.words());
  }

  /** A car that stands, its key on. */
  VirtualCar car() {
    return new VirtualCar(
        PlantParams.PROJECT_CAR.withPwmHz(settings.valve().frequencyHz()),
        Atmosphere.at(0.0, 20.0),
        plan.seed());
  }

  /** A guest that boots from a disk. */
  KernelRig rig(GuestDisk disk, CarSide side) throws IOException {
    return new KernelRig(plan.image(), disk, settings, side);
  }

  /**
   * A disk with the program as installed on a Pi, and settings.
   *
   * @param archive the program's classes as Java keeps them; may not exist yet
   * @param proven with a proof of the valve beside the settings
   */
  GuestDisk disk(Path folder, Path archive, boolean proven) throws IOException {
    Path content = folder.resolve("content");
    Path opt = content.resolve("opt");
    Path target = plan.packaged().resolve("target");
    GuestDisk.copy(opt.resolve("bin"), matching(plan.packaged().resolve("bin"), "boostwright-pi"));
    GuestDisk.copy(opt.resolve("lib"), matching(target, "pi-runtime-*.jar"));
    GuestDisk.copy(opt.resolve("lib"), matching(target.resolve("lib"), "*.jar"));
    if (Files.exists(archive)) {
      GuestDisk.copy(opt, List.of(archive));
    }
    GuestDisk.copy(content, List.of(plan.scripts().resolve("start")));
    Path car = content.resolve("car.toml");
    Files.writeString(car, ProjectCarSettings.text(), StandardCharsets.UTF_8);
    if (proven) {
      ProofFile.write(ProofFile.beside(car), given());
      LadderFile.write(LadderFile.beside(car, false), climbed(car));
    }
    return GuestDisk.of(folder, content);
  }

  /** Every rung given: it is the program that is on trial. */
  private Ladder climbed(Path car) throws IOException {
    Facts facts = LadderFile.facts(car, settings, false);
    Ladder ladder = Ladder.EMPTY;
    try {
      for (Rung rung : Rung.values()) {
        ladder = ladder.pass(rung, facts, GIVEN_ON, GIVEN, GIVEN, List.of());
      }
    } catch (LadderRefusedException e) {
      throw new IOException("the given proof does not carry the ladder", e);
    }
    return ladder;
  }

  private Proof given() {
    return new Proof(
        ProofSource.PI,
        SettingsDigest.ofHardware(settings),
        GIVEN_ON,
        GIVEN,
        EnumSet.allOf(BenchStep.class),
        List.of(),
        List.of());
  }

  static List<Path> matching(Path folder, String glob) throws IOException {
    List<Path> all = new ArrayList<>();
    try (var files = Files.newDirectoryStream(folder, glob)) {
      files.forEach(all::add);
    }
    all.sort(null);
    return all;
  }

  private static void empty(Path folder) throws IOException {
    if (Files.exists(folder)) {
      try (Stream<Path> files = Files.walk(folder)) {
        for (Path file : files.sorted(Comparator.reverseOrder()).toList()) {
          Files.deleteIfExists(file);
        }
      }
    }
    Files.createDirectories(folder);
  }
}
