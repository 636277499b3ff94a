package org.boostwright.rig.scenario;

import java.util.List;
import org.boostwright.core.settings.Settings;

/**
 * A pull as it went.
 *
 * @param settings settings of the controller
 * @param plan what was driven
 * @param log every tick from key on: the controller's rows and what was really the case
 * @param openedAt row of the first tick after the throttle opened
 * @param shutAt row of the first tick after it shut
 * @param eventRows row of the first tick after each event of the plan
 */
public record PullRun(
    Settings settings,
    PullPlan plan,
    RunLog log,
    int openedAt,
    int shutAt,
    List<Integer> eventRows) {}
