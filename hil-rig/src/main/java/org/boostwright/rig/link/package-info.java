/**
 * The rig's side of the wires: it stands in for the car in real time, injects faults, measures what
 * the controller does at the wire and judges it.
 *
 * <p>The controller is another program at the other end of a serial line or of real wires; nothing
 * here knows its code, only the core's frames.
 */
@NullMarked
package org.boostwright.rig.link;

import org.jspecify.annotations.NullMarked;
