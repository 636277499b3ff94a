/**
 * The fault campaign: seeded draws of cars, drives, faults and moments by the thousand, what came
 * of them, and the search for the worst.
 *
 * <p>How one run is driven and watched is decided elsewhere.
 */
@NullMarked
package org.boostwright.rig.scenario.campaign;

import org.jspecify.annotations.NullMarked;
