/**
 * Gains of the pressure feedback from the identified answer, with margins, and their proof on virtual cars.
 *
 * <p>Proposes numbers; only a person puts them into the settings.
 */
@NullMarked
package org.boostwright.rig.logs.gains;

import org.jspecify.annotations.NullMarked;
