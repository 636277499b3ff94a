package org.boostwright.rig.cli;

import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import org.boostwright.core.settings.file.SettingsEdit;
import org.boostwright.rig.plant.PlantParams;
import org.boostwright.rig.result.ResultBuilder;
import picocli.CommandLine.Option;

/** Values changed for one run without touching the settings file. */
final class SetOption {
  @Option(
      names = "--set",
      paramLabel = "KEY=VALUE",
      description =
          "Change a setting for this run, for example limits.cutoff_kpa_abs=190 or "
              + "feedback.enabled=false. May be given more than once.")
  List<String> sets = new ArrayList<>();

  /** The settings file with these changes; keys of the virtual car are left out. */
  SettingsOption.Source change(SettingsOption.Source source) throws WrongUseException {
    String text = SettingsOption.text(source);
    boolean changed = false;
    SettingsEdit edit;
    try {
      edit = SettingsEdit.of(source.name(), text);
      for (String set : sets) {
        String key = key(set);
        if (!key.startsWith(VirtualCarKeys.PREFIX)) {
          edit.setText(key, value(set));
          changed = true;
        }
      }
    } catch (IllegalArgumentException e) {
      throw new WrongUseException(
          String.valueOf(e.getMessage()), "the keys stand in docs/project-car.toml");
    }
    return changed
        ? new SettingsOption.Source(
            source.name(), edit.text().getBytes(StandardCharsets.UTF_8), source.where())
        : source;
  }

  /** The virtual car with these changes; settings are left out. */
  PlantParams change(PlantParams car) throws WrongUseException {
    PlantParams changed = car;
    for (String set : sets) {
      String key = key(set);
      if (key.startsWith(VirtualCarKeys.PREFIX)) {
        changed = VirtualCarKeys.apply(changed, key, value(set));
      }
    }
    return changed;
  }

  /** Refuses keys of the virtual car where there is none. */
  void settingsOnly() throws WrongUseException {
    for (String set : sets) {
      if (key(set).startsWith(VirtualCarKeys.PREFIX)) {
        throw new WrongUseException(
            set + ": there is no virtual car in this command", "change settings only");
      }
    }
  }

  /** Refuses settings where the settings file itself is the matter. */
  void virtualCarOnly() throws WrongUseException {
    for (String set : sets) {
      if (!key(set).startsWith(VirtualCarKeys.PREFIX)) {
        throw new WrongUseException(
            set + ": only the virtual car can be changed here", "change the settings file itself");
      }
    }
  }

  /** Says what was changed. */
  void record(ResultBuilder result) {
    if (!sets.isEmpty()) {
      result.provenance("changed for this run", String.join(", ", sets));
    }
  }

  private static String key(String set) throws WrongUseException {
    int equals = set.indexOf('=');
    if (equals < 1) {
      throw new WrongUseException(
          "--set " + set + " has no value",
          "write --set key=value, for example valve.frequency_hz=26");
    }
    return set.substring(0, equals).strip();
  }

  private static String value(String set) {
    return set.substring(set.indexOf('=') + 1).strip();
  }
}
