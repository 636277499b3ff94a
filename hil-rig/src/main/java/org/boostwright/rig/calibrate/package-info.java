/**
 * Calibration of the sensors from a recording and what a person reads off an instrument.
 *
 * <p>Works out new values and refuses slips; files are written by the commands.
 */
@NullMarked
package org.boostwright.rig.calibrate;

import org.jspecify.annotations.NullMarked;
