/**
 * The virtual car: valve, hose, actuator, wastegate, engine, road and sensors as physics, with
 * faults that can be set at any moment.
 *
 * <p>No controller logic, no scenario files and no verdicts; it only answers what the parts would
 * do.
 */
@NullMarked
package org.boostwright.rig.plant;

import org.jspecify.annotations.NullMarked;
