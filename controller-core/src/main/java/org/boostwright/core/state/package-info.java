/**
 * The safety state machine in the words a user sees.
 *
 * <p>It decides whether the coil may be driven at all, never how much.
 */
@NullMarked
package org.boostwright.core.state;

import org.jspecify.annotations.NullMarked;
