/**
 * Boost target, base duty, pressure feedback, spool strategy and the mapping onto the proven duty
 * window.
 *
 * <p>It wants a duty; whether that reaches the valve is decided by state and gate.
 */
@NullMarked
package org.boostwright.core.control;

import org.jspecify.annotations.NullMarked;
