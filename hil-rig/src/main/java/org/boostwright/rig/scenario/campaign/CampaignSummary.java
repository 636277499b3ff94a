package org.boostwright.rig.scenario.campaign;

import java.util.ArrayList;
import java.util.List;
import org.boostwright.rig.inject.FaultKind;

/**
 * What a campaign comes to. It depends on the rows alone.
 *
 * @param runs valid runs whose pressure the coil can keep down: what the bound is of
 * @param unsafe unsafe ones among them, those with a broken rule included
 * @param apart runs that only an engine cut could stop
 * @param invalid runs whose fault was never seen to take effect
 * @param falseAlarms runs whose twin raised something unjustified
 * @param upper95 upper bound of the rate of unsafe runs, 0 to 1
 * @param peakOverKpa highest true pressure over the limit in the valid runs, kPa
 * @param apartPeakOverKpa the same in the runs that only an engine cut could stop
 * @param kinds each kind of fault
 * @param bad the unsafe and broken rows
 * @param alarms the rows whose twin raised something unjustified
 */
public record CampaignSummary(
    long runs,
    long unsafe,
    long apart,
    long invalid,
    long falseAlarms,
    double upper95,
    double peakOverKpa,
    double apartPeakOverKpa,
    List<KindSummary> kinds,
    List<CaseRow> bad,
    List<CaseRow> alarms) {

  /** Sums up. */
  public static CampaignSummary of(List<FaultKind> kinds, List<CaseRow> rows) {
    long valid = 0;
    long apart = 0;
    long invalid = 0;
    double peak = Double.NEGATIVE_INFINITY;
    double apartPeak = Double.NEGATIVE_INFINITY;
    List<CaseRow> bad = new ArrayList<>();
    List<CaseRow> alarms = new ArrayList<>();
    for (CaseRow row : rows) {
      switch (row.verdict()) {
        case SAFE -> valid++;
        case UNSAFE, BROKEN -> {
          valid++;
          bad.add(row);
        }
        case APART -> apart++;
        case INVALID -> invalid++;
      }
      if (row.verdict() == CaseVerdict.APART) {
        apartPeak = Math.max(apartPeak, row.peakOverKpa());
      } else if (row.verdict() != CaseVerdict.INVALID) {
        peak = Math.max(peak, row.peakOverKpa());
      }
      if (row.falseAlarms() != 0L) {
        alarms.add(row);
      }
    }
    return new CampaignSummary(
        valid,
        bad.size(),
        apart,
        invalid,
        alarms.size(),
        UpperBound.at95(bad.size(), valid),
        valid == 0 ? Double.NaN : peak,
        apart == 0 ? Double.NaN : apartPeak,
        kinds.stream().map(kind -> KindSummary.of(kind, rows)).toList(),
        List.copyOf(bad),
        List.copyOf(alarms));
  }
}
