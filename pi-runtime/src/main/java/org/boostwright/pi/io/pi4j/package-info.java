/**
 * The thin layer over Pi4J 2.8.0.
 *
 * <p>Nothing here decides anything: it passes bytes, levels and edges on and turns Pi4J's
 * exceptions into {@link java.io.IOException}.
 */
@NullMarked
package org.boostwright.pi.io.pi4j;

import org.jspecify.annotations.NullMarked;
