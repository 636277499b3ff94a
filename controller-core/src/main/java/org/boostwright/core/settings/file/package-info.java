/**
 * Reads and writes the settings file.
 *
 * <p>The only package of the core that may use a library or touch files.
 */
@NullMarked
package org.boostwright.core.settings.file;

import org.jspecify.annotations.NullMarked;
