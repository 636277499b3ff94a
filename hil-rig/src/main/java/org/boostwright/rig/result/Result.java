package org.boostwright.rig.result;

import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalLong;
import org.boostwright.core.settings.UnitSettings;

/**
 * What a command found out: the one object that {@code --json} prints, a run's folder keeps and a
 * report shows. Immutable; made with {@link ResultBuilder}.
 *
 * @param command the command's name
 * @param version the program's version
 * @param verdict how it ended
 * @param headline the verdict as one sentence for people
 * @param settingsDigest digest of the settings used; empty when none were used
 * @param seed seed of every random number; empty when nothing was random
 * @param units how the person wants pressures shown; numbers in here are always in {@link Units}
 * @param measurements measured numbers
 * @param findings what to know and what to do
 * @param files written files: kind ({@code result}, {@code log}, {@code report}, ...) to path
 * @param series plots
 * @param timeLines what happened when, against the time allowed
 * @param tables tables over two axes
 * @param provenance where it came from: settings file, data, options, machine; name to text
 * @param cautions what the reader must not conclude or forget
 */
public record Result(
    String command,
    String version,
    Verdict verdict,
    String headline,
    Optional<String> settingsDigest,
    OptionalLong seed,
    UnitSettings units,
    List<Measurement> measurements,
    List<Finding> findings,
    Map<String, String> files,
    List<Plot> series,
    List<TimeLine> timeLines,
    List<HeatTable> tables,
    Map<String, String> provenance,
    List<String> cautions) {

  /** Copies every collection. */
  public Result {
    measurements = List.copyOf(measurements);
    findings = List.copyOf(findings);
    files = Collections.unmodifiableMap(new LinkedHashMap<>(files));
    series = List.copyOf(series);
    timeLines = List.copyOf(timeLines);
    tables = List.copyOf(tables);
    provenance = Collections.unmodifiableMap(new LinkedHashMap<>(provenance));
    cautions = List.copyOf(cautions);
  }

  /** The measurement of that id, if it is there. */
  public Optional<Measurement> measurement(String id) {
    return measurements.stream().filter(m -> m.id().equals(id)).findFirst();
  }

  /** The same result that names its files. */
  public Result withFiles(Map<String, String> newFiles) {
    return new Result(
        command,
        version,
        verdict,
        headline,
        settingsDigest,
        seed,
        units,
        measurements,
        findings,
        newFiles,
        series,
        timeLines,
        tables,
        provenance,
        cautions);
  }
}
