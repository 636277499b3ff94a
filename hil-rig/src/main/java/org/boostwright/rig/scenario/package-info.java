/**
 * Runs of the controller on the virtual car, tick by tick, and what they measured.
 *
 * <p>Stepped time only; faults come from the plant's fault fields, files from elsewhere.
 */
@NullMarked
package org.boostwright.rig.scenario;

import org.jspecify.annotations.NullMarked;
