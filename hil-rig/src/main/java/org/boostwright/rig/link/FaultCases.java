package org.boostwright.rig.link;

import java.util.ArrayList;
import java.util.List;
import org.boostwright.core.AnalogChannel;
import org.boostwright.core.settings.AnalogSensor;
import org.boostwright.core.settings.Settings;

/** The fault list's rows as cases for the rig, in the order in which they run. */
public final class FaultCases {
  /** One of each kind, in half a minute. */
  private static final List<String> SHORT =
      List.of("l1_silent", "s1_map_open", "s3_map_to_supply", "t2_frozen", "t2_killed");

  private FaultCases() {}

  /**
   * All cases.
   *
   * @param withProgram also those that freeze or kill a program the rig has started
   */
  static List<FaultCase> all(Settings settings, boolean withProgram) {
    AnalogSensor map = settings.sensors().channel(AnalogChannel.MAP);
    List<FaultCase> cases = new ArrayList<>();
    if (map != null) {
      cases.addAll(SensorCases.of(map));
    }
    cases.addAll(CarCases.of(settings.sensors().channel(AnalogChannel.PEDAL) != null));
    cases.addAll(LineCases.line());
    if (withProgram) {
      cases.addAll(LineCases.program());
    }
    return List.copyOf(cases);
  }

  /** Every id that these settings allow. */
  public static List<String> ids(Settings settings, boolean withProgram) {
    return all(settings, withProgram).stream().map(FaultCase::id).toList();
  }

  /** Of these ids, those of the short form. */
  public static List<String> shortForm(List<String> ids) {
    return ids.stream().filter(SHORT::contains).toList();
  }
}
