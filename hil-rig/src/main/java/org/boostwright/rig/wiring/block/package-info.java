/**
 * The sheets of the circuit, one class each: values, nets and places on the sheet.
 *
 * <p>What a sheet is for and why its values are what they are stands here; how it is drawn or
 * simulated does not.
 */
@NullMarked
package org.boostwright.rig.wiring.block;

import org.jspecify.annotations.NullMarked;
