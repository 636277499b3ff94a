/**
 * Names the likely cause when pulls do not go as they should, with the evidence and what to check.
 *
 * <p>Draws on measured pulls and what the settings let expect; changes nothing.
 */
@NullMarked
package org.boostwright.rig.logs.diagnosis;

import org.jspecify.annotations.NullMarked;
