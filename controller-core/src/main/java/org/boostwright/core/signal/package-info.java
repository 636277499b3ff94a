/**
 * Turns volts into values with a status: calibration, range, rate, frozen and stale checks of
 * single channels.
 *
 * <p>No judgement that needs more than one channel, and no reaction.
 */
@NullMarked
package org.boostwright.core.signal;

import org.jspecify.annotations.NullMarked;
