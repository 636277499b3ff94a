/**
 * What touches the Raspberry Pi.
 *
 * <p>It may use the core and hardware libraries; it never sees the rig, and the core never sees it.
 */
@NullMarked
package org.boostwright.pi;

import org.jspecify.annotations.NullMarked;
