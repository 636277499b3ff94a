/**
 * The rig: what stands in for the car, and what reasons about it.
 *
 * <p>It may use the core and libraries; the core and the Pi runtime never see it.
 */
@NullMarked
package org.boostwright.rig;

import org.jspecify.annotations.NullMarked;
