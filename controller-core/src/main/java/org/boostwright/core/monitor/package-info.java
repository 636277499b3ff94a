/**
 * Every watch as data: definitions, up and down counting, freeze frames, clear rules and severity
 * order.
 *
 * <p>It decides what is confirmed, never what the outputs do.
 */
@NullMarked
package org.boostwright.core.monitor;

import org.jspecify.annotations.NullMarked;
