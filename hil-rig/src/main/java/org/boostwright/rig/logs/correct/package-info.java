/**
 * Works out a corrected base duty table from settled rows, carefully and with a reason for every cell.
 *
 * <p>Writes no file; the commands do, and only where they were told to.
 */
@NullMarked
package org.boostwright.rig.logs.correct;

import org.jspecify.annotations.NullMarked;
