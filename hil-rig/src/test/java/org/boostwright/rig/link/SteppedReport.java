package org.boostwright.rig.link;

import java.util.ArrayList;
import java.util.List;
import org.boostwright.core.AnalogChannel;
import org.boostwright.core.settings.Settings;

/** What the rig reports of fault cases run in stepped time. */
public final class SteppedReport {
  private SteppedReport() {}

  /** Runs the short form of the cases that need no program of their own. */
  public static RigReport run(Settings settings) throws Exception {
    SteppedRig rig = new SteppedRig(settings);
    List<String> ids = FaultCases.shortForm(FaultCases.ids(settings, false));
    List<CaseOutcome> outcomes = new ArrayList<>();
    rig.driver.startEngine();
    new FaultRunner(rig.bench, settings.sensors().channel(AnalogChannel.MAP).refreshMillis())
        .run(
            FaultCases.all(settings, false).stream().filter(c -> ids.contains(c.id())).toList(),
            outcomes::add);
    WireObserver seen = rig.loop.observer();
    return new RigReport(
        true,
        rig.wires.health(),
        true,
        true,
        seen.frames(),
        seen.broken(),
        0L,
        Double.NaN,
        seen.roundTripMicros().getValueAtPercentile(50.0) * 1e-3,
        seen.roundTripMicros().getValueAtPercentile(99.0) * 1e-3,
        seen.tickMicros().getValueAtPercentile(99.9) * 1e-3,
        seen.tickMicros().getMaxValue() * 1e-3,
        rig.loop.latenessMicros().getMaxValue() * 1e-3,
        0L,
        0L,
        seen.highestDuty(),
        Double.NaN,
        Double.NaN,
        true,
        seen.rolledOver(),
        outcomes);
  }
}
