/**
 * Simulates the circuit description in ngspice: netlists, models, decks, demands and the results
 * table.
 *
 * <p>What a value should be stands with its demand; closed-form numbers that need no simulator
 * belong in the check package.
 */
@NullMarked
package org.boostwright.rig.wiring.spice;

import org.jspecify.annotations.NullMarked;
