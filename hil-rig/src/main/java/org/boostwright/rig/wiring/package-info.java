/**
 * The circuit as one description: parts, nets, pins, sheets, harness, pin map.
 *
 * <p>Netlists, drawings, parts list and pin map are all written from it, so they cannot disagree;
 * how they are written belongs in the packages below this one.
 */
@NullMarked
package org.boostwright.rig.wiring;

import org.jspecify.annotations.NullMarked;
