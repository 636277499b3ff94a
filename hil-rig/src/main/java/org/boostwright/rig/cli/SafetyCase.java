package org.boostwright.rig.cli;

import java.nio.file.Path;
import java.util.List;
import org.boostwright.rig.scenario.campaign.CampaignSummary;
import org.boostwright.rig.scenario.file.ScenarioVerdict;

final class SafetyCase {
  private SafetyCase() {}

  static void write(Path file, String c, CampaignSummary s, List<ScenarioVerdict> v) {}
}
