/**
 * Faults by name: what can go wrong on sensors, hoses, valve, actuator, supply, bus, link, time and
 * outputs, brought about on a virtual car at any moment, with the proof that it took effect.
 *
 * <p>What the controller makes of a fault is judged elsewhere.
 */
@NullMarked
package org.boostwright.rig.inject;

import org.jspecify.annotations.NullMarked;
