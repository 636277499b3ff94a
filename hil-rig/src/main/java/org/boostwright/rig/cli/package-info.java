/**
 * The commands people type: options, progress, printing, exit codes, run folders.
 *
 * <p>Thin classes over the packages that do the work; no computing here.
 */
@NullMarked
package org.boostwright.rig.cli;

import org.jspecify.annotations.NullMarked;
