/**
 * Full-throttle pulls and tip-ins found in recorded drives, measured and judged for use.
 *
 * <p>Looks at logs only; what is concluded from the pulls belongs to the sibling packages.
 */
@NullMarked
package org.boostwright.rig.logs.pulls;

import org.jspecify.annotations.NullMarked;
