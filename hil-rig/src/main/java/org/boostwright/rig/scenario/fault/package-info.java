/**
 * One drive with faults beside the same drive without them, in stepped time, and what came of it.
 *
 * <p>Where the drive and the faults come from, a file or a draw, is decided elsewhere.
 */
@NullMarked
package org.boostwright.rig.scenario.fault;

import org.jspecify.annotations.NullMarked;
