/**
 * The live page: what the newest tick says, in words, for a phone or a laptop; and the bench
 * procedures while the engine stands.
 *
 * <p>Everything here runs on threads of its own behind those of the tick, reads copies and can ask
 * for one thing only, the bench, which the core grants to a stopped engine and to no other.
 */
@NullMarked
package org.boostwright.pi.web;

import org.jspecify.annotations.NullMarked;
