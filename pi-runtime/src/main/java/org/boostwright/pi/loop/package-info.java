/**
 * The 200 Hz tick: deadline, self-checks, heartbeat, lamp, timing figures, and the order of
 * starting and stopping.
 *
 * <p>It decides when the core is called and whether the heartbeat may beat, never what the duty is.
 *
 * <p>Whoever wants to look on (a page, a status line) asks {@link
 * org.boostwright.pi.loop.TickLoop#latest()} for the newest row, {@link
 * org.boostwright.pi.loop.TickLoop#stats()} for the timing; both may be asked from any thread, at
 * any pace, and hold up nothing. Whoever wants to act comes as a {@link
 * org.boostwright.pi.loop.TickGuest}, called in the tick.
 */
@NullMarked
package org.boostwright.pi.loop;

import org.jspecify.annotations.NullMarked;
