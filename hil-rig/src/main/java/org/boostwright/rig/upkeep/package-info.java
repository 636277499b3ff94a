/**
 * What a built car needs year after year: drift between bench proofs, what is due, its record. The
 * ladder and its proofs are in the core; nothing here signs or voids anything.
 */
@NullMarked
package org.boostwright.rig.upkeep;

import org.jspecify.annotations.NullMarked;
