/**
 * Predicts what a recorded pull would have been with other settings, with a band of uncertainty.
 *
 * <p>Runs the fitted virtual car; never mixes its pressures with recorded ones.
 */
@NullMarked
package org.boostwright.rig.logs.whatif;

import org.jspecify.annotations.NullMarked;
