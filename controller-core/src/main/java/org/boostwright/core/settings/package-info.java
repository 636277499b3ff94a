/**
 * Immutable settings records, validated as a whole.
 *
 * <p>No files and no text formats; those are in settings.file.
 */
@NullMarked
package org.boostwright.core.settings;

import org.jspecify.annotations.NullMarked;
