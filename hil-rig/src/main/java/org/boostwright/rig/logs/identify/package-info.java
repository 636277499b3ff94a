/**
 * Finds how the car answers: first-order models from steps, and the virtual car fitted to recorded pulls.
 *
 * <p>Holds models and fits with their uncertainty; no tuning and no correction.
 */
@NullMarked
package org.boostwright.rig.logs.identify;

import org.jspecify.annotations.NullMarked;
