package org.boostwright.rig.cli;

import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.boostwright.core.settings.Settings;
import org.boostwright.rig.logs.identify.CarTwin;
import org.boostwright.rig.logs.identify.TwinFit;
import org.boostwright.rig.logs.pulls.DriveLog;
import org.boostwright.rig.logs.pulls.Pull;
import org.boostwright.rig.logs.pulls.PullFinder;
import org.boostwright.rig.logs.pulls.PullRules;
import org.boostwright.rig.plant.PlantParams;
import org.boostwright.rig.result.ResultBuilder;
import org.boostwright.rig.result.Severity;
import picocli.CommandLine.Option;

/** What counts as this car in good order when a drive is judged. */
final class SoundOption {
  @Option(
      names = "--sound",
      paramLabel = "LOG",
      description =
          "A drive of this car when it was in good order, recorded by Boostwright: what a drive is"
              + " judged against. Default: the virtual project car.")
  Optional<Path> log = Optional.empty();

  /** The sound car, found by fitting {@code start} to the log where one was given. */
  PlantParams car(PlantParams start, Settings settings, ResultBuilder result, Progress progress)
      throws IOException, WrongUseException {
    PlantParams driven = start.withPwmHz(settings.valve().frequencyHz());
    if (log.isEmpty()) {
      result.find(
          "judged_by_virtual_car",
          Severity.NOTE,
          "Judged against the virtual project car.",
          "for another car give --sound with a drive recorded when it was in good order");
      return driven;
    }
    List<Pull> pulls = new ArrayList<>();
    for (DriveLog drive : LogFiles.read(List.of(log.get()), progress)) {
      PullFinder.find(drive, PullRules.FULL_THROTTLE).stream()
          .filter(pull -> pull.usable() && drive.controlled())
          .forEach(pulls::add);
    }
    if (pulls.isEmpty()) {
      throw new WrongUseException(
          log.get() + " holds no full-throttle pull that can be learnt from",
          "give a drive with a whole pull, recorded by Boostwright");
    }
    progress.begin("fitting the sound car", 1);
    CarTwin twin = TwinFit.fit(driven, pulls);
    if (!twin.resembles()) {
      throw new WrongUseException(
          "no virtual car resembles the one in " + log.get(),
          "leave --sound away, or change the virtual car with --set virtual.displacement_l");
    }
    return twin.car();
  }
}
