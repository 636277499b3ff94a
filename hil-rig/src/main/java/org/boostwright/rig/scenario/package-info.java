/**
 * Runs of the controller in the virtual car: what is driven, what happens on the way, what was
 * measured.
 *
 * <p>No commands and no presentation.
 */
@NullMarked
package org.boostwright.rig.scenario;

import org.jspecify.annotations.NullMarked;
