/**
 * The card after a pull: what happened, and whether to raise, hold, lower or stop.
 *
 * <p>Pulls and the correction of the table are {@code rig.logs}; this only decides and explains.
 */
@NullMarked
package org.boostwright.rig.card;

import org.jspecify.annotations.NullMarked;
