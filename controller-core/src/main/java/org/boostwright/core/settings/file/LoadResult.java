package org.boostwright.core.settings.file;

import java.util.List;
import java.util.Map;
import org.boostwright.core.settings.ProjectSettings;
import org.boostwright.core.settings.Settings;
import org.boostwright.core.settings.UnitSettings;
import org.jspecify.annotations.Nullable;

/**
 * What came of reading a settings file: the settings, or why it was refused.
 *
 * @param settings the settings; null when there is at least one problem of severity {@link
 *     Severity#ERROR}
 * @param problems everything found, errors first, then in the order of the file
 * @param stated keys the file states, by dotted name without a pressure unit at the end, with the
 *     unit each pressure was written in; what is not in here has its default
 * @param units units the file declares for pressures whose keys do not name their own
 * @param project the plan in the file's {@code [project]}; null when there is none
 */
public record LoadResult(
    @Nullable Settings settings,
    List<Problem> problems,
    Map<String, Stated> stated,
    UnitSettings units,
    @Nullable ProjectSettings project) {

  /** A result without a plan. */
  public LoadResult(
      @Nullable Settings settings,
      List<Problem> problems,
      Map<String, Stated> stated,
      UnitSettings units) {
    this(settings, problems, stated, units, null);
  }

  /**
   * How a key stands in the file.
   *
   * @param key the dotted key as written
   * @param line line, from 1
   * @param column column, from 1
   * @param notation unit of a pressure; null for everything else
   */
  public record Stated(String key, int line, int column, @Nullable UnitSettings notation) {}

  /** True when there are settings to use. */
  public boolean ok() {
    return settings != null;
  }

  /**
   * The settings of a file that loaded.
   *
   * @throws IllegalStateException with every problem when the file was refused
   */
  public Settings orThrow() {
    if (settings == null) {
      StringBuilder text = new StringBuilder("the settings were refused");
      for (Problem problem : problems) {
        text.append(System.lineSeparator()).append(problem);
      }
      throw new IllegalStateException(text.toString());
    }
    return settings;
  }
}
