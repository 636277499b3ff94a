/**
 * The frame codec of the serial link.
 *
 * <p>Bytes only; ports and threads live outside the core.
 */
@NullMarked
package org.boostwright.core.link;

import org.jspecify.annotations.NullMarked;
