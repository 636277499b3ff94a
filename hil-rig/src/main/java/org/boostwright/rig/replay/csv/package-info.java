/**
 * Reads any CSV log into signals in fixed units, and says what it repaired, found and refused.
 *
 * <p>No controller and no settings; what is done with the signals is decided elsewhere.
 */
@NullMarked
package org.boostwright.rig.replay.csv;

import org.jspecify.annotations.NullMarked;
