/**
 * Axes, curves and two-dimensional lookup, immutable and without allocation.
 *
 * <p>No meaning of rows and columns and no units.
 */
@NullMarked
package org.boostwright.core.table;

import org.jspecify.annotations.NullMarked;
