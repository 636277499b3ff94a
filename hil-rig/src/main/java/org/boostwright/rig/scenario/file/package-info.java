/**
 * Scenario files: one fault in one drive and what must happen, as a text a person writes; their
 * runner and its verdicts.
 *
 * <p>The runs themselves are those of {@code scenario.fault}.
 */
@NullMarked
package org.boostwright.rig.scenario.file;

import org.jspecify.annotations.NullMarked;
