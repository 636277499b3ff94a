/**
 * The log row: names, units and order of its columns.
 *
 * <p>No files and no formatting; writers live outside the core.
 */
@NullMarked
package org.boostwright.core.record;

import org.jspecify.annotations.NullMarked;
