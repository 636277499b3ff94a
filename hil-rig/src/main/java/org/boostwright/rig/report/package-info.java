/**
 * Renders a result as one self-contained HTML page that opens from disk without a network.
 *
 * <p>Presentation only: every number on the page stands in the result.
 */
@NullMarked
package org.boostwright.rig.report;

import org.jspecify.annotations.NullMarked;
