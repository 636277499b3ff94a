/**
 * The crash-safe recorder: rows off the tick, CSV in the core's format, rotation, retention and
 * what happens when the disk is full.
 *
 * <p>Nothing here can delay a tick; a power cut at any byte leaves everything readable up to the
 * last flush.
 */
@NullMarked
package org.boostwright.pi.record;

import org.jspecify.annotations.NullMarked;
