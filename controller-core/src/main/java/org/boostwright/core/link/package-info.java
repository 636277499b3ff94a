/**
 * The serial link, byte by byte: frames, checksum, sequence, age and handshake; see {@code
 * docs/link.md}.
 *
 * <p>Bytes and numbers only, nothing allocated after construction; ports and threads live outside
 * the core.
 */
@NullMarked
package org.boostwright.core.link;

import org.jspecify.annotations.NullMarked;
