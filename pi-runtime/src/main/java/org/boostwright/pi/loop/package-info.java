/**
 * The 200 Hz tick: deadline, self-checks, heartbeat, lamp, timing figures, and the order of
 * starting and stopping.
 *
 * <p>It decides when the core is called and whether the heartbeat may beat, never what the duty is.
 */
@NullMarked
package org.boostwright.pi.loop;

import org.jspecify.annotations.NullMarked;
