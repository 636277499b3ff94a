/**
 * The bench with a virtual valve on it: air, sensor, gauge, the person who answers, and what people
 * plumb and wire wrongly.
 *
 * <p>The procedures themselves are the core's; nothing here decides about a valve.
 */
@NullMarked
package org.boostwright.rig.bench;

import org.jspecify.annotations.NullMarked;
