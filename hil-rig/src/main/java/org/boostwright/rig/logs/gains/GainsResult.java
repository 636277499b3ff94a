package org.boostwright.rig.logs.gains;

import java.util.List;
import java.util.Locale;
import java.util.function.ToDoubleFunction;
import org.boostwright.rig.logs.identify.CarTwin;
import org.boostwright.rig.result.Plot;
import org.boostwright.rig.result.Plot.Stroke;
import org.boostwright.rig.result.ResultBuilder;
import org.boostwright.rig.result.Severity;
import org.boostwright.rig.result.Units;

/** Proposed gains as a result: the answer they rest on, their margins, their proof. */
public final class GainsResult {
  private static final double MS_HIGHEST = 1.8;
  private static final double OVERSHOOT_KPA = 5.0;
  private static final double NONE = Double.NaN;

  private GainsResult() {}

  /** Adds everything; the verdict follows from margins and proof. */
  public static void add(ResultBuilder result, CarTwin twin, GainAdvice advice, GainProof proof) {
    double ms = 0.0;
    double worst = 0.0;
    double gain = Double.POSITIVE_INFINITY;
    double phase = Double.POSITIVE_INFINITY;
    double delay = Double.POSITIVE_INFINITY;
    for (BandGains band : advice.bands()) {
      ms = Math.max(ms, band.margins().maxSensitivity());
      worst = Math.max(worst, band.worst().maxSensitivity());
      gain = Math.min(gain, band.worst().gainMargin());
      phase = Math.min(phase, band.worst().phaseMarginDegrees());
      delay = Math.min(delay, band.worst().delayMarginSeconds());
      band(result, band);
    }
    if (advice.bands().size() > 1) {
      result.add(overSpeed(advice.bands()));
    }
    result.measure(
        "gains.fit_rms_kpa", "fitted virtual car against the pulls", twin.rmsKpa(), Units.KPA);
    result.measure("gains.ms", "largest sensitivity Ms", ms, "", NONE, MS_HIGHEST);
    result.measure("gains.ms_worst", "largest Ms over what the logs leave possible", worst, "");
    result.measure("gains.gain_margin", "smallest gain margin", gain, "");
    result.measure("gains.phase_margin_deg", "smallest phase margin", phase, "deg");
    result.measure(
        "gains.delay_margin_ms", "dead time the loop still bears", 1e3 * delay, Units.MILLISECONDS);
    result.measure("gains.tracking_s", "anti-windup time", advice.trackingSeconds(), Units.SECONDS);
    result.measure("gains.lead_s", "spool lead", advice.leadSeconds(), Units.SECONDS);
    result.measure("gains.cars", "virtual cars driven as proof", proof.cars(), Units.COUNT);
    result.measure(
        "gains.overshoot95_kpa",
        "overshoot that 95 % of them stay within",
        proof.overshootKpa95(),
        Units.KPA,
        NONE,
        OVERSHOOT_KPA);
    result.measure(
        "gains.settled95_kpa",
        "distance from target that 95 % stay within",
        proof.settledKpa95(),
        Units.KPA);
    result.measure("gains.hunting_cars", "cars that hunt", proof.hunting(), Units.COUNT, NONE, 0);
    result.measure("gains.faulty_cars", "cars with a fault", proof.faults(), Units.COUNT, NONE, 0);
    result.caution(
        "The proof was driven by virtual cars like the fitted one. Try new gains on a short pull in"
            + " a high gear first, ready to lift.");
    result.caution("Feedback comes after base duty: correct the table first.");
  }

  /** Gains and sensitivity over engine speed. */
  private static Plot overSpeed(List<BandGains> bands) {
    return new Plot(
        "gains_over_speed",
        "Gains and their sensitivity over engine speed",
        "engine speed",
        Units.RPM,
        bands.stream().mapToDouble(BandGains::rpm).toArray(),
        List.of(
            line("kp", "kp", "%/kPa", Stroke.SOLID, bands, b -> 100.0 * b.gains().kp()),
            line("ki", "ki", "%/(kPa s)", Stroke.SOLID, bands, b -> 100.0 * b.gains().ki()),
            line("kd", "kd", "% s/kPa", Stroke.SOLID, bands, b -> 100.0 * b.gains().kd()),
            line("ms", "Ms", "", Stroke.SOLID, bands, b -> b.margins().maxSensitivity()),
            line(
                "ms_worst",
                "Ms over what the logs leave possible",
                "",
                Stroke.DASHED,
                bands,
                b -> b.worst().maxSensitivity())),
        List.of(new Plot.Limit("highest Ms", "", MS_HIGHEST)),
        List.of());
  }

  private static Plot.Line line(
      String id,
      String label,
      String unit,
      Stroke stroke,
      List<BandGains> bands,
      ToDoubleFunction<BandGains> value) {
    return new Plot.Line(id, label, unit, stroke, bands.stream().mapToDouble(value).toArray());
  }

  private static void band(ResultBuilder result, BandGains band) {
    result.find(
        "gains_band",
        Severity.NOTE,
        String.format(
            Locale.ROOT,
            "%.0f rpm: %.2f kPa for each percent of duty, lags %.0f and %.0f ms, dead time %.0f ms;"
                + " kp %.2f %%/kPa, ki %.2f %%/(kPa s), kd %.3f %% s/kPa; Ms %.2f, AMIGO would"
                + " take kp %.2f (Ms %.2f).",
            band.rpm(),
            band.model().gain() / 100.0,
            1e3 * band.model().tau1Seconds(),
            1e3 * band.model().tau2Seconds(),
            1e3 * band.model().deadSeconds(),
            100.0 * band.gains().kp(),
            100.0 * band.gains().ki(),
            100.0 * band.gains().kd(),
            band.margins().maxSensitivity(),
            100.0 * band.amigo().gain(),
            band.amigoMargins().maxSensitivity()),
        "");
  }
}
