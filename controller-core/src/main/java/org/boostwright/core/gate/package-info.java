/**
 * The last statement before the output: finite, in range, under every ceiling, 0 in any rest state.
 *
 * <p>Nothing here wants anything; it only takes away.
 */
@NullMarked
package org.boostwright.core.gate;

import org.jspecify.annotations.NullMarked;
