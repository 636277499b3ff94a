/**
 * The controller's end of the serial link: a port and its threads, and {@code CarIo} on top.
 *
 * <p>The bytes are the core's business ({@code core.link}); nothing here looks into a frame.
 */
@NullMarked
package org.boostwright.pi.link;

import org.jspecify.annotations.NullMarked;
