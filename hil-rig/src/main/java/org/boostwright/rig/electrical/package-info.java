/**
 * The rig on real wires: a converter that gives the sensor's voltage, and edges captured on the
 * controller's PWM and heartbeat wires.
 *
 * <p>Behind the same interface as the serial link; the kernel's drivers do the register work.
 */
@NullMarked
package org.boostwright.rig.electrical;

import org.jspecify.annotations.NullMarked;
