package org.boostwright.rig.logs.correct;

/**
 * What one row of a log says about base duty.
 *
 * @param visit number of the visit (pull) it is from
 * @param demandPct row coordinate in the table, percent
 * @param rpm column coordinate, 1/min
 * @param wanted change of base duty that would have held the target, fraction
 * @param room largest rise after which pressure on base duty alone is still predicted to stay
 *     within 5 kPa of the target, fraction; may be negative
 * @param shortKpa target less pressure, kPa
 * @param still pressure was nearly at rest
 * @param saturated duty or trim stood at a limit, or the target was out of reach
 * @param doubtful a fault came before it in the log, or a finding casts doubt on it
 */
record Evidence(
    int visit,
    double demandPct,
    double rpm,
    double wanted,
    double room,
    double shortKpa,
    boolean still,
    boolean saturated,
    boolean doubtful) {

  /** May ask for more duty. */
  boolean mayRaise() {
    return !saturated && !doubtful;
  }
}
