package org.boostwright.rig.result;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalLong;
import org.boostwright.core.settings.UnitSettings;
import org.jspecify.annotations.Nullable;

/**
 * Collects a {@link Result}.
 *
 * <p>The verdict follows from what was collected: failed when a measurement, a row of
 * a time-line or a {@link Severity#PROBLEM} says so, passed otherwise; {@link #refuse} overrides both.
 */
public final class ResultBuilder {
  private final String command;
  private @Nullable String headline;
  private @Nullable String settingsDigest;
  private OptionalLong seed = OptionalLong.empty();
  private UnitSettings units = UnitSettings.KPA_ABSOLUTE;
  private boolean refused;
  private final List<Measurement> measurements = new ArrayList<>();
  private final List<Finding> findings = new ArrayList<>();
  private final Map<String, String> files = new LinkedHashMap<>();
  private final List<Plot> series = new ArrayList<>();
  private final List<TimeLine> timeLines = new ArrayList<>();
  private final List<HeatTable> tables = new ArrayList<>();
  private final Map<String, String> provenance = new LinkedHashMap<>();
  private final List<String> cautions = new ArrayList<>();

  /** Starts the result of a command, named as on the command line. */
  public ResultBuilder(String command) {
    this.command = command;
  }

  /** The verdict as one sentence; without one it is made from the verdict. */
  public ResultBuilder headline(String sentence) {
    headline = sentence;
    return this;
  }

  /** Digest of the settings used. */
  public ResultBuilder settingsDigest(String digest) {
    settingsDigest = digest;
    return this;
  }

  /** Seed of every random number. */
  public ResultBuilder seed(long value) {
    seed = OptionalLong.of(value);
    return this;
  }

  /** How the person wants pressures shown. */
  public ResultBuilder units(UnitSettings value) {
    units = value;
    return this;
  }

  /** Adds a judged measurement; NaN limits are no limits. */
  public ResultBuilder measure(
      String id, String text, double value, String unit, double low, double high) {
    return add(Measurement.judged(id, text, value, unit, low, high));
  }

  /** Adds a measurement without limits. */
  public ResultBuilder measure(String id, String text, double value, String unit) {
    return add(Measurement.plain(id, text, value, unit));
  }

  /** Adds a measurement. */
  public ResultBuilder add(Measurement measurement) {
    measurements.add(measurement);
    return this;
  }

  /** Adds a finding. */
  public ResultBuilder find(String code, Severity severity, String text, String next) {
    return add(new Finding(code, severity, text, next));
  }

  /** Adds a finding. */
  public ResultBuilder add(Finding finding) {
    findings.add(finding);
    return this;
  }

  /** Adds a plot; of a very long one the extremes stay, see {@link PlotThinning}. */
  public ResultBuilder add(Plot plot) {
    series.add(PlotThinning.thin(plot));
    return this;
  }

  /** Adds a time-line. */
  public ResultBuilder add(TimeLine timeLine) {
    timeLines.add(timeLine);
    return this;
  }

  /** Adds a table. */
  public ResultBuilder add(HeatTable table) {
    tables.add(table);
    return this;
  }

  /** Names a written file. */
  public ResultBuilder file(String kind, String path) {
    files.put(kind, path);
    return this;
  }

  /** Says where something came from. */
  public ResultBuilder provenance(String name, String text) {
    provenance.put(name, text);
    return this;
  }

  /** Adds a caution. */
  public ResultBuilder caution(String text) {
    cautions.add(text);
    return this;
  }

  /** The command does not do what was asked; a finding says why. */
  public ResultBuilder refuse(String code, String text, String next) {
    return refused().find(code, Severity.PROBLEM, text, next);
  }

  /** The command does not do what was asked; findings added elsewhere say why. */
  public ResultBuilder refused() {
    refused = true;
    return this;
  }

  /** The verdict so far. */
  public Verdict verdict() {
    if (refused) {
      return Verdict.REFUSED;
    }
    boolean fails =
        measurements.stream().anyMatch(m -> m.judgement().fails())
            || findings.stream().anyMatch(f -> f.severity() == Severity.PROBLEM)
            || timeLines.stream()
                .flatMap(line -> line.rows().stream())
                .anyMatch(row -> row.judgement().fails());
    return fails ? Verdict.FAILED : Verdict.PASSED;
  }

  /** The finished result. */
  public Result build() {
    Verdict verdict = verdict();
    String sentence = headline != null ? headline : command + " " + verdict.word() + ".";
    return new Result(
        command,
        ProgramVersion.get(),
        verdict,
        sentence,
        Optional.ofNullable(settingsDigest),
        seed,
        units,
        measurements,
        findings,
        files,
        series,
        timeLines,
        tables,
        provenance,
        cautions);
  }
}
