/**
 * The live page: what the newest tick says, in words, for a phone or a laptop; and the bench
 * procedures while the engine stands.
 *
 * <p>Everything here runs on threads of its own behind those of the tick, reads copies and can ask
 * for two things only: the bench, and that the owner drives instead of a guest. Both are granted in
 * the tick, to an engine known to be stopped and to no other.
 */
@NullMarked
package org.boostwright.pi.web;

import org.jspecify.annotations.NullMarked;
