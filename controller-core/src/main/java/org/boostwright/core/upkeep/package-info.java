/**
 * What a built car is counted and kept by: operating hours and valve cycles. Nothing here decides
 * what the controller does.
 */
@NullMarked
package org.boostwright.core.upkeep;

import org.jspecify.annotations.NullMarked;
