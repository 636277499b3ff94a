/**
 * The bench procedures as steppable routines, the fit of the valve model, verdicts and proofs.
 *
 * <p>No files, clocks or hardware: the caller steps it.
 */
@NullMarked
package org.boostwright.core.bench;

import org.jspecify.annotations.NullMarked;
