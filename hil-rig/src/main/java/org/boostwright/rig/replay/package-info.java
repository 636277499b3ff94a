/**
 * Replays recorded drives through the same controller core that runs on the car, in stepped time.
 *
 * <p>It feeds and observes; reading logs is in {@code csv}, judging pulls and correcting tables is
 * in {@code logs}.
 */
@NullMarked
package org.boostwright.rig.replay;

import org.jspecify.annotations.NullMarked;
