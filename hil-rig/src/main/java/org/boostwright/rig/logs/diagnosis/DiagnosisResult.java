package org.boostwright.rig.logs.diagnosis;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import org.boostwright.core.settings.Settings;
import org.boostwright.rig.logs.diagnosis.Diagnosis.Suspicion;
import org.boostwright.rig.logs.pulls.DriveLog;
import org.boostwright.rig.logs.pulls.Pull;
import org.boostwright.rig.plant.PlantParams;
import org.boostwright.rig.result.ResultBuilder;
import org.boostwright.rig.result.Severity;

/** Diagnosis of a drive's pulls as findings. */
public final class DiagnosisResult {
  private DiagnosisResult() {}

  /**
   * Adds what the pulls of a log show.
   *
   * @return causes that were suspected, in the order of pulls
   */
  public static List<Cause> add(
      ResultBuilder result,
      DriveLog log,
      List<Pull> pulls,
      Settings settings,
      PlantParams sound,
      double trueAmbientKpaAbs) {
    List<Pull> judged = pulls.stream().filter(Diagnosis::possible).toList();
    if (judged.isEmpty()) {
      cannot(result, log, pulls);
      return List.of();
    }
    Map<Cause, List<String>> found = new LinkedHashMap<>();
    List<String> heldBack = new ArrayList<>();
    for (Pull pull : judged) {
      Diagnosis diagnosis = Diagnosis.of(pull, settings, sound, trueAmbientKpaAbs);
      if (!diagnosis.heldBack().isEmpty()) {
        heldBack.add(diagnosis.heldBack());
      }
      for (Suspicion s : diagnosis.suspicions()) {
        found.computeIfAbsent(s.cause(), cause -> new ArrayList<>()).add(s.evidence());
      }
    }
    found.forEach(
        (cause, evidence) ->
            result.find(
                "suspect_" + cause.name().toLowerCase(Locale.ROOT),
                Severity.CAUTION,
                String.format(
                    Locale.ROOT,
                    "Suspected in %d of %d pulls: %s (%s).",
                    evidence.size(),
                    judged.size(),
                    cause.words(),
                    evidence.get(0)),
                cause.next()));
    if (found.isEmpty()) {
      result.find(
          "nothing_suspected",
          Severity.NOTE,
          judged.size() == 1
              ? "The pull of " + log.name() + " went as a sound car's would."
              : judged.size() + " pulls of " + log.name() + " went as a sound car's would.",
          "");
    }
    if (!heldBack.isEmpty()) {
      result.find(
          "held_by_duty_ceiling",
          Severity.NOTE,
          String.format(
              Locale.ROOT,
              "In %d of %d pulls the duty ceiling held boost back: duty %s.",
              heldBack.size(),
              judged.size(),
              heldBack.get(0)),
          found.isEmpty()
              ? "lower the target there; the ceiling is a protection, raise it last and little"
              : "settle what is suspected first; leave the ceiling where it is");
    }
    return List.copyOf(found.keySet());
  }

  /** Says what a log cannot support. */
  public static void cannot(ResultBuilder result, DriveLog log, List<Pull> pulls) {
    if (!log.controlled()) {
      result.find(
          "no_diagnosis_without_duty",
          Severity.NOTE,
          "The log holds no duty and no target, so it cannot show whether boost is what valve and"
              + " spring should give: no creep, sag, leak, lost valve effect, wrong duty window or"
              + " table hole can be named from it.",
          "");
    }
    if (!(log.refreshSeconds() <= 0.05)) {
      result.find(
          "no_diagnosis_so_slow",
          Severity.NOTE,
          String.format(
              Locale.ROOT,
              "Pressure was read anew every %.2f s. Spool time, overshoot, spikes and hunting"
                  + " happen in between: nothing about them, and no identification, can be had from"
                  + " such sampling; 20 readings a second are the least, 100 for spikes.",
              log.refreshSeconds()),
          "");
    }
    if (pulls.isEmpty()) {
      result.find(
          "no_pulls", Severity.NOTE, "No pull was found, so there is nothing to judge.", "");
    }
  }
}
