/**
 * What recordings prove about a rung of the commissioning ladder, and the ladder practised on the
 * virtual car.
 *
 * <p>The rungs, their order and what voids them are the core's; the tables' correction is {@code
 * rig.logs}.
 */
@NullMarked
package org.boostwright.rig.ladder;

import org.jspecify.annotations.NullMarked;
