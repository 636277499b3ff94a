/**
 * Draws the circuit description: schematics, harness and plumbing as SVG, parts list and pin map.
 *
 * <p>Black on white, the same bytes for the same description; what is connected to what is decided
 * elsewhere.
 */
@NullMarked
package org.boostwright.rig.wiring.draw;

import org.jspecify.annotations.NullMarked;
