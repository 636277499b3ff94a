/**
 * The controller core: one tick from inputs to outputs.
 *
 * <p>What must be identical on the car, in the rig, over the link and in replay; nothing that knows
 * a clock, a thread, a file or a random number.
 */
@NullMarked
package org.boostwright.core;

import org.jspecify.annotations.NullMarked;
