package org.boostwright.core.settings.file;

import org.boostwright.core.AnalogChannel;
import org.boostwright.core.settings.LimitSettings;
import org.boostwright.core.settings.Settings;
import org.boostwright.core.settings.UnitSettings;

/** Is everything that is switched on also there? */
final class WireChecks {
  private final Reading reading;
  private final Settings settings;

  WireChecks(Reading reading, Settings settings) {
    this.reading = reading;
    this.settings = settings;
  }

  void run() {
    LimitSettings limits = settings.limits();
    boolean boosts = hasDuty();
    if (boosts && settings.sensors().channel(AnalogChannel.INTAKE_AIR) == null) {
      reading.warning(
          "intake_air_missing",
          null,
          "there is no intake-air sensor, so boost is not reduced when the air is hot; fit one and"
              + " write [sensors.intake_air]");
    }
    if ((settings.optional().boostSelector() || limits.guest())
        && limits.lowBoostKpaAbs() <= UnitSettings.STANDARD_ATMOSPHERE_KPA) {
      reading.atKey(
          Severity.NOTE,
          "low_boost_is_spring",
          "limits.low_boost",
          "not stated, so low boost is the spring alone; write it to ask for more");
    }
    if (settings.feedback().enabled() && !boosts) {
      reading.atKey(
          Severity.WARNING,
          "feedback_without_duty",
          "feedback.enabled",
          "the feedback only trims base duty, and base duty or its ceiling is 0 everywhere; write"
              + " [base_duty] and limits.duty_ceiling_pct");
    }
    if (settings.spool().enabled() && !boosts) {
      reading.atKey(
          Severity.WARNING,
          "spool_without_duty",
          "spool.enabled",
          "base duty or its ceiling is 0 everywhere, so the wastegate is never held shut; write"
              + " [base_duty] and limits.duty_ceiling_pct");
    }
  }

  private boolean hasDuty() {
    double most = 0.0;
    for (double value : settings.limits().dutyCeiling().values()) {
      most = Math.max(most, value);
    }
    return most > 0.0 && TableChecks.highest(settings.baseDuty()) > 0.0;
  }
}
