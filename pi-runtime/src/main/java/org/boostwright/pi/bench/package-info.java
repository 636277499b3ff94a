/**
 * The bench procedures on a real valve: the core's session on the controller's ticks, and what
 * passes between it and the person at the bench.
 *
 * <p>What is measured and concluded is the core's business; the dialogue's words are {@code cli}'s.
 */
@NullMarked
package org.boostwright.pi.bench;

import org.jspecify.annotations.NullMarked;
