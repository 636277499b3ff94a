package org.boostwright.rig.scenario.fault;

import org.boostwright.rig.inject.FaultKind;

/**
 * One fault in a drive.
 *
 * @param kind what
 * @param amount how much, in the unit of the kind
 * @param fromSeconds when it begins, s of the drive's time
 * @param untilSeconds when it ends, s; infinite = it stays
 */
public record Injection(FaultKind kind, double amount, double fromSeconds, double untilSeconds) {}
