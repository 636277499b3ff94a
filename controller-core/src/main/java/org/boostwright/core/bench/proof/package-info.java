/**
 * Proofs: what was measured on which hardware, sealed against damage, and whether it still counts.
 *
 * <p>Contents and text form only; files belong in settings.file.
 */
@NullMarked
package org.boostwright.core.bench.proof;

import org.jspecify.annotations.NullMarked;
