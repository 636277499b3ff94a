/**
 * The commissioning ladder: which rungs there are, what proves and voids each, how far a car got.
 *
 * <p>Contents, rules and text form only; files belong in settings.file, recordings in the rig.
 */
@NullMarked
package org.boostwright.core.ladder;

import org.jspecify.annotations.NullMarked;
