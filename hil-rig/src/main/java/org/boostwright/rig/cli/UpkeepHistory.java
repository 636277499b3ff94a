package org.boostwright.rig.cli;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import org.boostwright.core.ladder.Rung;
import org.boostwright.core.ladder.RungState;
import org.boostwright.core.ladder.Standing;
import org.boostwright.core.settings.Settings;
import org.boostwright.core.settings.file.AtomicFile;
import org.boostwright.core.settings.file.LadderFile;
import org.boostwright.core.settings.file.LoadResult;
import org.boostwright.core.settings.file.SettingsDiff;
import org.boostwright.core.settings.file.SettingsDigest;
import org.boostwright.core.settings.file.SettingsFile;
import org.boostwright.core.settings.file.SettingsHistory;
import org.boostwright.rig.result.ResultBuilder;
import org.boostwright.rig.result.Severity;
import org.boostwright.rig.result.Units;
import org.jspecify.annotations.Nullable;

/** The settings files a car was driven with: listed, compared, brought back. */
final class UpkeepHistory {
  private final Path data;
  private final Path file;
  private final boolean practice;

  /**
   * @param data folder of the runtime's data
   * @param file the present settings file
   * @param practice judge by the virtual car's ladder
   */
  UpkeepHistory(Path data, Path file, boolean practice) {
    this.data = data;
    this.file = file;
    this.practice = practice;
  }

  private SettingsHistory.Kept kept(String number) throws IOException, WrongUseException {
    List<SettingsHistory.Kept> all = SettingsHistory.list(data);
    for (SettingsHistory.Kept kept : all) {
      if (Integer.toString(kept.number()).equals(number)) {
        return kept;
      }
    }
    throw new WrongUseException(
        "no settings number " + number + " are kept in " + data,
        all.isEmpty()
            ? "'drive' keeps them; give its --data folder with --data"
            : "'boostwright upkeep history' lists them");
  }

  /** Settings as they were kept; null, with the reasons in the result, when they cannot be used. */
  private static @Nullable Settings read(SettingsHistory.Kept kept, ResultBuilder result) {
    try {
      LoadResult loaded = SettingsFile.parse(kept.file().toString(), kept.bytes());
      Settings old = loaded.settings();
      if (old == null) {
        loaded.problems().forEach(problem -> result.add(SettingsFindings.of(problem)));
        result.refused();
      } else if (!kept.same(old)) {
        result.refuse(
            "history_other_version",
            "Number " + kept.number() + " says something else to this version than it did then.",
            "look at it and take over by hand: " + kept.file());
        return null;
      }
      return old;
    } catch (IOException e) {
      result.refuse("history_damaged", FileTrouble.words(e) + ".", "take another one");
      return null;
    }
  }

  /** Lists what is kept. */
  void list(Settings car, ResultBuilder result) throws IOException {
    List<SettingsHistory.Kept> all = SettingsHistory.list(data);
    result.measure("upkeep.settings_kept", "settings files kept", all.size(), Units.COUNT);
    String present = SettingsDigest.of(car);
    Settings before = null;
    for (SettingsHistory.Kept kept : all) {
      ResultBuilder aside = new ResultBuilder("upkeep");
      Settings now = read(kept, aside);
      String text = kept.number() + ": first driven with on " + day(kept.date());
      if (now == null) {
        result.find("history_unusable", Severity.CAUTION, text + "; it cannot be used.", "");
        continue;
      }
      if (before != null) {
        int count = SettingsDiff.of(before, now).size();
        text += "; " + count + (count == 1 ? " value" : " values") + " changed";
      }
      boolean same = SettingsDigest.of(now).equals(present);
      result.find("history", Severity.NOTE, text + (same ? "; as the file is now." : "."), "");
      before = now;
    }
    result.headline(
        all.isEmpty()
            ? "No settings are kept in " + data + "; 'drive' keeps those it was started with."
            : all.size() + " settings files were driven with.");
  }

  /** 20260501T102030Z as 2026-05-01 10:20 UTC. */
  private static String day(String basic) {
    return basic.replaceFirst("(....)(..)(..)T(..)(..).*", "$1-$2-$3 $4:$5 UTC");
  }

  /**
   * Names what differs.
   *
   * @param numbers of one kept file, to be compared with the present one, or of two
   */
  void diff(List<String> numbers, Settings car, ResultBuilder result)
      throws IOException, WrongUseException {
    Settings before = read(kept(numbers.get(0)), result);
    Settings after = numbers.size() > 1 ? read(kept(numbers.get(1)), result) : car;
    if (before == null || after == null) {
      return;
    }
    int count = differences(before, after, result);
    String with = numbers.size() > 1 ? "number " + numbers.get(1) : file.toString();
    result.headline(
        count == 0
            ? "Number " + numbers.get(0) + " and " + with + " say the same."
            : count
                + (count == 1 ? " value differs" : " values differ")
                + " between number "
                + numbers.get(0)
                + " and "
                + with
                + ".");
  }

  private static int differences(Settings before, Settings after, ResultBuilder result) {
    List<SettingsDiff.Line> lines = SettingsDiff.of(before, after);
    for (SettingsDiff.Line line : lines) {
      result.find(
          "setting_changed",
          Severity.NOTE,
          line.key() + ": " + line.before() + " -> " + line.after(),
          "");
    }
    result.measure("upkeep.values_differ", "values that differ", lines.size(), Units.COUNT);
    return lines.size();
  }

  /**
   * Brings one back, whole and with its comments. What it replaces is kept first; a file that no
   * longer loads is kept beside it.
   */
  void restore(String number, ResultBuilder result) throws IOException, WrongUseException {
    SettingsHistory.Kept kept = kept(number);
    Settings old = read(kept, result);
    if (old == null) {
      return;
    }
    result.units(old.units()).settingsDigest(SettingsDigest.of(old));
    byte[] replaced = Files.exists(file) ? Files.readAllBytes(file) : new byte[0];
    Settings present = SettingsFile.parse(file.toString(), replaced).settings();
    List<Rung> stood = new ArrayList<>();
    if (present != null) {
      SettingsHistory.keep(data, replaced, present, Instant.now().toString());
      differences(present, old, result);
      stood = holding(present);
    } else if (replaced.length > 0) {
      Path aside = file.resolveSibling(file.getFileName() + ".replaced");
      AtomicFile.write(aside, replaced);
      result.file("replaced", aside.toString());
    }
    AtomicFile.write(file, kept.bytes());
    stood.removeAll(holding(old));
    for (Rung rung : stood) {
      result.find(
          "rung_fallen",
          Severity.CAUTION,
          "'" + rung.words() + "' was not proven last with these settings and counts no more.",
          rung.next());
    }
    result.measure("upkeep.rungs_fallen", "rungs that fell", stood.size(), Units.COUNT);
    Standing standing = LadderFile.standing(file, old, practice);
    result.headline(
        file + " is number " + kept.number() + " again, for the next 'drive'; " + standing.words());
    result.caution(
        "Settings of another day may not fit what is fitted now: hoses, valve, fuel. Read the"
            + " differences before you drive.");
  }

  private List<Rung> holding(Settings car) {
    List<Rung> rungs = new ArrayList<>();
    LadderFile.standing(file, car, practice).rungs().stream()
        .filter(RungState::holds)
        .forEach(state -> rungs.add(state.rung()));
    return rungs;
  }
}
