/**
 * What is learnt from recorded runs: tuning rules and loop margins.
 *
 * <p>Reads logs and models; never drives anything.
 */
@NullMarked
package org.boostwright.rig.logs;

import org.jspecify.annotations.NullMarked;
