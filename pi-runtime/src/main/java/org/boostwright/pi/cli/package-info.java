/**
 * The commands that run on the Pi: {@code drive} and the bench procedures on a real valve.
 *
 * <p>They read options and say what happened; what happens is decided in the other packages.
 */
@NullMarked
package org.boostwright.pi.cli;

import org.jspecify.annotations.NullMarked;
